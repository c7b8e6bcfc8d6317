"""What a run is asked to be: the job's own figures and ceilings, put into one message to the bench process."""

from collections.abc import Sequence as Ordered
from uuid import uuid4

from benchlog.bench.frames import Request
from benchlog.ledger.filing import journals_of
from benchlog.ledger.store import Ledger
from benchlog.records import Job, Run, RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.steps import Sequence
from ui.history.browsing import request_of
from ui.stages.intake import BenchSetting


def request_for(
    kind: RunKind,
    job: Job,
    runs: Ordered[Run],
    setting: BenchSetting,
    sequence: Sequence,
    ledger: Ledger,
    *,
    starts: int,
) -> Request:
    """Only the job's layer of ceilings: the program's, the owner's and the supply's are added at the bench."""
    uid = uuid4().hex
    probed = [run.result.resistance_ohm for run in runs if run.result.resistance_ohm is not None]
    return Request(
        uid=uid,
        kind=kind,
        resource=setting.resource,
        rated_volts=job.motor.rated_volts,
        layers={Layer.JOB: Limits(volts=setting.max_volts, amps=setting.max_amps)},
        sequence=sequence,
        journal=str(journals_of(ledger.path) / f"{uid}.journal"),
        job=job.id,
        load_state=job.load_state,
        kicks_today=ledger.kicks_on(job.id, ledger.clock.utc()[:10]),
        known_ohm=probed[-1] if probed else None,
        starts=starts,
    )


def setting_of(job: Job, runs: Ordered[Run], resource: str) -> BenchSetting:
    """What the bench was last set to for a job: as its last run was asked, or the rated volts."""
    request = request_of(runs[-1]) if runs else None
    limits = request.layers.get(Layer.JOB, Limits()) if request is not None else Limits()
    return BenchSetting(
        max_volts=limits.volts or job.motor.rated_volts,
        max_amps=limits.amps,
        resource=request.resource if request is not None else resource,
    )
