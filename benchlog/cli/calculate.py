"""`benchlog calculate`: small calculations about a board, each result as a line for a finding."""

import sys

import click

from benchlog.board.calculators import CALCULATORS, Calculator, calculate, span
from benchlog.board.notation import read, write
from benchlog.cli.options import Problem, fail, json_option, line, say
from benchlog.errors import Refused

_WIDTH = 80


@click.command("calculate")
@click.argument("name", required=False)
@click.argument("given", nargs=-1, metavar="[KEY=VALUE]...")
@json_option
def command(name: str | None, given: tuple[str, ...], as_json: bool) -> None:
    """A small calculation about a board, its result as a line for a finding. Without NAME: all there are.

    Values as they are typed anywhere: "upper=4k7", "current=0,5 A", "charge=12 nC". Writes nothing.
    """
    try:
        if name is None:
            _tell_all(as_json=as_json)
        else:
            _tell(name, given, as_json=as_json)
    except Problem as problem:
        fail(str(problem))
    sys.exit(0)


def _tell(name: str, given: tuple[str, ...], *, as_json: bool) -> None:
    done = calculate(name, _values(name, given))
    if as_json:
        line(
            calculator=name,
            given=done.given,
            results=[
                {"name": one.name, "unit": one.unit, "value": one.value, "low": one.low, "high": one.high}
                for one in done.results
            ],
            remarks=list(done.remarks),
            cautions=list(done.calculator.cautions),
            text=done.text,
        )
        return
    say(done.text)
    for one in done.calculator.cautions:
        say(_wrapped(one, "  - "))


def _values(name: str, given: tuple[str, ...]) -> dict[str, float]:
    units = {one.name: one.unit for one in CALCULATORS[name].inputs} if name in CALCULATORS else {}
    values: dict[str, float] = {}
    for pair in given:
        key, equals, text = pair.partition("=")
        key = key.strip()
        if not equals:
            raise Refused(f'{name[:40]}: "{pair[:40]}" is not KEY=VALUE')
        if key in values:
            raise Refused(f"{name[:40]}: {key[:40]} is given twice")
        try:
            values[key] = read(text, units[key]) if key in units else 0.0
        except ValueError as error:
            raise Refused(f"{name}: {key}: {error}") from error
    return values


def _tell_all(*, as_json: bool) -> None:
    for one in CALCULATORS.values():
        if as_json:
            line(**_description(one))
            continue
        click.echo(f"{one.name}: {one.words}")
        for asked in one.inputs:
            default = "" if asked.default is None else f"; {write(asked.default, asked.unit)} where not given"
            default = "; may be left out" if asked.optional else default
            click.echo(_wrapped(f"{asked.words}, {span(asked)}{default}", f"  {asked.name:16}", 18))
        click.echo(_wrapped(one.formula, "  formula         ", 18))
        click.echo(_wrapped(one.source, "  source          ", 18))


def _description(one: Calculator) -> dict[str, object]:
    return {
        "calculator": one.name,
        "words": one.words,
        "inputs": [
            {
                "name": asked.name,
                "words": asked.words,
                "unit": asked.unit,
                "low": asked.low,
                "high": asked.high,
                "default": asked.default,
                "optional": asked.optional,
            }
            for asked in one.inputs
        ],
        "results": [{"name": name, "unit": unit} for name, unit in one.gives],
        "formula": one.formula,
        "source": one.source,
        "cautions": list(one.cautions),
    }


def _wrapped(text: str, first: str, hang: int = 4) -> str:
    return click.wrap_text(text, _WIDTH, initial_indent=first, subsequent_indent=" " * hang)
