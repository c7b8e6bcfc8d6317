"""What is shown as files: tables with their description, NumPy arrays, HDF5, or a picture. Made in a thread."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from benchlog.errors import Refused
from benchlog.ledger.captured import Captured
from benchlog.ledger.store import Ledger
from benchlog.motor.overlay import Curve, overlay
from benchlog.reports.drawing import svg
from benchlog.reports.lot import gather_lot
from benchlog.reports.lot_document import lot_document
from benchlog.reports.regions import here
from benchlog.reports.sheet_pdf import drawing_png, sheet_pdf
from benchlog.reports.start_files import csv_files, hdf5, npz
from benchlog.reports.start_picture import draw_starts
from benchlog.reports.start_tables import Taken, tables_of
from ui import curve_texts as texts
from ui.curves.reading import Measured, Shown

SUFFIXES = (".csv", ".npz", ".h5", ".svg", ".png", ".pdf")


def usual_name(shown: Shown, *, report: bool = False) -> str:
    """Only what can be in a file's name; without its suffix."""
    name = shown.lot.name if shown.lot is not None else shown.job.tag
    kept = "".join(letter if letter.isalnum() or letter in "-_" else "_" for letter in name)[:60]
    return f"{kept or 'starts'}-{'report' if report else 'curves'}"


def files_of(ledger: Ledger, shown: Shown, picked: int | None, path: Path) -> dict[Path, bytes]:
    """Contents by file, by the suffix of `path`: a lot's units, or the picked run of a job. Raises Refused."""
    if path.suffix not in SUFFIXES:
        raise Refused(texts.EXPORT_SUFFIX.format(suffixes=", ".join(SUFFIXES)))
    measured = [one for one in _wanted(shown, picked) if one.captured is not None and one.captured.starts]
    if not measured:
        raise Refused(texts.EXPORT_NOTHING)
    limits = None if shown.limits is None else shown.limits.limits
    if path.suffix == ".pdf":
        return {path: _report(ledger, shown)}
    if path.suffix in (".svg", ".png"):
        curves = [curve for one in measured for curve in _captured(one).curves]
        band = None if limits is None else limits.curve
        drawing = draw_starts(curves, mean=overlay(curves), band=band, picked=_picked(shown, picked))
        return {path: svg(drawing).encode() if path.suffix == ".svg" else drawing_png(drawing)}
    serial = shown.job.item.serial
    taken = [Taken(serial=serial if one.unit is None else one.unit.serial, captured=_captured(one)) for one in measured]
    tables = tables_of(taken, limits)
    if path.suffix == ".csv":
        return {path.with_name(name): data for name, data in csv_files(tables, path.name).items()}
    return {path: npz(tables) if path.suffix == ".npz" else hdf5(tables)}


def _report(ledger: Ledger, shown: Shown) -> bytes:
    if shown.lot is None:
        raise Refused(texts.EXPORT_NO_LOT)
    region = here()
    return sheet_pdf(lot_document(gather_lot(ledger, shown.lot), region), region.paper)


def _wanted(shown: Shown, picked: int | None) -> Sequence[Measured]:
    if shown.lot is not None or picked is None:
        return shown.measured
    return shown.measured[picked : picked + 1]


def _captured(one: Measured) -> Captured:
    assert one.captured is not None
    return one.captured


def _picked(shown: Shown, picked: int | None) -> list[Curve]:
    one = None if picked is None else shown.measured[picked]
    if one is None or one.captured is None or not one.captured.curves:
        return []
    return [replace(one.captured.curves[0], name=one.name)]
