"""Captured starts of the ledger, as several commands ask for them."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from benchlog.errors import Refused
from benchlog.records import Run
from benchlog.recovery.start_test import StartTest

if TYPE_CHECKING:
    from benchlog.ledger.captured import Captured
    from benchlog.ledger.store import Ledger
    from benchlog.records import Lot


def captured_run(book: "Ledger", number: int) -> "Captured":
    """A run with starts. Raises Refused for one without, LedgerError."""
    from benchlog.ledger.captured import captured

    found = captured(book, number)
    if not found.starts:
        raise Refused(f"run {number} ended before its first start was captured")
    return found


def test_of(found: "Captured") -> StartTest:
    """Raises Refused where the run does not say by which it was measured."""
    if found.test is None:
        raise Refused(f"run {found.run.id} does not say by which start test it was measured")
    return found.test


def serial_of(book: "Ledger", run: Run) -> str:
    """Of the unit of a lot, else of the job's thing; "" where it has none. Raises LedgerError."""
    from benchlog.ledger.lots import unit

    return book.job(run.job).item.serial if run.unit is None else unit(book, run.unit).serial


def good_of_lot(book: "Ledger", lot: "Lot") -> list["Captured"]:
    """The last runs of known good units. Raises Refused where there is none, LedgerError."""
    from benchlog.ledger.good_runs import good_runs_of_lot

    found = good_runs_of_lot(book, lot)
    if not found:
        raise Refused(f'lot "{lot.name}" has no run of a known good unit: all starts captured and turning, none failed')
    return found


def good_run(book: "Ledger", number: int) -> "Captured":
    """One that was named. Raises Refused where it is of no known good one, LedgerError."""
    from benchlog.ledger.good_runs import refuse_not_good

    found = captured_run(book, number)
    refuse_not_good(book, found)
    return found


def by_serial(book: "Ledger", found: Sequence["Captured"]) -> list[list["Captured"]]:
    """Those of one motor together: without serials they could not be told apart. Raises LedgerError."""
    motors: dict[str, list[Captured]] = {}
    for one in found:
        motors.setdefault(serial_of(book, one.run).strip(), []).append(one)
    return list(motors.values())
