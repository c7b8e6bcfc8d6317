"""`benchlog import-trace`: another instrument's curve of a run, laid on its readback and kept with its job."""

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from benchlog.cli.options import Problem, fail, json_option, kept_ledger, ledger_option, line, say
from benchlog.errors import Refused
from benchlog.quantities import show, strict

if TYPE_CHECKING:
    from benchlog.motor.align import Aligned
    from benchlog.records import Attached, Event, Run, Trace
    from benchlog.reports.foreign_csv import Choice, Curve, Pick, Preview

_SEPARATORS = {"tab": "\t", "space": " "}
_WIDTH, _SHOWN = 80, 3
_NO_SCALE = 1.25
"""Readback and curve that differ by more than this factor are not in the same unit."""
_UNITS = {"amps": "A", "volts": "V"}


@click.command("import-trace")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--run", type=click.IntRange(min=1), help="The run that it was taken of.")
@click.option("--time", metavar="COL", help="Column of times: its number or name; COL:ms where its unit is not named.")
@click.option("--volts", metavar="COL", help="Column of volts.")
@click.option("--amps", metavar="COL", help="Column of amps, or of a current probe's volts.")
@click.option("--scale-volts", metavar="X", help="What the volts are multiplied by, such as 10 for a divider.")
@click.option("--amps-per-volt", metavar="X", help="Of a current probe: 10 for 100 mV/A.")
@click.option("--interval", metavar="S", help="Seconds from line to line, where there is no column of times.")
@click.option("--near", metavar="S", help="Where in the run the curve's time 0 lies, to within a second.")
@click.option("--separator", metavar="MARK", help='"," ";" "|" tab or space.  [default: found out]')
@click.option("--decimal-mark", metavar="MARK", help='"." or ",".  [default: found out]')
@click.option("--who", default="", metavar="NAME", help="Who took it.")
@ledger_option
@json_option
def command(
    file: Path,
    run: int | None,
    time: str | None,
    volts: str | None,
    amps: str | None,
    scale_volts: str | None,
    amps_per_volt: str | None,
    interval: str | None,
    near: str | None,
    separator: str | None,
    decimal_mark: str | None,
    who: str,
    ledger: Path | None,
    as_json: bool,
) -> None:
    """Lay a curve in a CSV FILE, such as an oscilloscope's, on the readback of a run, and keep FILE with its job.

    Without a choice of columns: shows those there are, and writes nothing. FILE is kept byte for byte,
    also where it can't be told where in the run it belongs.
    """
    from benchlog.pictures.taking import take_file
    from benchlog.reports.foreign_csv import Choice, preview, read

    try:
        taken = take_file(file)
        marks = {"separator": _SEPARATORS.get(separator or "", separator), "decimal_mark": decimal_mark}
        try:
            seen = preview(taken.data, **marks)
            if time is volts is amps is interval is None:
                _tell_columns(taken.name, seen, as_json=as_json)
                sys.exit(0)
            choice = Choice(
                time=_pick(time, seen),
                interval_s=None if interval is None else strict(interval, "interval"),
                volts=_pick(volts, seen),
                amps=_pick(amps, seen),
                volts_scale=1.0 if scale_volts is None else strict(scale_volts, "scale of the volts"),
                amps_per_volt=None if amps_per_volt is None else strict(amps_per_volt, "amps per volt"),
            )
            if run is None:
                raise Refused("the run that it was taken of is needed: --run")
            near_s = None if near is None else strict(near, "near")
            curve = read(taken.data, choice, **marks)
        except Refused as problem:
            raise Refused(f"{taken.name}: {problem}") from problem
        from benchlog.ledger.files import attach
        from benchlog.ledger.store import Ledger

        with Ledger.open(kept_ledger(ledger)) as book:
            filed = book.run(run)
            laid = _Laid(curve, book.trace(run), book.events(run), near_s)
            caption = f"run {run}: {_chosen(choice)}; {laid.words()}"
            kept = attach(book, filed.job, taken, caption=caption, who=who)
            number = book.job(filed.job).number
        laid.tell(filed, number, kept, as_json=as_json)
    except Problem as problem:
        fail(str(problem))
    sys.exit(0)


