"""Starts from rest, out of a filed trace or out of readings just taken, and what the supply reads at no current.

A reading stands for the middle of what the supply averaged over, which lies between `window_s` before it was asked for
and its reply. The start is when the setpoint was sent: after the last reading at 0 V and before the first at the level.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from benchlog.motor.meter import Meter
from benchlog.records import FLAG_ON, TICK_S, Event, EventKind, Trace

WINDOW_S = 0.02
SETTLE_S = 0.012
"""s: of the built-in dialect, for traces of a time before these were recorded."""
UNKNOWN_ZERO_A = 0.003
"""How far off a zero may be that was not read: as readbacks of such supplies come. Starting value of this project."""
Z95 = 1.96
LEAST_HOLD_S = 0.5
LEAST_WHOLE = 4
"""Readings that belong to a start alone, or it has no figures."""
STEADY_WITHIN = 0.02
"""Share by which the halves of a steady part may differ, beside their noise. Starting value of this project."""
Values = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Start:
    """Readings of one start, n each. `name`: of its step; `began_s`: s since the run began; t_s: s since the start.

    t_s, volts, amps: float64[n], of readings that belong to this setpoint alone. all_*: with those at its edge as well.
    `within_s`: how far off all of t_s may be to either side, since a reading lies anywhere between question and reply.
    `settle_s`: what the supply may take to obey.
    """

    name: str
    began_s: float
    set_volts: float
    t_s: Values
    volts: Values
    amps: Values
    all_t_s: Values
    all_amps: Values
    window_s: float
    within_s: float = 0.0
    settle_s: float = SETTLE_S

    @property
    def readings_per_s(self) -> float:
        return (len(self.t_s) - 1) / float(self.t_s[-1] - self.t_s[0]) if len(self.t_s) > 1 else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Zero:
    """A: readback at no current; noise and rounding of one reading; how far off the zero may be, 95 %; resolution."""

    amps: float
    sigma_amps: float
    u_amps: float
    step_amps: float = 0.0


UNKNOWN_ZERO = Zero(amps=0.0, sigma_amps=0.0, u_amps=UNKNOWN_ZERO_A)


def starts_of(trace: Trace, events: Iterable[Event]) -> list[Start]:
    """Every time the output went from 0 V to one level and stayed there for half a second or more, oldest first."""
    window_s, settle_s = timing_of(events_of := list(events))
    on = (trace.flags & FLAG_ON) > 0
    level = np.where(on, trace.set_volts, 0.0)
    starts = []
    index = 1
    while index < len(level):
        if level[index] > 0 and level[index - 1] == 0:
            end = index
            while end < len(level) and level[end] == level[index]:
                end += 1
            start = _start(trace, index, end, window_s, settle_s, events_of)
            if start is not None:
                starts.append(start)
            index = end
        else:
            index += 1
    return starts


def zero_of(trace: Trace) -> Zero:
    """From the readings before the output first went on."""
    on = np.flatnonzero((trace.flags & FLAG_ON) > 0)
    at_rest = trace.amps[: int(on[0])] if len(on) else trace.amps
    if len(at_rest) < 2:
        return UNKNOWN_ZERO
    apart = np.diff(np.unique(np.round(trace.amps, 6)))
    step = float(apart.min()) if len(apart) else 0.0
    noise = float(np.std(at_rest, ddof=1))
    return Zero(
        amps=float(np.mean(at_rest)),
        sigma_amps=math.hypot(noise, step / math.sqrt(12)),
        u_amps=math.hypot(t95(len(at_rest) - 1) * noise / math.sqrt(len(at_rest)), step / 2),
        step_amps=step,
    )


def zero_by(meter: Meter) -> Zero:
    """What a run's own zeroing says."""
    return Zero(
        amps=meter.zero_amps,
        sigma_amps=math.hypot(meter.sigma_amps, meter.step_amps / math.sqrt(12)),
        u_amps=math.hypot(t95(meter.count - 1) * meter.sigma_amps / math.sqrt(meter.count), meter.step_amps / 2),
        step_amps=meter.step_amps,
    )


def t95(free: float) -> float:
    """Two-sided 95 % factor of Student's t. Source: Cornish-Fisher expansion about the normal, from memory."""
    z, n = Z95, free
    g1, g2 = (z**3 + z) / 4, (5 * z**5 + 16 * z**3 + 3 * z) / 96
    g3 = (3 * z**7 + 19 * z**5 + 17 * z**3 - 15 * z) / 384
    return z + g1 / n + g2 / n**2 + g3 / n**3


def timing_of(events: Iterable[Event]) -> tuple[float, float]:
    """Averaging window and settling in s, as the supply's event has them."""
    for event in events:
        if event.kind is EventKind.SUPPLY:
            window_s, settle_s = event.values.get("window_s"), event.values.get("settle_s")
            if isinstance(window_s, int | float) and isinstance(settle_s, int | float):
                return float(window_s), float(settle_s)
    return WINDOW_S, SETTLE_S


def start_of_readings(
    sent_s: npt.ArrayLike,
    received_s: npt.ArrayLike,
    volts: npt.ArrayLike,
    amps: npt.ArrayLike,
    *,
    set_volts: float,
    began_s: float,
    window_s: float,
    settle_s: float,
    name: str,
) -> Start:
    """From readings since the setpoint was sent at `began_s`, n each, s of one clock. It may have no whole reading."""
    sent, received = np.asarray(sent_s, dtype=np.float64), np.asarray(received_s, dtype=np.float64)
    # An acquisition may begin with the question or have ended with it: the middle of both, and whole ones only.
    middle = 0.5 * (sent + received - window_s) - began_s
    whole = sent - window_s >= began_s + settle_s
    all_volts, all_amps = np.asarray(volts, dtype=np.float64), np.asarray(amps, dtype=np.float64)
    return Start(
        name=name,
        began_s=began_s,
        set_volts=set_volts,
        t_s=middle[whole],
        volts=all_volts[whole],
        amps=all_amps[whole],
        all_t_s=middle,
        all_amps=all_amps,
        window_s=window_s,
        within_s=0.5 * float(np.mean(received - sent)) if sent.size else 0.0,
        settle_s=settle_s,
    )


def _start(trace: Trace, first: int, end: int, window_s: float, settle_s: float, events: list[Event]) -> Start | None:
    sent, received = trace.sent[first:end] * TICK_S, trace.received[first:end] * TICK_S
    began_s = float(sent[0])  # the setpoint goes out right before the first reading of it is asked for
    if received[-1] - began_s < LEAST_HOLD_S:
        return None
    named = [e for e in events if e.kind is EventKind.STEP and e.t_s <= began_s + 0.1 and not e.values.get("skipped")]
    found = start_of_readings(
        sent,
        received,
        trace.volts[first:end],
        trace.amps[first:end],
        set_volts=float(trace.set_volts[first]),
        began_s=began_s,
        window_s=window_s,
        settle_s=settle_s,
        name=str(named[-1].values.get("name", "")) if named else "",
    )
    return found if len(found.t_s) >= LEAST_WHOLE else None
