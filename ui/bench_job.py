"""The job on the bench and its record in the ledger: taken in, made safe, run, closed. Knows no widget."""

from collections.abc import Callable
from collections.abc import Sequence as Ordered

from benchlog.errors import Refused
from benchlog.ledger.likes import past_of
from benchlog.ledger.store import Ledger
from benchlog.ledger.unlocks import OwnerLayer, owner_layer, unlock
from benchlog.motor.winding import Winding
from benchlog.outcome import RunResult, WindingVerdict
from benchlog.quantities import show
from benchlog.records import (
    STAGE_OF,
    Closing,
    Entry,
    EntryKind,
    Item,
    Job,
    JobState,
    Motor,
    Run,
    RunKind,
    Stage,
    TakenIn,
)
from benchlog.recovery.advice import Advice, Past, advise, same_as_last
from benchlog.recovery.ceilings import intersect
from benchlog.recovery.steps import Sequence
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

    def take_in(
        self,
        *,
        item: Item,
        motor: Motor,
        complaint: str,
        load_state: str,
        setting: BenchSetting,
        taken_in: TakenIn | None = None,
    ) -> Job:
        job = self._ledger.new_job(
            item=item, motor=motor, complaint=complaint, load_state=load_state, taken_in=taken_in
        )
        amps = texts.AMPS_NO_CEILING if setting.max_amps is None else show(setting.max_amps, "A")
        told = texts.INTAKE_ENTRY.format(
            volts=show(setting.max_volts, "V"), amps=amps, supply=setting.resource or texts.NOTHING
        )
        self.job = job
        self.keep(Stage.INTAKE, told)
        return self.load(job.id)

    def keep_made_safe(self, answers: Ordered[str]) -> None:
        for answer in answers:
            self.keep(Stage.MAKE_SAFE, answer, EntryKind.CHECK)
        self.reload()

    def owner(self) -> tuple[Settings, OwnerLayer]:
        """The owner's settings, and what they come to for this job now."""
        settings = self._settings()
        return settings, owner_layer(self._ledger, settings, None if self.job is None else self.job.id)

    def unlock(self, *, who: str, why: str) -> None:
        if self.job is not None:
            unlock(self._ledger, self._settings(), self.job.id, who=who, why=why)

    def advice(self, setting: BenchSetting, ladder: Sequence) -> tuple[Advice, Past | None, str]:
        """For this job as it stands: what to do, the run to do again if that can be, and if not why not."""
        assert self.job is not None
        job, (_, owner) = self.job, self.owner()
        ceilings = intersect(setting.layers(owner))
        past = past_of(self._ledger, job.item, not_job=job.id)
        probed = [
            run.result
            for run in self.runs
            if run.kind is not RunKind.LEADS and run.result.winding_verdict is not WindingVerdict.NOT_PROBED
        ]
        last = [run.result.outcome for run in self.runs if STAGE_OF[run.kind] is Stage.FREE]
        told = advise(
            rated_volts=job.motor.rated_volts,
            ceilings=ceilings,
            ladder=ladder,
            winding=_winding_of(probed[-1]) if probed else None,
            past=past,
            last=last[-1] if last else None,
            kicks_today=self._ledger.kicks_on(job.id, self._ledger.clock.utc()[:10]),
        )
        if told.sequence is None or not any(one.freed for one in past):
            return told, None, ""
        try:
            return told, same_as_last(past, ceilings, job.motor.rated_volts), ""
        except Refused as refusal:
            return told, None, str(refusal)

    def close(self, closing: Closing) -> None:
        if self.job is not None:
            self._ledger.close_job(self.job.id, closing)
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

    def keep(self, stage: Stage, text: str, kind: EntryKind = EntryKind.NOTE) -> None:
        """A line in the job's own record."""
        if self.job is not None:
            entry = Entry(utc=self._ledger.clock.utc(), stage=stage, text=text, kind=kind)
            self._ledger.add_entry(self.job.id, entry)


def _winding_of(result: RunResult) -> Winding:
    return Winding(
        verdict=result.winding_verdict,
        reason=result.reason,
        ohm=result.resistance_ohm,
        reference_ohm=result.resistance_ohm,
    )