class _Laid:
    """A curve on a run's readback: by the quantity that tells more closely where it belongs, and what differs there."""

    def __init__(self, curve: "Curve", trace: "Trace", events: "list[Event]", near_s: float | None) -> None:
        import numpy as np

        from benchlog.motor.align import align, middles
        from benchlog.motor.startup import timing_of
        from benchlog.records import TICK_S

        self.curve = curve
        self.window_s, _ = timing_of(events)
        # Where in its query a reading was taken is not known.
        self.u_query_s = 0.5 * float(np.median(trace.received - trace.sent)) * TICK_S if len(trace.sent) else 0.0
        self.found: dict[str, Aligned] = {}
        self._middle_s = middles(trace, self.window_s)
        self._readings = {"amps": trace.amps, "volts": trace.volts}
        for name, values in (("amps", curve.amps), ("volts", curve.volts)):
            if values is not None:
                good = np.isfinite(self._readings[name]) & (np.diff(self._middle_s, prepend=-np.inf) > 0)
                self.found[name] = align(
                    curve.t_s,
                    values,
                    self._middle_s[good],
                    self._readings[name][good],
                    window_s=self.window_s,
                    near_s=near_s,
                )
        told = {name: one.offset_s for name, one in self.found.items() if one.offset_s is not None}
        self.by = min(told, key=lambda name: told[name].high - told[name].low, default=None)
        self.offset_s = None if self.by is None else told[self.by]

    def interval_s(self) -> tuple[float, float] | None:
        """s, 95 %: of the fit, and wherever in their queries the readings were taken."""
        if self.offset_s is None:
            return None
        return self.offset_s.low - self.u_query_s, self.offset_s.high + self.u_query_s

    def words(self) -> str:
        """The offset, on a line."""
        interval = self.interval_s()
        if self.offset_s is None or interval is None:
            return "offset not known"
        return f"offset {self.offset_s.value:.5f} s ({interval[0]:.5f} to {interval[1]:.5f} s), by its {self.by}"

    def peaks(self) -> dict[str, float] | None:
        """A: the largest sample, the largest average over the window and the largest readback of the same stretch."""
        import numpy as np

        from benchlog.motor.align import Averages

        if self.offset_s is None or self.curve.amps is None:
            return None
        at_s = self._middle_s - self.offset_s.value
        half = 0.5 * self.window_s
        both = (at_s >= self.curve.t_s[0] + half) & (at_s <= self.curve.t_s[-1] - half)
        both &= np.isfinite(self._readings["amps"])
        at_s = at_s[both]
        stretch = (self.curve.t_s >= at_s[0] - half) & (self.curve.t_s <= at_s[-1] + half)
        return {
            "imported_peak_amps": float(np.max(self.curve.amps[stretch])),
            "imported_peak_averaged_amps": float(
                np.max(Averages(self.curve.t_s, self.curve.amps).over(at_s, self.window_s))
            ),
            "readback_peak_amps": float(np.max(self._readings["amps"][both])),
        }

    def tell(self, run: "Run", job: int, kept: "Attached", *, as_json: bool) -> None:
        """What was found, and that it is kept."""
        peaks, interval = self.peaks(), self.interval_s()
        if as_json:
            line(
                run=run.id,
                job=job,
                file=kept.id,
                sha256=kept.sha256,
                caption=kept.caption,
                samples=len(self.curve.t_s),
                by=self.by,
                offset_s=None if self.offset_s is None else self.offset_s.value,
                low_s=None if interval is None else interval[0],
                high_s=None if interval is None else interval[1],
                window_s=self.window_s,
                peaks=peaks,
                quantities=[_fields(name, one) for name, one in self.found.items()],
            )
            return
        lasts_s = float(self.curve.t_s[-1] - self.curve.t_s[0])
        say(f"{kept.name}: {len(self.curve.t_s)} samples over {lasts_s:.4g} s, on run {run.id} of job {job:04d}")
        if self.offset_s is not None and interval is not None:
            query_ms = f"{1000 * self.u_query_s:.2g} ms"
            say(
                f"  Its time 0 is at {self.offset_s.value:.5f} s of the run ({interval[0]:.5f} to {interval[1]:.5f} s),"
            )
            say(f"  by its {self.by}; {query_ms} of it to either side is the supply's time to answer.")
        for name, one in self.found.items():
            _tell_quantity(name, one)
        if peaks is not None:
            imported, averaged, readback = (show(value, "A") for value in peaks.values())
            say(f"  Peak of the imported current: {imported}, its largest sample, noise included")
            say(f"  Peak readback: {readback}, an average over {1000 * self.window_s:.3g} ms, never the real inrush")
            say(f"  The imported current averaged likewise: at most {averaged}")
        say(f"  Kept with the job: {kept.caption}")


