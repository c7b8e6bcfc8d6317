"""Options that say how starts are captured: those of `capture` and of `start-test` are the same."""

from collections.abc import Callable, Mapping
from typing import Any

import click

from benchlog.quantities import strict
from benchlog.recovery.start_test import StartTest, Trigger

_USUAL = StartTest(name="usual", volts=1.0)
_NUMBERS: tuple[tuple[str, str, str, str], ...] = (
    ("--volts", "volts", "V", "Level of a start."),
    ("--current", "amps", "A", "Current limit of a start.  [default: a little above the stall current]"),
    ("--on", "on_s", "s", "Held after the trigger."),
    ("--rest", "rest_s", "s", "At rest before each start."),
    ("--still", "still_s", "s", "Waited for the rotor to stand, at most."),
    ("--level", "level", "", "Of a trigger on amps or volts, in A or V."),
    ("--hysteresis", "hysteresis", "", "How far below the level it must have been before."),
    ("--before", "before_s", "s", "Kept of the time before the trigger."),
    ("--arm", "arm_s", "s", "Waited for a trigger, at most."),
)
"""Option, field of the test, unit, what it is."""


def start_test_options(command: Callable[..., Any]) -> Callable[..., Any]:
    """All of them, each None where it is not given."""
    triggers = click.Choice([one.value for one in Trigger])
    others = (
        click.option("--starts", type=int, help=f"How many.  [default: {_USUAL.starts}]"),
        click.option("--trigger", type=triggers, help=f"What begins one.  [default: {_USUAL.trigger}]"),
        click.option("--interleave", type=int, metavar="M", help="Starts that fill in one curve, read in turn."),
    )
    for option in (*reversed(others), *(_number_option(*row) for row in reversed(_NUMBERS))):
        command = option(command)
    return command


def _number_option(name: str, field: str, unit: str, words: str) -> Callable[..., Any]:
    usual = getattr(_USUAL, field)
    default = "" if usual is None or field in ("volts", "hysteresis") else f"  [default: {usual:g} {unit}]"
    return click.option(name, field, metavar=unit or "NUMBER", help=words + default)


def given_fields(options: Mapping[str, str | int | None]) -> dict[str, Any]:
    """The fields of a test that were given, as numbers. Raises Refused."""
    names = {field: name.removeprefix("--") for name, field, _, _ in _NUMBERS}
    given: dict[str, Any] = {}
    for field, value in options.items():
        if isinstance(value, str) and field in names:
            given[field] = strict(value, names[field])
        elif value is not None:
            given[field] = Trigger(str(value)) if field == "trigger" else value
    return given
