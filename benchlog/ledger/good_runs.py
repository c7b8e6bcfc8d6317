"""Which runs are of known good ones, for the window and the terminal alike: limits are worked out from no others."""

from benchlog.errors import Refused
from benchlog.ledger.captured import Captured, captured_of_lot
from benchlog.ledger.lot_units import unit, units
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome
from benchlog.records import Lot, Unit


def good_runs_of_lot(ledger: Ledger, lot: Lot) -> list[Captured]:
    """The last run of every unit that is a known good one, in the order in which they began. Raises LedgerError."""
    last = {one.run: one for one in units(ledger, lot)}
    found = [one for one in captured_of_lot(ledger, lot) if one.run.id in last]
    return [one for one in found if not why_not_good(one, last[one.run.id])]


def refuse_not_good(ledger: Ledger, found: Captured) -> None:
    """Raises Refused where a run is of no known good one, or of nobody knows which motor; LedgerError."""
    of = None if found.run.unit is None else unit(ledger, found.run.unit)
    if why := why_not_good(found, of):
        raise Refused(f"run {found.run.id} is of no known good one: {why}")
    if of is None and not ledger.job(found.run.job).item.serial.strip():
        raise Refused(f"run {found.run.id} has no serial: whether it is another motor can't be told")


def why_not_good(found: Captured, of: Unit | None) -> str:
    """In words, "" for a known good one: all starts of its test captured, each of which turned, and never failed.

    `of`: the unit of a lot that was measured.
    """
    result, count = found.run.result, len(found.starts)
    if result.outcome is not Outcome.RUNS:
        return f"it ended as {result.outcome.value}" + (f" ({result.reason})" if result.reason else "")
    if found.test is None:
        return "it does not say by which start test it was measured"
    if count != found.test.starts:
        return f"it captured {count} of the {found.test.starts} starts of its test"
    return f"unit {of.serial} failed" if of is not None and of.ever_failed else ""
