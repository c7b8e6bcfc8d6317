"""Another instrument's curve laid on the start that is picked out: where it belongs, and its peak against readback."""

from dataclasses import dataclass

import numpy as np

from benchlog.ledger.captured import Captured
from benchlog.ledger.files import attach
from benchlog.ledger.store import Ledger
from benchlog.motor.align import Aligned, align, middles
from benchlog.motor.fit import Fitted
from benchlog.motor.startup import timing_of
from benchlog.pictures.taking import Taken
from benchlog.quantities import show
from benchlog.records import TICK_S
from benchlog.reports.foreign_csv import Choice, Curve, Preview, read
from ui import curve_texts as texts
from ui.charts.overlay_lines import NOTHING, Line

UNITS = {"amps": "A", "volts": "V"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """`line`: on the start's own time; `words`: where it belongs; `peaks`: the real peak against the readback's."""

    line: Line
    words: str
    peaks: str
    window_s: float


def lay(ledger: Ledger, of: Captured, start: int, taken: Taken, choice: Choice, who: str = "") -> Laid:
    """Reads the file, finds its place in the run's readback near start number `start` (from 0), and keeps it with the
    job, also where its place can't be told. Raises Refused, LedgerError."""
    curve = read(taken.data, choice)
    event = of.starts[start]
    trigger_s = float(event.values.get("trigger_s") or 0.0)
    offset, interval, by, why = _placed(ledger, of, curve, trigger_s)
    placed_s = trigger_s if offset is None else offset.value
    name = texts.capture_name(taken.name, _pace(curve))
    line = Line(
        name=name,
        t_s=curve.t_s + placed_s - trigger_s,
        volts=NOTHING if curve.volts is None else curve.volts,
        amps=NOTHING if curve.amps is None else curve.amps,
    )
    if offset is None or interval is None:
        words = texts.LAID_NOT.format(why=why)
    else:
        low, high = interval
        within = texts.ms(max(high - offset.value, offset.value - low))
        words = texts.LAID.format(offset=f"{offset.value - trigger_s:+.4f} s".replace("-", "−"), within=within, by=by)
    caption = texts.LAID_CAPTION.format(run=of.run.id, start=of.curves[start].number, chosen=chosen_words(choice))
    attach(ledger, of.run.job, taken, caption=f"{caption}; {words}"[:500], who=who)
    return Laid(line=line, words=words, peaks=_peaks(of, start, line), window_s=of.curves[start].window_s)


def _placed(
    ledger: Ledger, of: Captured, curve: Curve, near_s: float
) -> tuple[Fitted | None, tuple[float, float] | None, str, str]:
    """s of the run at the curve's time 0 with 95 %, by which quantity; or why it can't be told."""
    trace = ledger.trace(of.run.id)
    window_s, _ = timing_of(ledger.events(of.run.id))
    middle_s = middles(trace, window_s)
    rising = np.diff(middle_s, prepend=-np.inf) > 0
    found: dict[str, Aligned] = {}
    for name, values, readings in (("amps", curve.amps, trace.amps), ("volts", curve.volts, trace.volts)):
        if values is not None:
            good = rising & np.isfinite(readings)
            found[name] = align(curve.t_s, values, middle_s[good], readings[good], window_s=window_s, near_s=near_s)
    told = {name: one.offset_s for name, one in found.items() if one.offset_s is not None}
    if not told:
        return None, None, "", next(iter(found.values())).why
    by = min(told, key=lambda name: told[name].high - told[name].low)
    # Where in its query a reading was taken is not known.
    query_s = 0.5 * float(np.median(trace.received - trace.sent)) * TICK_S
    return told[by], (told[by].low - query_s, told[by].high + query_s), by, ""


def _peaks(of: Captured, start: int, line: Line) -> str:
    """The largest sample against the largest readback of the same start."""
    curve = of.curves[start]
    if not line.amps.size:
        return texts.PEAKS_NO_AMPS
    same = (line.t_s >= curve.t_s[0]) & (line.t_s <= curve.t_s[-1])
    if not same.any():
        return texts.PEAKS_NOT_SAME
    real, seen = float(line.amps[same].max()), float(curve.amps.max())
    return texts.PEAKS.format(real=show(real, "A"), seen=show(seen, "A"), share=f"{100 * seen / real:.0f}")


def _pace(curve: Curve) -> float:
    return float(np.median(np.diff(curve.t_s)))


def chosen_words(choice: Choice) -> str:
    """Which columns were taken, as the file's caption keeps it."""
    said = [] if choice.interval_s is None else [f"interval {choice.interval_s:g} s"]
    for name, pick in (("time", choice.time), ("volts", choice.volts), ("amps", choice.amps)):
        if pick is not None:
            said.append(f"{name} in column {pick.column + 1}{f' as {pick.unit}' if pick.unit else ''}")
    if choice.volts_scale != 1:
        said.append(f"volts × {choice.volts_scale:g}")
    if choice.amps_per_volt is not None:
        said.append(f"{choice.amps_per_volt:g} A/V")
    return ", ".join(said)


def guessed(seen: Preview) -> dict[str, int]:
    """Which column each quantity is likely in, from 0; those that nothing speaks for are left out."""
    found: dict[str, int] = {}
    for number, column in enumerate(seen.columns):
        if column.kind is not None:
            found.setdefault(column.kind.name.lower(), number)
    return found
