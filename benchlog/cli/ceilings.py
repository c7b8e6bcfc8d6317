"""`benchlog ceilings`: the effective ceilings before any run, each with the layer it comes from."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from benchlog.cli.options import (
    Problem,
    default_ledger,
    fail,
    json_option,
    ledger_option,
    line,
    positive,
    rated_volts_of,
)
from benchlog.cli.words import QUANTITIES, quantity_text
from benchlog.errors import Refused
from benchlog.recovery.ceilings import CLASS_A, PROGRAM, PROGRAM_VOLTS, Layer, Limits, intersect
from benchlog.settings import owner_settings

if TYPE_CHECKING:
    from benchlog.ledger.unlocks import OwnerLayer

SUPPLY_LATER = "The supply's own range is known once it is connected; it holds where it is lower."


@click.command("ceilings")
@click.option(
    "--job", "job_text", metavar="NUMBER", help="With this job's rated volts, and an unlock of it that holds."
)
@click.option("--rated-voltage", metavar="V", help="The motor's rated volts.  [default: the job's]")
@click.option("--max-voltage", metavar="V", help="Ceiling for the job.  [default: the rated voltage]")
@click.option("--max-current", metavar="A", help="Ceiling for the job.  [default: what the supply can]")
@ledger_option
@json_option
def command(
    job_text: str | None,
    rated_voltage: str | None,
    max_voltage: str | None,
    max_current: str | None,
    ledger: Path | None,
    as_json: bool,
) -> None:
    """Show every effective ceiling with the layer it comes from, and what each layer gives."""
    from benchlog.ledger.store import Ledger
    from benchlog.ledger.unlocks import OwnerLayer, owner_layer

    try:
        settings = owner_settings()
        rated_volts = None if rated_voltage is None else rated_volts_of(rated_voltage)
        owner = OwnerLayer(limits=settings.ceilings)
        if job_text is not None:
            with Ledger.open(ledger or default_ledger()) as book:
                job = book.job_by_number(number_of(job_text))
                owner = owner_layer(book, settings, job.id)
            rated_volts = rated_volts or job.motor.rated_volts
        show_ceilings(owner, job_limits(rated_volts, max_voltage, max_current), as_json=as_json)
    except Problem as problem:
        fail(str(problem))


def job_limits(rated_volts: float | None, max_voltage: str | None, max_current: str | None) -> Limits:
    """The job's own layer. Raises Refused."""
    assert PROGRAM.amps is not None
    volts = rated_volts
    if max_voltage is not None:
        volts = positive(max_voltage, "maximum voltage", "V", at_most=PROGRAM_VOLTS)
    amps = None
    if max_current is not None:
        amps = positive(max_current, "maximum current", "A", at_most=PROGRAM.amps)
    return Limits(volts=volts, amps=amps)


def number_of(text: str) -> int:
    """A job's number. Raises Refused."""
    if not (text.isascii() and text.isdigit() and len(text) < 10):
        raise Refused(f'job: "{text[:40]}" is not a job\'s number')
    return int(text)


def show_ceilings(owner: "OwnerLayer", job: Limits, *, as_json: bool) -> None:
    """One line a quantity: what holds, the layer it comes from, and each layer's own value."""
    ceilings = intersect({Layer.OWNER: owner.limits, Layer.JOB: job})
    layers = {"program": PROGRAM, "owner": owner.limits, "motor": CLASS_A, "job": job}
    if not as_json:
        click.echo(_row("", "ceiling", "layer", *layers))
    for name, (word, unit) in QUANTITIES.items():
        bound = getattr(ceilings, name)
        values = {layer: getattr(limits, name) for layer, limits in layers.items()}
        if as_json:
            line(quantity=name, unit=unit, ceiling=bound.value, layer=bound.layer, **values, unlocked=owner.unlocked)
        else:
            shown = (quantity_text(name, value) for value in values.values())
            click.echo(_row(word, quantity_text(name, bound.value), bound.layer, *shown))
    if not as_json:
        click.echo(SUPPLY_LATER)
        if owner.unlocked:
            click.echo(f"The owner's layer is {owner.unlocked}")


def _row(*cells: str) -> str:
    return "  ".join(f"{cell:{width}}" for cell, width in zip(cells, (24, 9, 7, 9, 9, 9, 9), strict=True)).rstrip()
