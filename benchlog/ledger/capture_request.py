"""What a run that measures starts, or runs a motor in, is asked to be: for the terminal and the window alike.

Warm winding, leads, kicks of today and an unlock come out of the ledger, as for every other run.
"""

from collections.abc import Mapping
from uuid import uuid4

from benchlog.bench.frames import Request
from benchlog.errors import Refused
from benchlog.ledger.filing import journals_of
from benchlog.ledger.leads import lead_check
from benchlog.ledger.lots import lot_of
from benchlog.ledger.store import Ledger
from benchlog.ledger.supplies import spoken_with
from benchlog.ledger.unlocks import OwnerLayer
from benchlog.ledger.warmth import warmth_of
from benchlog.records import Item, JobState, RunKind, Unit
from benchlog.recovery.ceilings import Layer, Limits, intersect
from benchlog.recovery.start_test import RunIn, StartTest, above_test_ceilings, check
from benchlog.recovery.steps import Sequence

AMBIENT_C = 25.0


def capture_request(
    ledger: Ledger,
    *,
    resource: str,
    rated_volts: float,
    test: StartTest | RunIn,
    layers: Mapping[Layer, Limits],
    owner: OwnerLayer,
    job: int | None = None,
    unit: Unit | None = None,
    unattended: bool = False,
    load_state: str = "dry, uncoupled",
    item: Item | None = None,
    complaint: str = "",
    output: int = 1,
) -> Request:
    """A start-up run by a StartTest, a run-in by a RunIn. `rated_volts` V; `owner`: by owner_layer() for this job.

    `layers`: the motor's and the job's; the owner's is added here, the program's and the supply's at the bench. `job`:
    the key of an open job; `unit`: of a lot, whose job it then is, with the ambient it is measured at. Without either
    the run gets a new job that measures, of `item` and `complaint`.
    Raises Refused for a test that asks for more than a ceiling, by the field's name, for a unit of another job, and in
    a lot that is closed; LedgerError.
    """
    check(test)
    if unit is not None and job not in (None, unit.job):
        raise Refused(f'unit "{unit.serial}" is not one of job {job}')
    layers = {**layers, Layer.OWNER: owner.limits}
    problems = above_test_ceilings(test, intersect(layers))
    if problems:
        raise Refused("; ".join(problems))
    job = job if unit is None else unit.job
    lot = None if job is None else lot_of(ledger, job)
    if lot is not None and lot.job.state is JobState.CLOSED:
        raise Refused(f"lot {lot.job.number} is closed")
    leads = lead_check(ledger, resource, output)
    warmth = warmth_of(ledger, job=job, resource=resource, output=output, unit=None if unit is None else unit.id)
    starts_up = isinstance(test, StartTest)
    uid = uuid4().hex
    return Request(
        uid=uid,
        kind=RunKind.START_UP if starts_up else RunKind.RUN_IN,
        resource=resource,
        rated_volts=rated_volts,
        layers=layers,
        sequence=Sequence(name="start-up" if starts_up else "run-in"),
        journal=str(journals_of(ledger.path) / f"{uid}.journal"),
        job=job,
        item=item,
        complaint=complaint,
        load_state=load_state,
        unattended=unattended,
        kicks_today=0 if job is None else ledger.kicks_on(job, ledger.clock.utc()[:10]),
        ambient_c=AMBIENT_C if lot is None else lot.ambient_c,
        lead_ohm=0.0 if leads is None else leads.ohm,
        known_ohm=warmth.known_ohm,
        earlier=warmth.pulses,
        unlocked=owner.unlocked,
        start_test=test if isinstance(test, StartTest) else None,
        run_in=test if isinstance(test, RunIn) else None,
        unit=None if unit is None else unit.id,
        unit_serial="" if unit is None else unit.serial,
        output=output,
        **spoken_with(ledger, resource),
    )
