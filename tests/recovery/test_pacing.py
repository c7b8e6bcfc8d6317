"""A supply's pace as a run measures it: a quick one is sent nothing for it, a slow one 0 V once more."""

import pytest

from benchlog.motor.motion import Motion
from benchlog.recovery.budget import Budget
from benchlog.recovery.ceilings import intersect
from benchlog.recovery.commands import Apply, Command, Seen, Watch
from benchlog.recovery.moves import Situation
from benchlog.recovery.pace import Pace
from benchlog.recovery.pacing import READINGS, paced, too_short
from benchlog.recovery.steps import Kicks, Sequence
from drivers.supply import Capabilities, Reading, Regulation


def situation() -> Situation:
    ceilings = intersect({})
    return Situation(
        rated_volts=12.0,
        ceilings=ceilings,
        capabilities=Capabilities(
            identity="",
            dialect="",
            volts_max=None,
            amps_max=None,
            volts_step=0.01,
            amps_step=0.001,
            latches=frozenset(),
            window_s=0.02,
            settle_s=0.04,
            reply_s=0.09,
        ),
        sequence=Sequence(name="none"),
        budget=Budget(ceilings, ambient_c=25.0, rated_volts=12.0),
        unattended=True,
    )


def seen(sent_s: float, took_s: float, *, set_at_s: float = 0.0) -> Seen:
    reading = Reading(
        sent_s=sent_s,
        received_s=sent_s + took_s,
        volts=0.0,
        amps=0.0,
        set_volts=0.0,
        set_amps=0.0,
        output_on=False,
        regulation=Regulation.CV,
    )
    return Seen(reading=reading, now_s=sent_s + took_s, since_s=0.0, whole=True, set_at_s=set_at_s)


def measured(rows: list[Seen], sent_s: float) -> tuple[Pace, list[Command]]:
    """What a supply comes to that takes `sent_s` for a setpoint, and what it was sent for that."""
    plan, sent = paced(situation(), rows), list[Command]()
    took_s = rows[-1].reading.received_s - rows[-1].reading.sent_s
    set_at_s = now_s = rows[-1].now_s + sent_s
    try:
        sent.append(next(plan))
        while True:
            sent.append(plan.send(seen(now_s, took_s, set_at_s=set_at_s)))
            now_s += took_s
    except StopIteration as end:
        return end.value, sent


def test_a_quick_supply_is_sent_nothing_and_not_read_once_more() -> None:
    pace, sent = measured([seen(0.1 * k, 0.09) for k in range(3)], 0.01)
    assert sent == []
    assert not pace.slow


def test_a_slow_supply_is_sent_0_v_and_0_a_once_and_read_without_a_pause() -> None:
    _, sent = measured([seen(0.5 * k, 0.3) for k in range(3)], 0.1)
    assert sent == [Apply(volts=0.0, amps=0.0, belief=Motion.RESTING)] + [Watch()] * (READINGS - 1)


def test_what_a_reading_and_a_setpoint_take_is_as_it_was_measured() -> None:
    pace, _ = measured([seen(0.5 * k, 0.3) for k in range(3)], 0.1)
    assert pace.reading_s == pytest.approx(0.3)
    assert pace.sending_s == pytest.approx(0.1)
    assert pace.settled_s == pytest.approx(0.06)


def test_one_reading_that_took_long_makes_no_supply_slow() -> None:
    pace, sent = measured([seen(0.0, 0.02), seen(0.1, 0.9), seen(1.1, 0.02)], 0.01)
    assert sent == []
    assert pace.reading_s == pytest.approx(0.02)


def rung(on_s: float) -> Kicks:
    return Kicks(name="rung", voltage=6.0, on_s=on_s, off_s=1.0, tries=1)


SLOW = Pace(reading_s=0.25, sending_s=0.1, settled_s=0.06)  # 0.6 s at least


def test_kicks_that_become_longer_are_told_with_what_makes_them_so() -> None:
    told = too_short(SLOW, (rung(0.2), rung(0.3)))
    assert told is not None
    assert told.event.text.startswith("This supply can't make a kick shorter than 0.60 s: each kick is that long")
    assert (told.event.values["least_kick_s"], told.event.values["reading_s"]) == (0.6, 0.25)


def test_where_some_are_long_enough_only_the_others_are_told() -> None:
    told = too_short(SLOW, (rung(0.2), rung(0.8)))
    assert told is not None
    assert "each that is asked shorter is that long" in told.event.text


@pytest.mark.parametrize(
    ("pace", "rungs"),
    [(SLOW, ()), (SLOW, (rung(0.7),)), (Pace(reading_s=0.09, sending_s=0.05), (rung(0.05),))],
    ids=["no kicks", "long enough", "a quick supply"],
)
def test_where_nothing_becomes_longer_nothing_is_said(pace: Pace, rungs: tuple[Kicks, ...]) -> None:
    assert too_short(pace, rungs) is None
