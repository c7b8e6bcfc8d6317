"""The supply's pace measured in the run itself, and what is told of it before the output is on."""

from dataclasses import replace
from statistics import median

from benchlog.motor.motion import Motion
from benchlog.records import EventKind
from benchlog.recovery.commands import Apply, Mark, Plan, Seen, Watch
from benchlog.recovery.moves import Situation, mark
from benchlog.recovery.pace import Pace
from benchlog.recovery.steps import Kicks

READINGS = 3


def paced(situation: Situation, rows: list[Seen]) -> Plan[Pace]:
    """From readings with the output off. A slow supply is sent 0 V and 0 A once more, to see how long that takes, and
    is read a few times without a pause, in which a gap that its line wants would go unseen."""
    can = situation.capabilities
    pace = Pace(reading_s=_reading_s(rows), settled_s=can.settle_s + can.window_s)
    if not pace.slow:
        return pace
    seen = [(yield Apply(volts=0.0, amps=0.0, belief=Motion.RESTING))]
    while len(seen) < READINGS:
        seen.append((yield Watch()))
    return replace(pace, reading_s=_reading_s(seen), sending_s=max(0.0, seen[0].set_at_s - rows[-1].now_s))


def _reading_s(seen: list[Seen]) -> float:
    return median(s.reading.received_s - s.reading.sent_s for s in seen)


def too_short(pace: Pace, rungs: tuple[Kicks, ...]) -> Mark | None:
    """What is said of kicks that this supply can't make so short; None where there are none."""
    short = [rung for rung in rungs if pace.stretches(rung.on_s)]
    if not short:
        return None
    made = "each kick is" if len(short) == len(rungs) else "each that is asked shorter is"
    return mark(
        EventKind.ADVICE,
        f"This supply can't make a kick shorter than {pace.least_kick_s:.2f} s: {made} that long, with rests to match.",
        why=f"One reading takes {pace.reading_s:.2f} s, a setpoint {pace.sending_s:.2f} s to be sent; "
        "a kick of which no reading tells anything can't be judged.",
        least_kick_s=round(pace.least_kick_s, 4),
        reading_s=round(pace.reading_s, 4),
        sending_s=round(pace.sending_s, 4),
    )
