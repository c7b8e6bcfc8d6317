"""The job on the bench and its record in the ledger: taken in, made safe, run, closed. Knows no widget."""

from collections.abc import Callable, Sequence

from benchlog.ledger.store import Ledger
from benchlog.ledger.unlocks import OwnerLayer, owner_layer, unlock
from benchlog.quantities import show
from benchlog.records import Entry, Item, Job, JobState, Motor, Run, RunKind, Stage
from benchlog.settings import Settings, owner_settings
from ui import texts
from ui.run_request import BenchSetting
from ui.way import Way, way_of


class BenchJob:
    """At most one job, with its entries and runs as the ledger has them. Every call may raise LedgerError, Refused."""

    def __init__(self, ledger: Ledger, settings: Callable[[], Settings] = owner_settings) -> None:
        self._ledger, self._settings = ledger, settings
        self.job: Job | None = None
        self.entries: list[Entry] = []
        self.runs: list[Run] = []

    def put_aside(self) -> None:
        self.job, self.entries, self.runs = None, [], []

    def load(self, job_id: int) -> Job:
        """Reads it anew."""
        job, entries, runs = self._ledger.job(job_id), self._ledger.entries(job_id), self._ledger.runs(job_id)
        self.job, self.entries, self.runs = job, entries, runs
        return job

    def reload(self) -> None:
        if self.job is not None:
            self.load(self.job.id)

    def take_in(self, *, item: Item, motor: Motor, complaint: str, load_state: str, setting: BenchSetting) -> Job:
        job = self._ledger.new_job(item=item, motor=motor, complaint=complaint, load_state=load_state)
        amps = texts.AMPS_NO_CEILING if setting.max_amps is None else show(setting.max_amps, "A")
        told = texts.INTAKE_ENTRY.format(
            volts=show(setting.max_volts, "V"), amps=amps, supply=setting.resource or texts.NOTHING
        )
        self.job = job
        self.keep(Stage.INTAKE, told)
        return self.load(job.id)

    def keep_made_safe(self, answers: Sequence[str]) -> None:
        for answer in answers:
            self.keep(Stage.MAKE_SAFE, answer)
        self.reload()

    def owner(self) -> tuple[Settings, OwnerLayer]:
        """The owner's settings, and what they come to for this job now."""
        settings = self._settings()
        return settings, owner_layer(self._ledger, settings, None if self.job is None else self.job.id)

    def unlock(self, *, who: str, why: str) -> None:
        if self.job is not None:
            unlock(self._ledger, self._settings(), self.job.id, who=who, why=why)

    def close(self, *, cause: str, work_done: str, prognosis: str) -> None:
        if self.job is not None:
            self._ledger.close_job(self.job.id, cause=cause, work_done=work_done, prognosis=prognosis)
            self.reload()

    def way(self) -> Way:
        return way_of(self.job, self.entries, self.runs)

    @property
    def closed(self) -> bool:
        return self.job is not None and self.job.state is JobState.CLOSED

    def tried(self, kind: RunKind) -> bool:
        return any(run.kind is kind for run in self.runs)

    def last_runs(self) -> list[Run]:
        """The last of each kind."""
        return list({run.kind: run for run in self.runs}.values())

    def keep(self, stage: Stage, text: str) -> None:
        """A line in the job's own record."""
        if self.job is not None:
            self._ledger.add_entry(self.job.id, Entry(utc=self._ledger.clock.utc(), stage=stage, text=text))
