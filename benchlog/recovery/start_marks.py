"""What is said and kept of captured starts: how much can be seen, each start announced, and what it came to."""

import math
from dataclasses import dataclass

from benchlog.motor.start_figures import StartFigures, event_values, figures_of
from benchlog.motor.startup import start_of_readings, zero_by
from benchlog.quantities import show
from benchlog.records import EventKind
from benchlog.recovery.array_of_starts import Array
from benchlog.recovery.commands import Mark, Seen
from benchlog.recovery.holding_starts import Hold
from benchlog.recovery.moves import Situation, mark
from benchlog.recovery.start_test import StartTest
from drivers.supply import Reading, Regulation

TURNING, NOT_TURNING, DOUBTFUL, NOT_LOOKED = "turning", "not-turning", "doubtful", "not-looked"
AT_LIMIT_SHARE = 0.98


@dataclass(frozen=True, slots=True, kw_only=True)
class Turned:
    """Whether it turned: one of the four words, and why."""

    word: str
    why: str


def what_is_seen(situation: Situation, seen: Seen, array: Array | None) -> Mark:
    """The first note: how much of a start this supply can show."""
    can = situation.capabilities
    took_s = seen.reading.received_s - seen.reading.sent_s
    unseen_s = can.settle_s + can.window_s / 2
    text = f"This supply reads back every {milliseconds(took_s)}, the mean of {milliseconds(can.window_s)} each: "
    if array is None:
        text += f"the first {milliseconds(unseen_s)} of a start, its real inrush, can't be seen."
    else:
        text += (
            f"too slow for the inrush. Its own array keeps {array.points} samples of each start, one every "
            f"{milliseconds(array.interval_s)}."
        )
    return mark(EventKind.NOTE, text, interval_s=round(took_s, 6), unseen_s=round(unseen_s, 6))


def announced(test: StartTest, number: int, amps: float, delay_s: float) -> Mark:
    later = f", read {milliseconds(delay_s)} later" if delay_s else ""
    return mark(
        EventKind.STEP,
        f"Start {number} of {test.starts}, from rest, at {show(test.volts, 'V')}{later}.",
        name=f"start {number}",
        number=number,
        volts=test.volts,
        amps=amps,
        delay_s=round(delay_s, 6),
    )


def captured(
    situation: Situation, test: StartTest, number: int, amps: float, hold: Hold, told: Turned, delay_s: float
) -> Mark:
    """The start for the record: its figures, how it was read, whether it turned and what limited it."""
    assert hold.trigger_s is not None
    readings = [seen.reading for seen in hold.seen if seen.reading.received_s > hold.trigger_s]
    can = situation.capabilities
    start = start_of_readings(
        [one.sent_s for one in readings],
        [one.received_s for one in readings],
        [one.volts for one in readings],
        [one.amps for one in readings],
        set_volts=test.volts,
        began_s=hold.trigger_s,
        window_s=can.window_s,
        settle_s=max(0.0, hold.began_s + can.settle_s - hold.trigger_s),
        name=f"start {number}",
    )
    figures = figures_of(start, lead_ohm=situation.lead_ohm, zero=zero_by(situation.known_meter))
    limited = _limited(readings, amps)
    return mark(
        EventKind.START,
        _sentence(test, number, figures, hold.cut, limited=limited, turned=told),
        why=told.why,
        number=number,
        trigger_s=round(hold.trigger_s - situation.zero_s, 6),
        began_s=round(hold.began_s - situation.zero_s, 6),
        delay_s=round(delay_s, 6),
        volts=test.volts,
        amps=round(amps, 6),
        limited=limited,
        turning=told.word,
        cut=hold.cut,
        **event_values(figures),
    )


def _limited(readings: list[Reading], amps: float) -> bool:
    """Whether the supply held the current at its limit up to the largest reading: the start is then the limit's."""
    if not readings:
        return False
    peak = max(range(len(readings)), key=lambda k: readings[k].amps)
    if readings[peak].regulation is Regulation.UNKNOWN:
        return readings[peak].amps >= AT_LIMIT_SHARE * amps
    return any(one.regulation is Regulation.CC for one in readings[: peak + 1])


def _sentence(test: StartTest, number: int, figures: StartFigures, cut: str, *, limited: bool, turned: Turned) -> str:
    values = figures.values
    parts = [
        f"{word} {show(values[name].value, unit) if unit != 's' else milliseconds(values[name].value)}"
        for name, word, unit in (
            ("peak_amps", "peak", "A"),
            ("run_up_s", "run-up", "s"),
            ("steady_amps", "steady", "A"),
        )
        if name in values
    ]
    parts.append({TURNING: "turning", NOT_TURNING: "NOT turning"}.get(turned.word, f"turning: {turned.word}"))
    parts.append(f"a reading every {milliseconds(figures.interval_s)} ± {milliseconds(figures.jitter_s)}")
    parts += ["limited by current, not voltage"] if limited else []
    parts += [cut] if cut else []
    return f"Start {number} of {test.starts}: {', '.join(parts)}."


def milliseconds(value_s: float) -> str:
    """ "9.4 ms": the second's thousandth is what a start is told in."""
    if value_s >= 1.0:
        return show(value_s, "s")
    digits = max(0, 2 - math.floor(math.log10(max(1000 * value_s, 0.01))))
    return f"{1000 * value_s:.{min(digits, 2)}f} ms"
