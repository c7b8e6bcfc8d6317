"""Captured starts as files, for `benchlog export --curves`: tables by their suffix, or a picture."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from benchlog.cli.captured_runs import captured_run, serial_of
from benchlog.cli.ceilings import number_of
from benchlog.errors import Refused

if TYPE_CHECKING:
    from benchlog.ledger.store import Ledger
    from benchlog.motor.limit_values import StartLimits
    from benchlog.motor.overlay import Curve
    from benchlog.reports.start_tables import Taken

TABLES, PICTURES = (".csv", ".npz", ".h5"), (".svg", ".png")


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """Of a run or of a lot; `limits`: None for the lot's; `start`: picked out in a picture."""

    run: int | None
    lot: str | None
    limits: int | None
    start: int | None
    form: str
    locale: str


def export_starts(book: "Ledger", wanted: Wanted, file: Path) -> dict[Path, bytes]:
    """Contents by file. Raises Refused, LedgerError."""
    suffix = file.suffix
    if suffix not in (*TABLES, *PICTURES):
        raise Refused(f"{file}: write a name that ends in {', '.join((*TABLES, *PICTURES))}")
    if wanted.form != "data" and suffix != ".csv":
        raise Refused(f"{file}: the {wanted.form} form is one of .csv")
    if wanted.start is not None and (suffix not in PICTURES or wanted.run is None):
        raise Refused("--start is picked out in a picture of one run: .svg or .png")
    taken, limits, verdicts = _taken(book, wanted)
    if suffix in PICTURES:
        return {file: _picture(taken, limits, wanted, verdicts, suffix)}
    from benchlog.reports.csv_forms import DATA, spreadsheet
    from benchlog.reports.start_files import csv_files, hdf5, npz
    from benchlog.reports.start_tables import tables_of

    tables = tables_of(taken, limits)
    if suffix == ".csv":
        form = DATA if wanted.form == "data" else spreadsheet(wanted.locale)
        return {file.with_name(name): data for name, data in csv_files(tables, file.name, form).items()}
    return {file: npz(tables) if suffix == ".npz" else hdf5(tables)}


def _taken(book: "Ledger", wanted: Wanted) -> "tuple[list[Taken], StartLimits | None, dict[int, bool]]":
    """Starts, limits, and of a lot whether a unit's run passed, by its key."""
    from benchlog.ledger.captured import captured_of_lot
    from benchlog.ledger.known_good import kept_limits
    from benchlog.ledger.lots import lot, lot_of, units
    from benchlog.reports.start_tables import Taken

    verdicts: dict[int, bool] = {}
    if wanted.run is not None:
        one = captured_run(book, wanted.run)
        found = [Taken(serial=serial_of(book, one.run), captured=one)]
        of = lot_of(book, one.run.job)
    else:
        of = lot(book, number_of(wanted.lot or ""))
        known = units(book, of)
        serials = {unit.id: unit.serial for unit in known}
        verdicts = {one.counts: one.passed for one in known if one.passed is not None and one.counts is not None}
        found = [
            Taken(serial=serials.get(one.run.unit or 0, ""), captured=one)
            for one in captured_of_lot(book, of)
            if one.starts
        ]
        if not found:
            raise Refused(f'lot "{of.name}" has no captured start')
    key = wanted.limits if wanted.limits is not None or of is None else of.limits_id
    return found, None if key is None else kept_limits(book, key).limits, verdicts


def _picture(
    taken: "Sequence[Taken]", limits: "StartLimits | None", wanted: Wanted, verdicts: dict[int, bool], suffix: str
) -> bytes:
    from benchlog.motor.overlay import overlay
    from benchlog.reports.drawing import svg
    from benchlog.reports.sheet_pdf import drawing_png
    from benchlog.reports.start_picture import draw_starts

    curves = [curve for one in taken for curve in one.captured.curves if len(curve.t_s) > 1]
    good = [curve for curve in curves if verdicts.get(curve.run)]
    curves = [*good, *(curve for curve in curves if not verdicts.get(curve.run))]
    if not curves:
        raise Refused("no start has two readings or more: nothing to draw")
    worst = [one for one in taken if verdicts.get(one.captured.run.id) is False and one.captured.curves]
    picked: list[Curve] = [replace(one.captured.curves[0], name=one.serial) for one in worst]
    if wanted.start is not None:
        picked = [replace(curve, name=f"start {curve.number}") for curve in curves if curve.number == wanted.start]
        if not picked:
            raise Refused(f"run {wanted.run} has no start {wanted.start}")
    band = None if limits is None else limits.curve
    # What failed would bend the mean that it is seen against; where none is judged it is the mean of all.
    mean = overlay(good) if good else None if verdicts else overlay(curves)
    drawing = draw_starts(curves, mean=mean, band=band, picked=picked)
    return svg(drawing).encode() if suffix == ".svg" else drawing_png(drawing)
