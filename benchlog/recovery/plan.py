"""What comes next: every kind of run as a generator. It yields commands, receives what was seen, ends in a Finding."""

from collections.abc import Callable

from benchlog.motor.temperature import Thermometer
from benchlog.outcome import Outcome, WindingVerdict
from benchlog.quantities import show
from benchlog.records import EventKind, RunKind
from benchlog.recovery.advice import advise
from benchlog.recovery.by_hand import hold_by_hand
from benchlog.recovery.checking import check_run
from benchlog.recovery.climbing import by_hand, gentle_start, kicks, left_stuck
from benchlog.recovery.commands import Plan
from benchlog.recovery.heeding import heeding
from benchlog.recovery.moves import Finding, Situation, mark
from benchlog.recovery.probing import measure_leads, probe, probe_at_angles, sentence, zero
from benchlog.recovery.proving import prove
from benchlog.recovery.running_in import hold_running
from benchlog.recovery.starting import capture_starts
from benchlog.recovery.steps import Hand, Kicks, Start, Swap

_ELECTRICAL = {
    WindingVerdict.OPEN: Outcome.OPEN,
    WindingVerdict.SHORT: Outcome.SHORT,
    WindingVerdict.DIODE: Outcome.DIODE,
    WindingVerdict.ELECTRONIC: Outcome.ELECTRONIC,
    WindingVerdict.UNDECIDED: Outcome.UNDETERMINED,
}


def probe_run(situation: Situation) -> Plan[Finding]:
    """Only the probe; with a person there, at a few angles of the shaft, and with the leads swapped if they like."""
    electrical = yield from _begin(situation)
    if electrical is not None:
        return electrical
    if not situation.unattended:
        yield from probe_at_angles(situation)
    assert situation.winding is not None
    return Finding(
        outcome=Outcome.UNDETERMINED,
        reason=f"{sentence(situation.winding)} Whether it turns was not tried in this run.",
    )


def recovery_run(situation: Situation) -> Plan[Finding]:
    """Probe, then the steps in order until one ends it."""
    electrical = yield from _begin(situation, tuple(s for s in situation.sequence.steps if isinstance(s, Kicks)))
    if electrical is not None:
        return electrical
    yield from _advice(situation)
    doubts: list[str] = []
    for rung, step in _with_rungs(situation):
        match step:
            case Start():
                finding = yield from gentle_start(situation, step, doubts)
            case Kicks():
                finding = yield from kicks(situation, step, rung, doubts)
            case Hand() | Swap():
                finding = yield from by_hand(situation, step)
        if finding is not None:
            return finding
    return left_stuck(situation, doubts, "every rung of the sequence was tried")


def _advice(situation: Situation) -> Plan[None]:
    """What the probe and the ceilings say about the kicks to come, into the record."""
    told = advise(
        rated_volts=situation.rated_volts,
        ceilings=situation.ceilings,
        ladder=situation.sequence,
        winding=situation.winding,
        kicks_today=situation.budget.kicks,
    )
    for remark in told.remarks:
        yield mark(EventKind.ADVICE, remark)


def _begin(situation: Situation, rungs: tuple[Kicks, ...] = ()) -> Plan[Finding | None]:
    """Zero and probe; how the run ends where it is no winding that was found. `rungs`: of kicks, where some follow."""
    yield from zero(situation, rungs=rungs)
    winding = yield from probe(situation)
    if winding.verdict not in _ELECTRICAL:
        _begin_to_feel(situation)
        return None
    return Finding(outcome=_ELECTRICAL[winding.verdict], reason=f"{sentence(winding)} ({winding.reason})")


def proof_run(situation: Situation, starts: int) -> Plan[Finding]:
    """Probe for the reference, then starts from rest."""
    electrical = yield from _begin(situation)
    if electrical is not None:
        return electrical
    return (yield from prove(situation, starts))


def start_up_run(situation: Situation) -> Plan[Finding]:
    """Probe for the reference, then starts from rest that are captured."""
    electrical = yield from _begin(situation)
    if electrical is not None:
        return electrical
    assert situation.start_test is not None, "refused without one"
    return (yield from capture_starts(situation, situation.start_test))


def run_in_run(situation: Situation) -> Plan[Finding]:
    """Probe for the reference, then a start from rest that is held for hours."""
    electrical = yield from _begin(situation)
    if electrical is not None:
        return electrical
    assert situation.run_in is not None, "refused without one"
    return (yield from hold_running(situation, situation.run_in))


def hand_run(situation: Situation) -> Plan[Finding]:
    """Probe, then a small current while the key is held."""
    electrical = yield from _begin(situation)
    if electrical is not None:
        return electrical
    return (yield from hold_by_hand(situation))


def leads_run(situation: Situation) -> Plan[Finding]:
    """The clips joined: what the leads have, to be taken out of what a probe finds."""
    yield from zero(situation)
    leads = yield from measure_leads(situation)
    if leads.verdict is WindingVerdict.SHORT:
        figures = f"{show(leads.ohm, 'Ω')} ({show(leads.low_ohm, 'Ω')} to {show(leads.high_ohm, 'Ω')})"
        return Finding(outcome=Outcome.SHORT, reason=f"the leads have {figures}: {leads.reason}")
    return Finding(outcome=_ELECTRICAL[leads.verdict], reason=leads.reason)


def supply_run(situation: Situation) -> Plan[Finding]:
    """A resistor of known value between the clips: what the supply makes of it."""
    assert situation.check is not None, "refused without one"
    return (yield from check_run(situation, situation.check))


def _begin_to_feel(situation: Situation) -> None:
    """From the probe on the winding's warmth is estimated; before, its resistance was not known."""
    situation.thermometer = Thermometer(
        ambient_c=situation.budget.ambient_c,
        stall_watts=situation.rated_volts**2 / situation.reference_ohm,
        reference_ohm=situation.reference_ohm,
        meter=situation.known_meter,
        lead_ohm=situation.lead_ohm,
        warmest_c=situation.budget.warmest_c,
    )


def _with_rungs(situation: Situation) -> list[tuple[int, Start | Kicks | Hand | Swap]]:
    numbered, rung = [], 0
    for step in situation.sequence.steps:
        rung += isinstance(step, Kicks)
        numbered.append((rung, step))
    return numbered


PLANS: dict[RunKind, Callable[[Situation, int], Plan[Finding]]] = {
    RunKind.PROBE: lambda situation, starts: probe_run(situation),
    RunKind.RECOVERY: lambda situation, starts: recovery_run(situation),
    RunKind.PROOF: proof_run,
    RunKind.HAND: lambda situation, starts: hand_run(situation),
    RunKind.LEADS: lambda situation, starts: leads_run(situation),
    RunKind.START_UP: lambda situation, starts: start_up_run(situation),
    RunKind.RUN_IN: lambda situation, starts: run_in_run(situation),
    RunKind.CHECK: lambda situation, starts: supply_run(situation),
}


def plan_of(kind: RunKind, situation: Situation, starts: int) -> Plan[Finding]:
    """The plan of a kind of run, heeding what is said and read on the way. `starts`: of a proof."""
    return heeding(situation, PLANS[kind](situation, starts))
