"""`benchlog recover`: the main job from the terminal, to the same filed record as in the window."""

import sys
import uuid
from pathlib import Path
from typing import TYPE_CHECKING

import click

from benchlog.bench.frames import Ended, Request
from benchlog.cli.ceilings import job_limits, number_of
from benchlog.cli.off_by_hand import look_back, shout, somebody_there, wait_for_acknowledgement
from benchlog.cli.options import Problem, default_ledger, json_option, ledger_option, line, rated_volts_of, say
from benchlog.cli.words import CAUTIONS, NOT_OFF, OUTCOMES, off_sentence, quantity_text
from benchlog.errors import JournalDamaged, LedgerError, Refused
from benchlog.outcome import EXIT_STATUS, Outcome, RunResult
from benchlog.quantities import show
from benchlog.records import Item, RunKind
from benchlog.recovery.ceilings import Ceilings, Layer, intersect
from benchlog.recovery.steps import Sequence, above_ceilings, built_in, parse
from benchlog.settings import owner_settings
from drivers.foreign import MAX_TEXT

if TYPE_CHECKING:
    from benchlog.ledger.filing import Filed


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
@click.option("--yes", is_flag=True, help="Confirm everything but a swap of leads; hand steps are skipped.")
@ledger_option
@json_option
def command(as_json: bool, **asked: object) -> None:
    """Find out whether a motor is dead or stuck, and free it under hard ceilings.

    Exit status: 0 freed or runs, 1 still stuck or undetermined, 2 refused, 3 an electrical finding, 4 a ceiling or
    stopped, 5 supply lost.
    """
    try:
        sys.exit(recover(as_json=as_json, **asked))  # type: ignore[arg-type]
    except Problem as problem:
        sys.exit(_ended_early(Outcome.REFUSED, str(problem), as_json=as_json))
    except OSError as error:
        sys.exit(_ended_early(Outcome.REFUSED, f"{error.strerror or error}", as_json=as_json))
    except KeyboardInterrupt:
        sys.exit(_ended_early(Outcome.STOPPED, "Ctrl-C before anything was switched on", as_json=as_json))


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
    yes: bool,
    ledger: Path | None,
    as_json: bool,
) -> int:
    """The exit status. Raises Refused, LedgerError before anything is switched on."""
    from benchlog.bench.link import Link
    from benchlog.cli.watching import Stopper, signals_to, watch
    from benchlog.ledger.filing import file_journal, file_left_behind, journals_of
    from benchlog.ledger.store import Ledger
    from benchlog.ledger.unlocks import owner_layer
    from benchlog.ledger.warmth import warmth_of

    if not resource.strip():
        raise Refused("no supply: give its address with --supply")
    for name, text in (("item", item_kind), ("serial", serial), ("complaint", complaint), ("load state", load_state)):
        if not text.isprintable():  # what is no text at all could not be kept with the run
            raise Refused(f"{name}: has characters that can't be shown")
    rated_volts = rated_volts_of(rated_voltage)
    limits = job_limits(rated_volts, max_voltage, max_current)
    sequence, settings = _sequence(sequence_name), owner_settings()
    ask = somebody_there(yes=yes, as_json=as_json)
    with Ledger.open(ledger or default_ledger()) as book:
        for left in file_left_behind(book, journals_of(book.path)):
            click.echo(f"Filed what was left of run {left.run}, job {left.job:04d}.", err=True)
        look_back(book, resource, ask=ask)
        job = None if job_number is None else book.job_by_number(number_of(job_number))
        owner = owner_layer(book, settings, None if job is None else job.id)
        layers = {Layer.OWNER: owner.limits, Layer.JOB: limits}
        ceilings = intersect(layers)
        problems = above_ceilings(sequence, rated_volts, ceilings)
        if problems:
            raise Refused("; ".join(problems))
        if not yes:
            _confirm(rated_volts, ceilings, owner.unlocked, ask=ask)
        warmth = warmth_of(book, job=None if job is None else job.id, resource=resource)
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
            known_ohm=warmth.known_ohm,
            earlier=warmth.pulses,
            unlocked=owner.unlocked,
        )
        with signals_to(Stopper()) as stopper:  # until it is filed: a second Ctrl-C takes nothing away
            ended = watch(Link(request), stopper, as_json=as_json)
            filed, problem = None, "nothing was reached that could be filed"
            if ended.journal is not None:
                try:
                    filed = file_journal(book, Path(ended.journal))
                except (LedgerError, Refused, JournalDamaged, OSError) as error:
                    problem = f"not filed yet, nothing is lost: {error}; it is filed at the next start"
            _tell(ended, filed, problem, as_json=as_json)
        if ask and off_sentence(ended) == NOT_OFF:  # Ctrl-C leaves it open again
            wait_for_acknowledgement(book, resource)
        return EXIT_STATUS[ended.result.outcome]


