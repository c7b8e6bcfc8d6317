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


def last_runs_of(book: "Ledger", lot: "Lot", *, but_failed: bool = False) -> list["Captured"]:
    """The last captured starts of each unit. Raises Refused where there is none, LedgerError."""
    from benchlog.ledger.captured import captured_of_lot
    from benchlog.ledger.lots import units

    last = {unit.run for unit in units(book, lot) if not (but_failed and unit.passed is False)}
    found = [one for one in captured_of_lot(book, lot) if one.run.id in last and one.starts]
    if not found:
        raise Refused(f'lot "{lot.name}" has no captured start')
    return found


def by_unit(book: "Ledger", found: Sequence["Captured"]) -> list[list["Captured"]]:
    """Those of one motor together: of one unit, one serial, else one job. Raises LedgerError."""
    motors: dict[tuple[str, object], list[Captured]] = {}
    for one in found:
        serial = serial_of(book, one.run)
        motors.setdefault(("serial", serial) if serial else ("job", one.run.job), []).append(one)
    return list(motors.values())
