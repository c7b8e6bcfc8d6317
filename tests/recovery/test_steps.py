"""Sequences as data: what is admissible, and errors that name the place."""

import contextlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.errors import Refused
from benchlog.recovery.ceilings import Layer, Limits, intersect
from benchlog.recovery.steps import Kicks, above_ceilings, built_in, parse, volts_of

KICKS = """
name = "one"
[[steps]]
kind = "kicks"
name = "a"
voltage = {voltage}
current_ratio = 1.0
on_s = 0.2
off_s = 1.0
tries = 3
"""


def refusal(text: str) -> str:
    with pytest.raises(Refused) as caught:
        parse(text)
    return str(caught.value)


def test_the_built_in_ladder_is_admissible_at_the_rated_volts() -> None:
    sequence = built_in("starting-ladder")
    assert above_ceilings(sequence, 12.0, intersect({Layer.JOB: Limits(volts=12.0)})) == []
    assert [volts_of(s, 12.0) for s in sequence.steps if isinstance(s, Kicks)][:3] == pytest.approx([7.2, 9.6, 12.0])


def test_a_step_above_a_ceiling_is_named_with_value_limit_unit_and_layer() -> None:
    sequence = parse(KICKS.format(voltage=5.0) + KICKS.format(voltage=7.5).replace('name = "one"', ""))
    problems = above_ceilings(sequence, 6.0, intersect({Layer.JOB: Limits(volts=6.0)}))
    assert problems == ["steps[1].voltage: 7.5 V is above the job's ceiling of 6 V"]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("name = 'x'\nfoo = 1", ["unknown field", "foo"]),
        (KICKS.format(voltage=5.0) + "colour = 'red'", ["steps[0]", "colour"]),
        (KICKS.format(voltage="nan"), ["steps[0].voltage", "nan"]),
        (KICKS.format(voltage="inf"), ["steps[0].voltage", "inf"]),
        (KICKS.format(voltage=-1.0), ["steps[0].voltage", "-1"]),
        (KICKS.format(voltage="'5'"), ["steps[0].voltage", "float"]),
        (KICKS.format(voltage=5.0) + "voltage_ratio = 1.0", ["steps[0]", "exactly one of voltage"]),
        (KICKS.format(voltage=5.0).replace("tries = 3", "tries = 0"), ["steps[0].tries"]),
        (KICKS.format(voltage=5.0).replace("on_s = 0.2", "on_s = 20.0"), ["steps[0].on_s", "20"]),
        (KICKS.format(voltage=5.0) + 'only_after = "lunch"', ["steps[0].only_after", "lunch"]),
        (KICKS.format(voltage=5.0).replace('"kicks"', '"dance"'), ["steps[0]", "dance"]),
        ("name = 'x'", ["steps: none"]),
        ("name = ", ["not TOML"]),
        ("x" * 70_000, ["longer than"]),
    ],
)
def test_a_bad_sequence_is_refused_with_its_place(text: str, words: list[str]) -> None:
    said = refusal(text)
    for word in words:
        assert word in said


def test_an_unknown_name_lists_the_known_ones() -> None:
    with pytest.raises(Refused, match="starting-ladder"):
        built_in("no-such")


@given(st.text(max_size=300))
def test_no_text_does_anything_but_parse_or_be_refused(text: str) -> None:
    with contextlib.suppress(Refused):
        assert parse(text).steps


def test_a_kick_that_is_longer_than_the_on_time_ceiling_is_named() -> None:
    problems = above_ceilings(parse(KICKS.format(voltage=5.0)), 6.0, intersect({Layer.OWNER: Limits(on_s=0.05)}))
    assert problems == ["steps[0].on_s: 0.2 s is above the owner's ceiling of 0.05 s in a row"]
