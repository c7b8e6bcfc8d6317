"""What the loop shows, gathered into frames."""

from benchlog.bench.frames import Frame, Progress
from benchlog.bench.reporting import FRAME_EVERY_S, Reporter
from benchlog.motor.motion import Motion
from benchlog.recovery.budget import Budget
from benchlog.recovery.ceilings import intersect
from benchlog.recovery.commands import Apply
from benchlog.recovery.guard import Guard
from drivers.supply import Reading, Regulation
from tests.recovery.test_ceilings import CAN


def reading(at_s: float, volts: float, amps: float) -> Reading:
    return Reading(
        sent_s=at_s,
        received_s=at_s,
        volts=volts,
        amps=amps,
        set_volts=12.0,
        set_amps=2.0,
        output_on=True,
        regulation=Regulation.CV,
    )


def test_a_peak_between_two_frames_counts_as_used() -> None:
    frames: list[Frame] = []
    ceilings = intersect({})
    reporter = Reporter(frames.append, Guard(ceilings, CAN, Budget(ceilings, ambient_c=25.0, rated_volts=12.0)), 0.0)
    screen, applied = reporter.screen, Apply(volts=12.0, amps=2.0, belief=Motion.TURNING)
    step_s = FRAME_EVERY_S / 4
    for number, amps in enumerate((0.2, 1.7, 0.9, 0.4, 0.3, 0.2, 0.2, 0.2, 0.2), start=1):
        screen.reading(reading(number * step_s, 12.0 - amps, amps), applied)
    first, second = (frame for frame in frames if isinstance(frame, Progress))
    highest = [{one.name: one.value for one in frame.used} for frame in (first, second)]
    assert [(used["volts"], used["amps"]) for used in highest] == [(11.8, 1.7), (11.8, 0.3)]
    assert first.amps + second.amps == [0.2, 1.7, 0.9, 0.4, 0.3, 0.2, 0.2, 0.2]
