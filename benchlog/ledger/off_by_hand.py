"""Runs that ended without the output confirmed off, until a person says that the supply was switched off by hand.

What the person says is an entry of the run's job. It is found again by its text, so that text stays as it is.
"""

import getpass
from collections.abc import Sequence

from sqlalchemy import Text, cast, select

from benchlog.ledger.rows import run_of, select_runs
from benchlog.ledger.schema import EntryRow, RunRow
from benchlog.ledger.store import Ledger
from benchlog.records import STAGE_OF, EventKind, Run

_BEFORE, _AFTER = "run ", ": its output was not confirmed off; the supply was switched off by hand"


def not_confirmed(ledger: Ledger, *, resource: str | None = None) -> list[Run]:
    """Runs on one supply, or on all, whose output nobody knows to be off; last to begin first. Raises LedgerError."""
    text = _BEFORE + cast(RunRow.id, Text) + _AFTER
    said = select(EntryRow.id).where(EntryRow.job_id == RunRow.job_id, EntryRow.text == text).correlate(RunRow)
    wanted = (
        select_runs()
        .where(RunRow.output_confirmed_off.is_(False), ~said.exists())
        .order_by(RunRow.started_utc.desc(), RunRow.id.desc())
    )
    if resource is not None:
        wanted = wanted.where(RunRow.resource == resource)
    with ledger.reading() as session:
        return [run_of(ledger.path, row) for row in session.execute(wanted)]


def switched_off_utc(ledger: Ledger, run: Run) -> str | None:
    """When a rescue, or else a person, had the output of a run off; None where nobody ever said so."""
    for event in ledger.events(run.id):
        utc = event.values.get("utc")
        if event.kind is EventKind.RESCUE and event.values.get("confirmed_off") and isinstance(utc, str):
            return utc
    text = f"{_BEFORE}{run.id}{_AFTER}"
    return next((entry.utc for entry in ledger.entries(run.job) if entry.text == text), None)


def acknowledge(ledger: Ledger, runs: Sequence[Run]) -> None:
    """A person says that the supply of these runs was switched off by hand. Idempotent. Raises LedgerError."""
    if not runs:
        return
    utc, who = ledger.clock.utc(), _account()
    with ledger.adding() as session:
        for run in runs:
            line = {"job_id": run.job, "text": f"{_BEFORE}{run.id}{_AFTER}"}
            if session.scalars(select(EntryRow).filter_by(**line)).first() is None:
                session.add(EntryRow(utc=utc, stage=STAGE_OF[run.kind].value, who=who, **line))


def _account() -> str:
    # Asking for a name would keep the supply waiting.
    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):
        return ""