def _sequence(name: str) -> Sequence:
    path = Path(name)
    if not (path.suffix == ".toml" or path.exists()):
        return built_in(name)
    try:
        with path.open(encoding="utf-8") as file:
            return parse(file.read(MAX_TEXT + 1))
    except (OSError, UnicodeDecodeError) as error:
        raise Refused(f"sequence: {path}: {error}") from error


def _confirm(rated_volts: float, ceilings: Ceilings, unlocked: str, *, ask: bool) -> None:
    if not ask:
        raise Refused("nobody at the keyboard to confirm: give --yes if the bench is safe")
    click.echo(CAUTIONS)
    volts, amps = quantity_text("volts", ceilings.volts.value), quantity_text("amps", ceilings.amps.value)
    click.echo(f"Rated {quantity_text('volts', rated_volts)}. Ceilings: {volts} (from the {ceilings.volts.layer}),")
    click.echo(f"{amps} (from the {ceilings.amps.layer}); the supply's own range holds where it is lower.")
    if unlocked:
        click.echo(f"The owner's layer is {unlocked}")
    if not click.confirm("Is the bench safe and the motor connected?", default=False):
        raise Refused("not confirmed")


def _tell(ended: Ended, filed: "Filed | None", problem: str, *, as_json: bool) -> None:
    result = ended.result
    if filed is None:
        say(f"benchlog: {problem}", err=True)
    if as_json:
        job, run = (None, None) if filed is None else (filed.job, filed.run)
        line(event="filed", **_fields(result), job=job, run=run)
        if off_sentence(ended) == NOT_OFF:
            click.echo(f"benchlog: {NOT_OFF}", err=True)
        return
    say(f"\n{OUTCOMES[result.outcome]}\n  {result.reason}")
    if result.resistance_ohm is not None:
        low, high = show(result.resistance_low_ohm, "Ω"), show(result.resistance_high_ohm, "Ω")
        click.echo(f"  Winding {show(result.resistance_ohm, 'Ω')} ({low} to {high}).")
    if result.max_volts is not None:
        most = f"{show(result.max_volts, 'V')} and {show(result.max_amps, 'A')}"
        click.echo(f"  {result.kicks} kicks; at most {most} read back.")
    if filed is not None:
        click.echo(f"  Filed as run {filed.run} of job {filed.job:04d}.")
    off = off_sentence(ended)
    if off == NOT_OFF:
        shout()
    else:
        click.echo(f"  {off}")


def _fields(result: RunResult) -> dict[str, object]:
    return {name: getattr(result, name) for name in result.__struct_fields__}


def _ended_early(outcome: Outcome, text: str, *, as_json: bool) -> int:
    if as_json:
        line(event="filed", **_fields(RunResult(outcome=outcome, reason=text)), job=None, run=None)
    say(f"benchlog: {outcome}: {text}", err=True)
    return EXIT_STATUS[outcome]
