"""What a run is asked to be: the job's own figures and ceilings, put into one message to the bench process."""

import logging
from collections.abc import Sequence as Ordered
from dataclasses import dataclass
from uuid import uuid4

import msgspec

from benchlog.bench.frames import Request
from benchlog.ledger.filing import journals_of
from benchlog.ledger.leads import lead_check
from benchlog.ledger.store import Ledger
from benchlog.ledger.supplies import kept_supply, spoken_with
from benchlog.ledger.unlocks import OwnerLayer
from benchlog.ledger.warmth import warmth_of
from benchlog.motor.insulation import UNKNOWN_CLASS, class_of, winding_ceiling_c
from benchlog.records import Job, Run, RunKind
from benchlog.recovery.ceilings import Ceilings, Layer, Limits
from benchlog.recovery.steps import Sequence

_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchSetting:
    """What the bench may do to this job's motor. Volts and amps: the job's own layer of ceilings."""

    max_volts: float
    max_amps: float | None
    resource: str
    thermal_class: str = UNKNOWN_CLASS
    output: int = 1

    @property
    def limits(self) -> Limits:
        """The job's layer. Raises ValueError where the volts aren't above zero: nothing is run without them."""
        return Limits(volts=self.max_volts, amps=self.max_amps)

    def layers(self, owner: OwnerLayer) -> dict[Layer, Limits]:
        """All that is known before there is a supply. Raises ValueError, as `limits`."""
        return {Layer.OWNER: owner.limits} | self.own_layers()

    def own_layers(self) -> dict[Layer, Limits]:
        """The motor's and the job's. Raises ValueError, as `limits`."""
        motor = Limits(winding_c=winding_ceiling_c(self.thermal_class))
        return {Layer.MOTOR: motor, Layer.JOB: self.limits}


def request_for(
    kind: RunKind,
    job: Job,
    setting: BenchSetting,
    sequence: Sequence,
    ledger: Ledger,
    *,
    owner: OwnerLayer,
    starts: int,
) -> Request:
    """The owner's and the job's ceilings: the program's and the supply's are added at the bench. Raises Refused."""
    uid = uuid4().hex
    leads = lead_check(ledger, setting.resource, setting.output)
    warmth = warmth_of(ledger, job=job.id, resource=setting.resource, output=setting.output)
    return Request(
        uid=uid,
        kind=kind,
        resource=setting.resource,
        rated_volts=job.motor.rated_volts,
        layers=setting.layers(owner),
        sequence=sequence,
        journal=str(journals_of(ledger.path) / f"{uid}.journal"),
        job=job.id,
        load_state=job.load_state,
        lead_ohm=0.0 if leads is None or kind is RunKind.LEADS else leads.ohm,
        kicks_today=ledger.kicks_on(job.id, ledger.clock.utc()[:10]),
        known_ohm=warmth.known_ohm,
        earlier=warmth.pulses,
        starts=starts,
        unlocked=owner.unlocked,
        output=setting.output,
        **spoken_with(ledger, setting.resource),
    )


def ceilings_of(run: Run) -> tuple[float | None, float | None]:
    """Volts and amps that then held; None where the run ended before they were known."""
    try:
        held = msgspec.json.decode(run.ceilings, type=Ceilings | None)
    except msgspec.MsgspecError:
        _log.warning("the ceilings of run %s can't be read", run.id)
        held = None
    return (held.volts.value, held.amps.value) if held is not None else (None, None)


def output_of(ledger: Ledger, resource: str) -> int:
    """Which output of a supply its report is about, since that one was last asked for. Raises LedgerError."""
    kept = kept_supply(ledger, resource) if resource else None
    return 1 if kept is None else kept.output


def setting_of(job: Job, runs: Ordered[Run], resource: str, output: int = 1) -> BenchSetting:
    """What the bench was last set to for a job: as its last run was asked, or the rated volts."""
    request = request_of(runs[-1]) if runs else None
    limits = request.layers.get(Layer.JOB, Limits()) if request is not None else Limits()
    return BenchSetting(
        max_volts=limits.volts or job.motor.rated_volts,
        max_amps=limits.amps,
        resource=request.resource if request is not None else resource,
        thermal_class=class_of(request.layers.get(Layer.MOTOR, Limits()).winding_c)
        if request is not None
        else UNKNOWN_CLASS,
        output=request.output if request is not None else output,
    )


def request_of(run: Run) -> Request | None:
    """What was asked when the run was begun; None where a program of another age wrote it differently."""
    try:
        return msgspec.json.decode(run.request, type=Request)
    except msgspec.MsgspecError:
        _log.warning("the request of run %s can't be read", run.id)
        return None
