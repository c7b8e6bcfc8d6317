"""Sentences put together from a run's values. The words themselves are in `ui.texts`."""

from benchlog.motor.compare import Measured
from benchlog.motor.fit import Fitted
from benchlog.outcome import Outcome, RunResult, WindingVerdict
from benchlog.quantities import show
from benchlog.records import Run, RunKind
from benchlog.recovery.ceilings import Bound, Limits
from benchlog.recovery.looking import SECOND_RAISE
from ui import texts
from ui.retelling import told
from ui.run_request import ceilings_of

CUT_SHORT = frozenset({Outcome.CEILING, Outcome.STOPPED, Outcome.SUPPLY_LOST})
"""Where a person asks at once whether the output is off."""


def short(value: float, unit: str) -> str:
    """For labels: "12 V", "1.83 A", without zeros that say nothing."""
    return f"{value:.3g} {unit}"


def limits_text(limits: Limits) -> str:
    """What a layer gives: "volts 30 V, kicks 40"."""
    named = {name: getattr(limits, name) for name in texts.USED_NAMES}
    words = ((texts.USED_NAMES[name], value) for name, value in named.items() if value is not None)
    return ", ".join(f"{word.lower()} {value:.4g} {unit}".strip() for (word, unit), value in words)


def kicks_text(count: int) -> str:
    if count == 0:
        return texts.NO_KICKS
    return texts.KICKS_ONE if count == 1 else texts.KICKS_MANY.format(count=count)


def resistance_text(result: RunResult) -> str:
    """ "8.20 Ω (8.10 to 8.30 Ω)"; "—" where it is not known."""
    ohm = show(result.resistance_ohm, "Ω")
    if result.resistance_ohm is None or result.resistance_low_ohm is None or result.resistance_high_ohm is None:
        return ohm
    low, high = show(result.resistance_low_ohm, "Ω"), show(result.resistance_high_ohm, "Ω")
    return f"{ohm} {texts.INTERVAL.format(low=low, high=high)}"


def starts_at(rated_volts: float, ceiling_volts: float) -> float:
    """V at which a proof starts the motor: both looks are to find room above them, as in `looking.hold_volts`."""
    return min(rated_volts, ceiling_volts / SECOND_RAISE)


def starts_text(rated_volts: float, ceiling: Bound, *, over: bool = False) -> str:
    """The same in words, and which ceiling leaves no more; `over`: it has been."""
    volts = starts_at(rated_volts, ceiling.value)
    if show(volts, "V") == show(rated_volts, "V"):
        return (texts.PROVEN_AT_RATED if over else texts.PROOF_AT_RATED).format(rated=show(rated_volts, "V"))
    return (texts.PROVEN_BELOW_RATED if over else texts.PROOF_BELOW_RATED).format(
        volts=show(volts, "V"),
        rated=short(rated_volts, "V"),
        ceiling=short(ceiling.value, "V"),
        layer=texts.LAYER_NAMES.get(ceiling.layer, ceiling.layer),
    )


def ended_sentences(kind: RunKind, result: RunResult, how: str = "") -> tuple[str, str]:
    """What happened; then whether the output is off where that is in question, why we think so, and what to do.

    The output comes first: of a long text the end is what has no room. `how`: what else is to be known of the run.
    """
    say, do, why = texts.OUTCOME_SAY[result.outcome], texts.OUTCOME_DO[result.outcome], sentence(result.reason)
    if kind is RunKind.PROBE and result.winding_verdict is WindingVerdict.WINDING and probe_went_through(result):
        say, do = texts.PROBED_SAY_UNKNOWN, texts.PROBED_DO
        if result.resistance_ohm is not None:
            figures = resistance_text(result)
            say = texts.PROBED_SAY.format(ohm=figures)
            first, _, rest = why.partition(". ")
            why = rest if figures in first and rest else why
    elif kind is RunKind.LEADS and result.outcome is Outcome.SHORT:
        say, do = texts.LEADS_SAY.format(ohm=resistance_text(result)), texts.LEADS_DO
    elif kind is RunKind.LEADS and result.outcome in (Outcome.UNDETERMINED, Outcome.OPEN):
        say, do = texts.LEADS_NOT_SAY, texts.LEADS_NOT_DO
    elif kind is RunKind.HAND and result.moved:
        do = texts.HAND_ENDED_DO
    elif kind is RunKind.PROOF and result.outcome in (Outcome.RUNS, Outcome.FREED):
        do = texts.PROVEN_DO
    off = ""
    reached = result.outcome is not Outcome.REFUSED or result.max_volts is not None
    if not result.output_confirmed_off and reached:
        off = texts.OFF_NOT_READ_BACK
    elif result.outcome in CUT_SHORT:
        off = texts.OFF_READ_BACK
    return say, " ".join(part for part in (off, why, how, do) if part)


