"""What is said and read while a plan goes on: motion that was felt, answers, and how warm the winding is believed."""

from benchlog.motor.temperature import Estimate
from benchlog.records import EventKind
from benchlog.recovery.commands import Mark, Plan, Seen
from benchlog.recovery.moves import STILL_SHARE, Finding, Situation, mark

PROBE_SHARE = 0.31
"""Of the stall current: no more than a probe drives, which leaves a stuck shaft where it is."""


def heeding(situation: Situation, plan: Plan[Finding]) -> Plan[Finding]:
    """The plan; what was said and read on the way is kept in the situation, the winding's warmth told at the end."""
    try:
        command = next(plan)
        while True:
            seen = yield command
            if seen is not None:  # a mark brings no reading
                if seen.felt:
                    situation.felt = situation.moved = True
                situation.answer = seen.answer or situation.answer
                feel_warmth(situation, seen)
            command = plan.send(seen)
    except StopIteration as done:
        finding: Finding = done.value
        if situation.warmth is not None:
            yield _warmth(situation.warmth, situation.budget.warmest_c)
        return finding


def feel_warmth(situation: Situation, seen: Seen) -> None:
    """One reading for the estimate. The shaft counts as moved by hands, and by all that drives more than a probe until
    the terminals say that nothing turns; once it was seen to turn, for good."""
    if situation.thermometer is None:
        return
    reading, meter = seen.reading, situation.known_meter
    driven = reading.output_on and reading.set_volts > 0
    by_hand = seen.held or seen.answer is not None or seen.felt
    still = not (by_hand or situation.may_turn or situation.budget.turned)
    if driven and reading.set_amps > PROBE_SHARE * situation.stall_amps:
        situation.may_turn, still = True, False
    elif not driven:
        quiet = abs(reading.volts - meter.zero_volts) <= max(STILL_SHARE * situation.rated_volts, 5 * meter.u_volts)
        situation.may_turn = situation.may_turn and not quiet
    situation.warmth = situation.thermometer.feed(
        seen.now_s,
        reading.volts - meter.zero_volts,
        reading.amps - meter.zero_amps,
        driven=driven,
        still=still,
    )


def _warmth(estimate: Estimate, bound_c: float) -> Mark:
    """What is believed of the winding, and why; or that it can't be told. No more than the guard's bound."""
    high_c = max(min(estimate.high_c, bound_c), estimate.low_c)
    interval = f"{estimate.low_c:.0f} to {high_c:.0f} °C"
    if estimate.identifiable:
        text = f"The winding is at some {estimate.winding_c:.0f} °C ({interval})."
    else:
        text = f"How warm the winding is can't be told; it is {interval}."
    return mark(
        EventKind.FINDING,
        text,
        why=f"{estimate.basis}.",
        winding_c=round(estimate.winding_c, 1),
        low_c=round(estimate.low_c, 1),
        high_c=round(high_c, 1),
    )
