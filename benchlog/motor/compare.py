"""One measured start against others: the same motor before, or known good ones. Differences with intervals."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from statistics import fmean, stdev

from benchlog.motor.fit import Constants, Fitted, constants
from benchlog.motor.startup import Figures, Start, figures, starts_of, zero_of
from benchlog.quantities import show
from benchlog.records import Event, Trace

SAME_VOLTS_SHARE, SAME_LEADS_OHM, SAME_AMBIENT_K = 0.02, 0.05, 10.0
"""How far apart two tests may be and still be compared. Starting values of this project."""
MEASURED = "measured start"
_T95 = {1: 12.706, 2: 4.303, 3: 3.182, 4: 2.776, 5: 2.571, 6: 2.447, 7: 2.365, 8: 2.306, 9: 2.262}
"""Two-sided 95 % of Student's t by degrees of freedom; above, 2.26 errs to wide. Source: any table, from memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Test:
    """Under which a start was measured: what must be the same for two to be compared."""

    __test__ = False  # no test of pytest's

    set_volts: float
    lead_ohm: float
    ambient_c: float
    load_state: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One start: of which run, under which test, and what it came to."""

    run: int
    test: Test
    figures: Figures
    constants: Constants


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """After minus before, with its 95 % interval; `sure`: it does not include none at all."""

    name: str
    unit: str
    before: float
    after: float
    low: float
    high: float

    @property
    def sure(self) -> bool:
        return self.low > 0 or self.high < 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """`against`: how many others. `not_same`: in words, what was different about the tests."""

    against: int
    differences: tuple[Difference, ...]
    not_same: tuple[str, ...]
    verdict: str


def measured_of(
    trace: Trace,
    events: Sequence[Event],
    *,
    run: int,
    lead_ohm: float,
    ambient_c: float,
    load_state: str,
    ohm: Fitted | None,
) -> Measured | None:
    """The measured start of a filed proof; None where it has none."""
    found = [start for start in starts_of(trace, events) if start.name == MEASURED]
    return (
        None
        if not found
        else measure(found[-1], trace, run=run, lead_ohm=lead_ohm, ambient_c=ambient_c, load_state=load_state, ohm=ohm)
    )


def measure(
    start: Start, trace: Trace, *, run: int, lead_ohm: float, ambient_c: float, load_state: str, ohm: Fitted | None
) -> Measured:
    """Figures and constants of one start out of its trace."""
    zero = zero_of(trace)
    return Measured(
        run=run,
        test=Test(set_volts=start.set_volts, lead_ohm=lead_ohm, ambient_c=ambient_c, load_state=load_state),
        figures=figures(start, lead_ohm=lead_ohm, zero_amps=zero.amps),
        constants=constants(
            start,
            ohm=ohm,
            lead_ohm=lead_ohm,
            sigma_amps=zero.sigma_amps,
            zero_amps=zero.amps,
            u_zero_amps=zero.u_amps,
        ),
    )


def compare(after: Measured, others: Sequence[Measured]) -> Comparison:
    """Against one other, or those of several that were tested the same way. Raises ValueError for none."""
    if not others:
        raise ValueError("nothing to compare with")
    same = [other for other in others if not _not_same(after.test, other.test)]
    not_same = () if same else tuple(dict.fromkeys(w for other in others for w in _not_same(after.test, other.test)))
    others = same or others
    differences = tuple(
        found
        for found in (
            _difference("steady current", "A", after, others, lambda one: one.constants.steady_amps),
            _difference("run-up time constant", "s", after, others, lambda one: one.constants.tau_s),
        )
        if found is not None
    )
    return Comparison(
        against=len(others), differences=differences, not_same=not_same, verdict=_verdict(differences, not_same, others)
    )


def _not_same(after: Test, before: Test) -> list[str]:
    found = []
    if abs(after.set_volts / before.set_volts - 1) > SAME_VOLTS_SHARE:
        found.append(f"{show(after.set_volts, 'V')} against {show(before.set_volts, 'V')}")
    if after.load_state != before.load_state:
        found.append(f"{after.load_state} against {before.load_state}")
    if abs(after.lead_ohm - before.lead_ohm) > SAME_LEADS_OHM:
        found.append(f"leads of {show(after.lead_ohm, 'Ω')} against {show(before.lead_ohm, 'Ω')}")
    if abs(after.ambient_c - before.ambient_c) > SAME_AMBIENT_K:
        found.append(f"{after.ambient_c:.0f} °C against {before.ambient_c:.0f} °C")
    return found


def _difference(
    name: str, unit: str, after: Measured, others: Sequence[Measured], value_of: Callable[[Measured], Fitted | None]
) -> Difference | None:
    now = value_of(after)
    then = [value for value in map(value_of, others) if value is not None]
    if now is None or not then:
        return None
    half_now = 0.5 * (now.high - now.low)
    before = fmean(one.value for one in then)
    if len(then) == 1:
        half = math.hypot(half_now, 0.5 * (then[0].high - then[0].low))
    else:
        # A new one of the same kind differs from the mean of n by more than the mean is uncertain.
        spread = stdev([one.value for one in then]) * math.sqrt(1 + 1 / len(then))
        half = math.hypot(half_now, _T95.get(len(then) - 1, 2.26) * spread)
    gap = now.value - before
    return Difference(name=name, unit=unit, before=before, after=now.value, low=gap - half, high=gap + half)


def _verdict(differences: Sequence[Difference], not_same: Sequence[str], others: Sequence[Measured]) -> str:
    if not_same:
        return f"Not comparable: {'; '.join(not_same)}."
    current = next((one for one in differences if one.name == "steady current"), None)
    if current is None:
        return "The steady current can't be told in one of them: nothing to compare."
    change = f"{show(current.before, 'A')} to {show(current.after, 'A')}"
    if not current.sure:
        words = "as the known good ones" if len(others) > 1 else "no difference that these readings can show"
        return f"Steady current {change}: {words}."
    if current.high < 0:
        return f"Steady current fell, {change}: it turns more freely, or with less load."
    return f"Steady current rose, {change}: it turns harder, or with more load."
