"""What a person says before the output may go on, where one is at the keyboard."""

import click

from benchlog.cli.words import CAUTIONS, quantity_text
from benchlog.errors import Refused
from benchlog.recovery.ceilings import Ceilings


def confirm(rated_volts: float, ceilings: Ceilings, unlocked: str, *, ask: bool) -> None:
    """Raises Refused where it is not confirmed, or nobody is there to."""
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
