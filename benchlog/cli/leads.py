"""`benchlog leads`: what a supply's leads have, their clips joined, so that runs on it can take it out."""

import uuid
from pathlib import Path

import click

from benchlog.bench.frames import Request
from benchlog.cli.ceilings import number_of
from benchlog.cli.off_by_hand import look_back, somebody_there
from benchlog.cli.one_run import end_with, run_and_tell
from benchlog.cli.options import check_words, default_ledger, json_option, ledger_option, output_option
from benchlog.errors import Refused
from benchlog.records import Item, RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.probing import LEADS_VOLTS
from benchlog.recovery.steps import built_in
from benchlog.settings import owner_settings


@click.command("leads")
@click.option("--supply", "resource", default="", help="VISA address, such as TCPIP::127.0.0.1::5025::SOCKET.")
@click.option("--job", "job_number", metavar="NUMBER", help="File with this job.  [default: one of its own]")
@click.option("--yes", is_flag=True, help="The clips are joined, and no motor is between them.")
@output_option
@ledger_option
@json_option
def command(resource: str, job_number: str | None, yes: bool, output: int, ledger: Path | None, as_json: bool) -> None:
    """Measure the leads, their clips joined: at most 1 A at 1 V, a second.

    Later runs on this supply take the result out of the winding's resistance. Exit status as for recover; 0 where the
    leads were measured.
    """
    end_with(
        lambda: measure(resource, job_number, yes=yes, output=output, ledger=ledger, as_json=as_json), as_json=as_json
    )


def measure(
    resource: str, job_number: str | None, *, yes: bool, output: int, ledger: Path | None, as_json: bool
) -> int:
    """The exit status. Raises Refused, LedgerError before anything is switched on."""
    from benchlog.ledger.filing import file_left_behind, journals_of
    from benchlog.ledger.leads import LEADS_ITEM, leads_job
    from benchlog.ledger.store import Ledger
    from benchlog.ledger.supplies import spoken_with
    from benchlog.ledger.unlocks import owner_layer

    check_words(resource)
    ask = somebody_there(yes=yes, as_json=as_json)
    with Ledger.open(ledger or default_ledger()) as book:
        file_left_behind(book, journals_of(book.path))
        look_back(book, resource, ask=ask)
        job = leads_job(book, resource, output) if job_number is None else book.job_by_number(number_of(job_number)).id
        if not yes:
            if not ask:
                raise Refused("nobody at the keyboard to confirm: give --yes if the clips are joined")
            if not click.confirm("Are the two clips joined, with no motor between them?", default=False):
                raise Refused("not confirmed")
        owner = owner_layer(book, owner_settings(), job)
        uid = uuid.uuid4().hex
        request = Request(
            uid=uid,
            kind=RunKind.LEADS,
            resource=resource,
            rated_volts=LEADS_VOLTS,
            layers={Layer.OWNER: owner.limits, Layer.JOB: Limits(volts=LEADS_VOLTS)},
            sequence=built_in("starting-ladder"),
            journal=str(journals_of(book.path) / f"{uid}.journal"),
            job=job,
            item=Item(kind=LEADS_ITEM),
            complaint=f"leads of {resource}",
            load_state="clips joined",
            unattended=True,
            unlocked=owner.unlocked,
            output=output,
            **spoken_with(book, resource),
        )
        return run_and_tell(book, request, as_json=as_json, ask=ask)