def probe_went_through(result: RunResult) -> bool:
    """Whether a probe came to its end, whatever it found."""
    return result.winding_verdict is not WindingVerdict.NOT_PROBED and result.outcome not in (
        Outcome.CEILING,
        Outcome.STOPPED,
        Outcome.SUPPLY_LOST,
        Outcome.REFUSED,
    )


def sentence(text: str) -> str:
    """Of the core, in the window's language, with a capital first and a full stop last."""
    return full_stop(told(text.strip()))


def full_stop(text: str) -> str:
    """With a capital first and a full stop last, in whatever words a person gave it."""
    text = text.strip()
    if not text:
        return ""
    return text[0].upper() + text[1:] + ("" if text[-1] in ".!?…" else ".")


def choice_text(choice: str) -> str:
    """A choice of the run's as it stands on a button."""
    words = told(choice)
    return texts.CHOICE_WORDS.get(choice, words[:1].upper() + words[1:])


def measured_text(measured: Measured) -> str:
    """Steady current and run-up with their intervals, or why they are not known."""
    return texts.MEASURED_LINE.format(
        volts=short(measured.test.set_volts, "V"),
        amps=_constant(measured, "steady_amps", "A"),
        tau=_constant(measured, "tau_s", "s"),
    )


def moves_text(measured: Measured) -> str:
    """When it was first seen to turn, or why that was not seen."""
    return texts.MEASURED_MOVES.format(when=_constant(measured, "moves_s", "s"))


def _constant(measured: Measured, name: str, unit: str) -> str:
    value: Fitted | None = getattr(measured.constants, name)
    if value is None:
        return texts.MEASURED_NOT.format(why=told(measured.constants.why.get(name, "")))
    interval = texts.INTERVAL.format(low=show(value.low, unit), high=show(value.high, unit))
    return f"{show(value.value, unit)} {interval}"


def run_words(kind: RunKind, result: RunResult, *, figures: bool = True) -> str:
    """How a run ended, in a few words: a probe by what it found, a recovery with its kicks."""
    outcome = texts.OUTCOME_WORDS[result.outcome]
    if kind is RunKind.PROBE and probe_went_through(result):
        verdict = texts.VERDICT_WORDS[result.winding_verdict]
        return f"{verdict} {resistance_text(result)}" if figures and result.resistance_ohm is not None else verdict
    if kind is RunKind.LEADS and result.outcome is Outcome.SHORT:
        return resistance_text(result) if figures else texts.LEADS_WORD
    if kind is RunKind.CHECK and result.outcome is Outcome.UNDETERMINED and result.reason:
        return told(result.reason)  # of a supply nothing was to come free: what was found is all there is
    if kind is RunKind.RECOVERY:
        return texts.FREE_TRIED.format(outcome=outcome, kicks=kicks_text(result.kicks))
    return outcome


def filed_words(run: Run) -> str:
    """The same of a run that was filed: a proof with the volts of its starts; in its looks, at almost no current, there
    are more."""
    words = run_words(run.kind, run.result)
    ceiling, _ = ceilings_of(run)
    if run.kind is not RunKind.PROOF or ceiling is None or not probe_went_through(run.result):
        return words
    return texts.PROOF_TRIED.format(outcome=words, volts=show(starts_at(run.rated_volts, ceiling), "V"))
