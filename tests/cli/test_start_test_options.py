"""Options of a start test: the same words and names for a capture and for a test that is locked."""

import pytest

from benchlog.cli.capture import command as capture
from benchlog.cli.start_test import command as start_test
from benchlog.cli.start_test_options import given_fields
from benchlog.errors import Refused
from benchlog.recovery.start_test import StartTest, Trigger


def test_both_commands_have_an_option_for_every_field_and_nothing_given_is_nothing_said() -> None:
    fields = set(StartTest.__struct_fields__) - {"name", "version"}
    of_capture, of_test = (
        {one.name: (one.opts, one.default, str(one.type)) for one in command.params if one.name in fields}
        for command in (capture, start_test)
    )
    assert set(of_capture) == fields
    assert of_capture == of_test
    assert given_fields(dict.fromkeys(fields)) == {}


def test_what_is_given_is_numbers_and_a_trigger() -> None:
    asked: dict[str, str | int | None] = {"volts": "11.5", "amps": None, "starts": 7, "trigger": "amps"}
    assert given_fields(asked) == {"volts": 11.5, "starts": 7, "trigger": Trigger.AMPS}
    with pytest.raises(Refused, match="current"):
        given_fields({"amps": "1,5"})
