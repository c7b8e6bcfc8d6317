"""What a job waits for, and since when; and whether a thing was here before."""

from benchlog.errors import Refused
from benchlog.ledger.jobs import job_row, mark_changed
from benchlog.ledger.rows import job_of, select_jobs
from benchlog.ledger.schema import EntryRow, ItemRow, JobRow
from benchlog.ledger.store import Ledger
from benchlog.records import EntryKind, Item, Job, JobState, Stage

_WORDS = {
    JobState.OPEN: "Work goes on",
    JobState.FOR_APPROVAL: "Waits for approval",
    JobState.FOR_PART: "Waits for a part",
    JobState.FOR_OWNER: "Waits for the owner",
}


def set_waiting(ledger: Ledger, job_id: int, state: JobState, *, for_what: str = "", who: str = "") -> Job:
    """Where an open job stands from now on; a line in its record says so. `OPEN`: the wait is over.

    Raises Refused for a closed job, or to close one; LedgerError.
    """
    if state is JobState.CLOSED:
        raise Refused("a job is closed with its cause and its outcome")
    with ledger.writing() as session:
        row = job_row(session, job_id)
        if row.state == JobState.CLOSED:
            raise Refused(f"job {row.tag} was closed at {row.closed_utc}")
        utc, what = ledger.clock.utc(), for_what.strip() if state is not JobState.OPEN else ""
        if (row.state, row.waiting_for) != (state.value, what):
            row.state, row.waiting_for = state.value, what
            row.waiting_since_utc = None if state is JobState.OPEN else utc
            text = f"{_WORDS[state]}: {what}" if what else _WORDS[state]
            line = {"stage": Stage.FREE.value, "kind": EntryKind.STATE.value, "text": text, "who": who.strip()}
            session.add(EntryRow(job_id=job_id, utc=utc, **line))
            mark_changed(session, row, utc)
    return ledger.job(job_id)


def earlier_jobs(ledger: Ledger, item: Item, *, before: int | None = None) -> list[Job]:
    """Jobs of the same thing, newest first: by serial, and make where both labels give one. Without a serial, none.

    `before`: the key of a job that is not to be among them. Raises LedgerError.
    """
    serial = item.serial.strip()
    if not serial:
        return []
    wanted = select_jobs().where(ItemRow.serial == serial).order_by(JobRow.number.desc())
    with ledger.reading() as session:
        found = [job_of(ledger.path, row) for row in session.execute(wanted)]
    return [
        job for job in found if job.id != before and (not item.make or not job.item.make or job.item.make == item.make)
    ]