def _tell_quantity(name: str, one: "Aligned") -> None:
    if one.why:
        say(_wrapped(f"By its {name} it can't be told where it belongs: {one.why}."))
        return
    if one.gain is None:
        return
    unit = _UNITS[name]
    low, high = f"{one.gain.low:.4g}", f"{one.gain.high:.4g}"
    say(
        f"  Readback = {show(one.zero, unit)} + {one.gain.value:.4g} ({low} to {high}) × imported {name}; "
        f"{show(one.left, unit)} is left of {one.readings} readings"
    )
    if not 1 / _NO_SCALE <= one.gain.value <= _NO_SCALE:
        say(f"  Mind: the readback is {one.gain.value:.4g} times the imported {name}; look at the scale given.")


def _fields(name: str, one: "Aligned") -> dict[str, object]:
    return {
        "name": name,
        "offset_s": None if one.offset_s is None else one.offset_s.value,
        "gain": None if one.gain is None else one.gain.value,
        "gain_low": None if one.gain is None else one.gain.low,
        "gain_high": None if one.gain is None else one.gain.high,
        "zero": one.zero,
        "left": one.left,
        "readings": one.readings,
        "why": one.why,
    }


def _tell_columns(name: str, seen: "Preview", *, as_json: bool) -> None:
    layout = seen.layout
    if as_json:
        for number, column in enumerate(seen.columns, 1):
            line(
                column=number,
                name=column.name,
                unit=column.unit,
                kind=None if column.kind is None else column.kind.name.lower(),
                values=column.values,
                why=column.why,
            )
        line(separator=layout.separator, decimal_mark=layout.decimal_mark, first_line=layout.first_line)
        return
    separator = next((word for word, mark in _SEPARATORS.items() if mark == layout.separator), f'"{layout.separator}"')
    say(
        f'{name}: numbers from line {layout.first_line} on, separator {separator}, decimal mark "{layout.decimal_mark}"'
    )
    for number, column in enumerate(seen.columns, 1):
        kind = "?" if column.kind is None else column.kind.name.lower()
        values = ", ".join("—" if value is None else f"{value:g}" for value in column.values[:_SHOWN])
        say(f"{number:3}  {column.name[:20] or '—':20} {kind:6} {column.unit or '—':3} {values} …")
        say(_wrapped(column.why, "     "))
    say("Choose with --run RUN --time COL --volts COL --amps COL; see --help.")


def _pick(text: str | None, seen: "Preview") -> "Pick | None":
    """A column by its number or name, with ":unit" where one is said. Raises Refused."""
    from benchlog.reports.foreign_csv import Pick

    if text is None:
        return None
    names = {column.name.lower(): at for at, column in reversed(list(enumerate(seen.columns))) if column.name}
    for name, unit in ((text, ""), text.rpartition(":")[::2]):
        if name.lower() in names:
            return Pick(column=names[name.lower()], unit=unit)
        if name.isascii() and name.isdigit() and len(name) < 4:
            return Pick(column=int(name) - 1, unit=unit)
    raise Refused(f'there is no column "{text[:40]}"; name one by its number, 1 to {seen.layout.columns}, or its name')


def _chosen(choice: "Choice") -> str:
    said = [f"interval {choice.interval_s:g} s"] if choice.interval_s is not None else []
    for name, pick in (("time", choice.time), ("volts", choice.volts), ("amps", choice.amps)):
        if pick is not None:
            said.append(f"{name} in column {pick.column + 1}{f' as {pick.unit}' if pick.unit else ''}")
    if choice.volts_scale != 1:
        said.append(f"volts × {choice.volts_scale:g}")
    if choice.amps_per_volt is not None:
        said.append(f"{choice.amps_per_volt:g} A/V")
    return ", ".join(said)


def _wrapped(text: str, indent: str = "  ") -> str:
    return click.wrap_text(text, _WIDTH, initial_indent=indent, subsequent_indent=indent)
