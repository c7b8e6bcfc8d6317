"""Builds the demo ledger: the told jobs, their runs made by the simulated bench, filed as any run is.

The same every time: the instants are told, the runs are in virtual time from told seeds, and the names of the runs
follow from the jobs' numbers.
"""

import contextlib
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory
from uuid import UUID, uuid5

from benchlog.clock import VirtualClock, utc_text
from benchlog.errors import Refused
from benchlog.ledger.costs import charge_minutes, charge_other, charge_part, keep_part, parts
from benchlog.ledger.filing import file_journal
from benchlog.ledger.findings import add_finding
from benchlog.ledger.start_tests import lock
from benchlog.ledger.store import Ledger
from benchlog.ledger.waiting import set_waiting
from benchlog.records import Closing, Entry, RunKind, Stage
from demo_db.jobs import DemoJob, Happening, demo_jobs, demo_shelf
from demo_db.lots import demo_lots, demo_test
from demo_db.measuring import measure_lot, variant
from demo_db.virtual import VirtualBench

HOUR_CENTS = 5400
"""What an hour costs at the invented workshop."""
_NAMES = UUID("3f1e4bb5-52cf-4f0e-9d0c-6a7d10a3c0de")


@dataclass(slots=True, kw_only=True)
class _Open:
    """A job on its way: its key in the ledger, the bench it was last on, its runs so far."""

    key: int
    told: DemoJob
    bench: VirtualBench | None = None
    runs: int = 0


def build(path: Path) -> None:
    """A new ledger at `path`. Raises Refused where there is a file already, which stays as it is; LedgerError, OSError.

    While it works the process is in another working folder: a run's record keeps the name of its journal, which must
    not differ from one machine to the next.
    """
    path = path.absolute()
    if path.exists():
        raise Refused(f"{path} is there already and is left as it is: name a new file for the demo ledger")
    try:
        with TemporaryDirectory(prefix="demo-ledger-") as folder, contextlib.chdir(folder):
            _tell(path)
    except BaseException:
        path.unlink(missing_ok=True)  # half a demo would be refused the next time
        raise


def _tell(path: Path) -> None:
    jobs = demo_jobs()
    began = min(job.opened for job in jobs)
    clock = VirtualClock(utc_start=began)
    told: list[tuple[datetime, int, DemoJob | Happening]] = [(job.opened, n, job) for n, job in enumerate(jobs)]
    told += [(happening.at, n, happening) for n, job in enumerate(jobs) for happening in job.happenings]
    open_jobs: dict[int, _Open] = {}
    with Ledger.open(path, clock=clock) as ledger:
        for spare in demo_shelf():
            keep_part(ledger, spare.name, each_cents=spare.each_cents, stock=spare.stock)
        # A stable sort: what happens at one instant happens in the order in which it is told.
        for at, number, what in sorted(told, key=lambda one: one[0]):
            clock.wait((at - began).total_seconds())
            match what:
                case DemoJob():
                    open_jobs[number] = _Open(key=_opened(ledger, what), told=what)
                case Happening():
                    _happened(ledger, open_jobs[number], what)
        for lot in demo_lots():
            measure_lot(ledger, clock, began, lot)


def _opened(ledger: Ledger, job: DemoJob) -> int:
    return ledger.new_job(
        item=job.item, motor=job.motor, complaint=job.complaint, load_state=job.load_state, taken_in=job.taken_in
    ).id


def _happened(ledger: Ledger, job: _Open, what: Happening) -> None:
    if what.kind is not None:
        _run(ledger, job, what, what.kind)
    elif what.cause:
        ledger.close_job(job.key, Closing(**{name: getattr(what, name) for name in Closing.__struct_fields__}))
    elif what.minutes:
        charge_minutes(ledger, job.key, what.minutes, hour_cents=HOUR_CENTS, text=what.text, who=what.who)
    elif what.part:
        part = next(part for part in parts(ledger) if part.name == what.part)
        charge_part(ledger, job.key, part.id, who=what.who)
    elif what.cents:
        charge_other(ledger, job.key, what.text, what.cents, who=what.who)
    elif what.found:
        seen = {name: getattr(what, name) for name in ("marking", "place", "purpose", "value", "who")}
        add_finding(ledger, job.key, what.found, **seen)
    elif what.waits is not None:
        set_waiting(ledger, job.key, what.waits, for_what=what.text, who=what.who)
    else:
        stage = what.stage or Stage.INTAKE
        entry = Entry(utc=utc_text(what.at), stage=stage, text=what.text, who=what.who, kind=what.by_hand)
        ledger.add_entry(job.key, entry)


def _run(ledger: Ledger, job: _Open, what: Happening, kind: RunKind) -> None:
    if what.scenario or job.bench is None:
        job.bench = VirtualBench(variant(what.scenario, what.motor), seed=what.seed, began=what.at)
    else:
        # Hours of rest are not simulated step by step: the model lives through `again_after_s` of them.
        job.bench.clock = VirtualClock(job.bench.clock.now() + what.again_after_s, utc_start=what.at)
    job.runs += 1
    uid = uuid5(_NAMES, f"job {job.key}, run {job.runs}").hex
    request = job.bench.request(
        Path(f"{uid}.journal"),
        kind,
        job=job.key,
        load_state=job.told.load_state,
        kicks_today=ledger.kicks_on(job.key, _day(what.at)),
        start_test=lock(ledger, demo_test(), "bench").test if kind is RunKind.START_UP else None,
    )
    file_journal(ledger, job.bench.run(request).journal)


def _day(at: datetime) -> str:
    return at.astimezone(UTC).date().isoformat()
