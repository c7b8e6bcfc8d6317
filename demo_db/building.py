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
from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.records import Closing, Entry, RunKind, Stage
from demo_db.jobs import DemoJob, Happening, demo_jobs
from demo_db.virtual import VirtualBench
from drivers.simulated.scenario import load

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
        # A stable sort: what happens at one instant happens in the order in which it is told.
        for at, number, what in sorted(told, key=lambda one: one[0]):
            clock.wait((at - began).total_seconds())
            match what:
                case DemoJob():
                    open_jobs[number] = _Open(key=_opened(ledger, what), told=what)
                case Happening():
                    _happened(ledger, open_jobs[number], what)


def _opened(ledger: Ledger, job: DemoJob) -> int:
    return ledger.new_job(item=job.item, motor=job.motor, complaint=job.complaint, load_state=job.load_state).id


def _happened(ledger: Ledger, job: _Open, what: Happening) -> None:
    if what.kind is not None:
        _run(ledger, job, what, what.kind)
    elif what.cause:
        ledger.close_job(job.key, Closing(cause=what.cause, work_done=what.work_done, prognosis=what.prognosis))
    else:
        stage = what.stage or Stage.INTAKE
        ledger.add_entry(job.key, Entry(utc=utc_text(what.at), stage=stage, text=what.text, who=what.who))


def _run(ledger: Ledger, job: _Open, what: Happening, kind: RunKind) -> None:
    if what.scenario or job.bench is None:
        job.bench = VirtualBench(load(what.scenario), seed=what.seed, began=what.at)
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
    )
    file_journal(ledger, job.bench.run(request).journal)


def _day(at: datetime) -> str:
    return at.astimezone(UTC).date().isoformat()
