"""`benchlog marking`: what a marking on a part means, with its neighbours in the series of preferred values."""

import sys

import click

from benchlog.board.markings import Reading, readings
from benchlog.board.series import place
from benchlog.cli.options import Problem, fail, json_option, line


@click.command("marking")
@click.argument("code")
@click.option("--capacitor", is_flag=True, help="On a capacitor, not on a resistor.")
@json_option
def command(code: str, capacitor: bool, as_json: bool) -> None:
    """What CODE on a part means: every reading, the likeliest first, with the code that gives it.

    With the neighbours in its series of preferred values (IEC 60063). Writes nothing.
    """
    try:
        for one in readings(code, capacitor=capacitor):
            if as_json:
                line(**_fields(one))
            else:
                click.echo(f"{one.code:17}{one.text}")
    except Problem as problem:
        fail(str(problem))
    sys.exit(0)


def _fields(one: Reading) -> dict[str, object]:
    at = None if one.value == 0 else place(one.value, fine=one.fine)
    return {
        "code": one.code,
        "value": one.value,
        "unit": one.unit,
        "low": one.low,
        "high": one.high,
        "series": [] if at is None else list(at.series),
        "neighbours_in": None if at is None else at.of,
        "below": None if at is None else at.below,
        "above": None if at is None else at.above,
        "text": one.text,
    }
