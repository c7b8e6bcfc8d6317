"""`benchlog recover`: the main job from the terminal, to the same filed record as in the window."""

import uuid
from pathlib import Path

import click

from benchlog.bench.frames import Request
from benchlog.cli.ceilings import job_limits, number_of
from benchlog.cli.confirming import confirm
from benchlog.cli.off_by_hand import look_back, somebody_there
from benchlog.cli.one_run import end_with, run_and_tell
from benchlog.cli.options import check_words, default_ledger, json_option, ledger_option, output_option, rated_volts_of
from benchlog.errors import Refused
from benchlog.motor.insulation import winding_ceiling_c
from benchlog.records import Item, RunKind
from benchlog.recovery.ceilings import Ceilings, Layer, Limits, intersect
from benchlog.recovery.steps import Sequence, above_ceilings, built_in, parse
from benchlog.settings import owner_settings, settings_file
from drivers.foreign import MAX_TEXT


@click.command("recover")
@click.option("--supply", "resource", default="", help="VISA address, such as TCPIP::127.0.0.1::5025::SOCKET.")
@click.option("--rated-voltage", default="", metavar="V", help="The motor's rated volts.")
@click.option("--max-voltage", metavar="V", help="Ceiling for this job.  [default: the rated voltage]")
@click.option("--max-current", metavar="A", help="Ceiling for this job.  [default: what the supply can]")
@click.option("--sequence", "sequence_name", default="starting-ladder", show_default=True, metavar="NAME|FILE")
@click.option("--job", "job_number", metavar="NUMBER", help="File with this job.  [default: a new one]")
@click.option("--item", "item_kind", default="motor", help="What it is, for a new job.")
@click.option("--serial", default="", help="Its serial, for a new job.")
@click.option("--complaint", default="", help="The owner's words, for a new job.")
@click.option("--load-state", default="dry, uncoupled", show_default=True)
@click.option("--thermal-class", default="A", show_default=True, help="Of the winding, as the label says (IEC 60085).")
@click.option("--yes", is_flag=True, help="Confirm everything but a swap of leads; hand steps are skipped.")
@output_option
@ledger_option
@json_option
def command(as_json: bool, **asked: object) -> None:
    """Find out whether a motor is dead or stuck, and free it under hard ceilings.

    Exit status: 0 freed or runs, 1 still stuck or undetermined, 2 refused, 3 an electrical finding, 4 a ceiling or
    stopped, 5 supply lost.
    """
    end_with(lambda: recover(as_json=as_json, **asked), as_json=as_json)  # type: ignore[arg-type]


def recover(
    *,
    resource: str,
    rated_voltage: str,
    max_voltage: str | None,
    max_current: str | None,
    sequence_name: str,
    job_number: str | None,
    item_kind: str,
    serial: str,
    complaint: str,
    load_state: str,
    thermal_class: str,
    yes: bool,
    output: int,
    ledger: Path | None,
    as_json: bool,
) -> int:
    """The exit status. Raises Refused, LedgerError before anything is switched on."""
    from benchlog.ledger.filing import file_left_behind, journals_of
    from benchlog.ledger.leads import lead_check
    from benchlog.ledger.store import Ledger
    from benchlog.ledger.supplies import spoken_with
    from benchlog.ledger.unlocks import owner_layer
    from benchlog.ledger.warmth import warmth_of

    check_words(resource, item=item_kind, serial=serial, complaint=complaint, load_state=load_state)
    rated_volts = rated_volts_of(rated_voltage)
    limits = job_limits(rated_volts, max_voltage, max_current)
    motor = Limits(winding_c=winding_ceiling_c(thermal_class))
    sequence, settings = _sequence(sequence_name), owner_settings()
    ask = somebody_there(yes=yes, as_json=as_json)
    with Ledger.open(ledger or default_ledger()) as book:
        for left in file_left_behind(book, journals_of(book.path)):
            click.echo(f"Filed what was left of run {left.run}, job {left.job:04d}.", err=True)
        look_back(book, resource, ask=ask)
        job = None if job_number is None else book.job_by_number(number_of(job_number))
        owner = owner_layer(book, settings, None if job is None else job.id)
        layers = {Layer.OWNER: owner.limits, Layer.MOTOR: motor, Layer.JOB: limits}
        ceilings = intersect(layers)
        problems = above_ceilings(sequence, rated_volts, ceilings)
        if problems and not _own(sequence_name) and rated_volts > ceilings.volts.value:
            raise Refused(_too_low(rated_volts, ceilings))
        if problems:
            raise Refused("; ".join(problems))
        if not yes:
            confirm(rated_volts, ceilings, owner.unlocked, ask=ask)
        leads = lead_check(book, resource, output)
        warmth = warmth_of(book, job=None if job is None else job.id, resource=resource, output=output)
        uid = uuid.uuid4().hex
        request = Request(
            uid=uid,
            kind=RunKind.RECOVERY,
            resource=resource,
            rated_volts=rated_volts,
            layers=layers,
            sequence=sequence,
            journal=str(journals_of(book.path) / f"{uid}.journal"),
            job=None if job is None else job.id,
            item=Item(kind=item_kind, serial=serial),
            complaint=complaint,
            load_state=load_state,
            unattended=yes,
            kicks_today=0 if job is None else book.kicks_on(job.id, book.clock.utc()[:10]),
            lead_ohm=0.0 if leads is None else leads.ohm,
            known_ohm=warmth.known_ohm,
            earlier=warmth.pulses,
            unlocked=owner.unlocked,
            output=output,
            **spoken_with(book, resource),
        )
        return run_and_tell(book, request, as_json=as_json, ask=ask)


def _own(name: str) -> bool:
    return Path(name).suffix == ".toml" or Path(name).exists()


def _too_low(rated_volts: float, ceilings: Ceilings) -> str:
    """Said to one who wrote no steps, and so knows of none."""
    most = ceilings.volts
    told = f"This job asks for {rated_volts:g} V, above the {most.layer}'s ceiling of {most.value:g} V"
    to_raise = f": the owner can raise it in {settings_file()}; or" if most.layer is Layer.OWNER else ":"
    return f"{told}{to_raise} give a sequence of your own that asks for less, --sequence FILE"


def _sequence(name: str) -> Sequence:
    path = Path(name)
    if not _own(name):
        return built_in(name)
    try:
        with path.open(encoding="utf-8") as file:
            return parse(file.read(MAX_TEXT + 1))
    except (OSError, UnicodeDecodeError) as error:
        raise Refused(f"sequence: {path}: {error}") from error
