"""`benchlog licences`: under which licences the parts of this program come."""

import click

from benchlog.cli.options import json_option, line, say


@click.command("licences")
@json_option
def command(as_json: bool) -> None:
    """List the parts of this program and their licences."""
    from benchlog.licences import QT_NOTE, listing

    parts = listing()
    if as_json:
        for part in parts:
            line(name=part.name, version=part.version, licence=part.licence)
        return
    wide = max(len(f"{part.name} {part.version}") for part in parts)
    for part in parts:
        say(f"{f'{part.name} {part.version}':{wide}}  {part.licence}")
    click.echo()
    click.echo(click.wrap_text(QT_NOTE, 100))
