"""What a journal comes to as a run: its result, how long it lasted, what happened, what a rescue did."""

import math
from datetime import datetime
from pathlib import Path

import msgspec
import numpy as np
import numpy.typing as npt

from benchlog.bench.journal import JournalContents
from benchlog.clock import utc_text
from benchlog.outcome import Outcome, RunResult
from benchlog.records import TICK_S, Event, EventKind

CUT_SHORT = "the program ended before the run did"

_MAX_RESCUE_TEXT = 4096


class Rescue(msgspec.Struct, frozen=True, kw_only=True):
    """What a rescue process wrote beside a journal: one line of JSON."""

    utc: str
    confirmed_off: bool
    text: str


def read_rescue(path: Path) -> Rescue | None:
    """None where no rescue wrote anything. What can't be read confirms nothing, and is kept as text. Raises OSError."""
    try:
        with path.open("rb") as file:
            data = file.read(_MAX_RESCUE_TEXT)
    except FileNotFoundError:
        return None
    try:
        return msgspec.json.decode(data, type=Rescue)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError):
        text = data.decode("utf-8", errors="replace")
        return Rescue(utc="", confirmed_off=False, text=f"what the rescue wrote can't be read: {text}")


def began_utc(contents: JournalContents) -> str | None:
    """When the run began; None where the head does not say it as an instant."""
    try:
        began = datetime.fromisoformat(contents.begun.utc)
        return utc_text(began) if began.utcoffset() is not None else None
    except (ValueError, OverflowError):  # at the ends of the calendar an offset leads out of it
        return None


def duration_s(contents: JournalContents) -> float:
    """As the run itself says; of one cut short, up to the last thing recorded."""
    if contents.ending is not None:
        return max(_finite(contents.ending.duration_s) or 0.0, 0.0)
    received = contents.trace.received
    return max(
        float(received.max()) * TICK_S if received.size else 0.0,
        *(_finite(event.t_s) or 0.0 for event in contents.events),
        0.0,
    )


def result_of(contents: JournalContents, rescue: Rescue | None) -> RunResult:
    """The run's own result; of a run cut short, what its readings and events show. Figures that aren't finite are None.

    The output counts as confirmed off where the run or the rescue read it back.
    """
    confirmed_by_rescue = rescue is not None and rescue.confirmed_off
    if contents.ending is None:
        return RunResult(
            outcome=Outcome.STOPPED,
            reason=CUT_SHORT,
            # A journal of a time before kicks were written down first has only those that were looked at.
            kicks=max(contents.kicks, sum(event.kind is EventKind.KICK for event in contents.events)),
            moved=any(event.kind is EventKind.MOVED for event in contents.events),
            max_volts=_largest(contents.trace.volts),
            max_amps=_largest(contents.trace.amps),
            output_confirmed_off=confirmed_by_rescue,
        )
    result = contents.ending.result
    return msgspec.structs.replace(
        result,
        resistance_ohm=_finite(result.resistance_ohm),
        resistance_low_ohm=_finite(result.resistance_low_ohm),
        resistance_high_ohm=_finite(result.resistance_high_ohm),
        max_volts=_finite(result.max_volts),
        max_amps=_finite(result.max_amps),
        winding_bound_c=_finite(result.winding_bound_c),
        locked_s=_finite(result.locked_s) or 0.0,
        output_confirmed_off=result.output_confirmed_off or confirmed_by_rescue,
    )


def events_of(contents: JournalContents, rescue: Rescue | None) -> list[Event]:
    """All events, times finite, and the rescue as the last."""
    events = [msgspec.structs.replace(event, t_s=_finite(event.t_s) or 0.0) for event in contents.events]
    if rescue is not None:
        values: dict[str, float | int | str | bool | None] = {"utc": rescue.utc, "confirmed_off": rescue.confirmed_off}
        events.append(Event(t_s=duration_s(contents), kind=EventKind.RESCUE, text=rescue.text, values=values))
    return events


def _largest(readbacks: npt.NDArray[np.float64]) -> float | None:
    finite = readbacks[np.isfinite(readbacks)]
    return float(finite.max()) if finite.size else None


def _finite(value: float | None) -> float | None:
    # A database keeps no NaN, and JSON neither: nothing was measured.
    return value if value is not None and math.isfinite(value) else None
