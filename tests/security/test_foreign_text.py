"""Sequences, dialects and replies from elsewhere: a value or the named error, within bounds, and shown inert."""

import contextlib
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchlog.errors import Refused
from benchlog.recovery.steps import parse as sequence
from drivers import scpi
from drivers.dialect import DialectError
from drivers.dialect import parse as dialect
from drivers.foreign import inert
from tests.drivers.test_dialect import TEXT, changed
from tests.recovery.test_steps import KICKS

ESCAPES = "\x1b[31m\x07\x9b2J\u202e\u2066\u200b\x00\r\n"
HOSTILE = {
    "nested arrays": "a = " + "[" * 30_000,
    "nested arrays on short lines": "a = " + "[\n" * 20_000,
    "nested tables": "a = " + "{b=" * 9_000,
    "a long number": "a = " + "9" * 4_050 + "\nb = " + "9" * 4_080,
    "a number that Python does not take": "a = " + "9" * 5_000,
    "a dotted key": "a" + ".a" * 30_000 + " = 1",
    "many dotted keys": "\n".join(f"k{n}" + ".a" * 2_000 + " = 1" for n in range(16)),
    "a dotted table": "[" + ".".join("a" * 30_000) + "]",
    "many tables": "\n".join(f"[a{n}]" for n in range(9_000)),
    "a key of escapes": '"\\u001b[31m\\u202e" = 1',
    "half a pair": 'name = "\\ud800"',
    "a NUL": 'name = "\x00"',
    "much text": "#" * 10_000_000,
}


def lines_of(length: int) -> "st.SearchStrategy[str]":
    shaped = st.sampled_from(["[", "]", "{", "}", "=", '"', "'", "\n", ".", "steps", "kind", "kicks", "name", "1e999"])
    return st.lists(shaped | st.text(max_size=8), max_size=length).map("".join)


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE.keys())
def test_a_hostile_file_is_refused_with_a_line_that_no_terminal_obeys(text: str) -> None:
    began_s = time.process_time()
    with pytest.raises(Refused) as refused:
        sequence(text)
    with pytest.raises(DialectError) as not_a_dialect:
        dialect(text)
    # Far above what it takes (0.2 s): only what grows without bound is seen. A dotted key took 19 s.
    assert time.process_time() - began_s < 10.0
    for error in (refused.value, not_a_dialect.value):
        assert str(error) == inert(str(error))
        assert len(str(error)) < 6_000


@given(lines_of(60))
def test_any_text_is_a_sequence_or_refused(text: str) -> None:
    with contextlib.suppress(Refused):
        sequence(text)


@given(lines_of(60), st.integers(0, len(TEXT)))
def test_any_text_is_a_dialect_or_an_error(text: str, at: int) -> None:
    for whole in (text, TEXT[:at] + text + TEXT[at:]):
        with contextlib.suppress(DialectError):
            dialect(whole)


@pytest.mark.parametrize("mark", ["\\u001b[2J", "\\u202e", "\\u0007", "\\u0000", "\\r"])
def test_a_sequences_words_hold_nothing_that_a_terminal_obeys(mark: str) -> None:
    kicks = KICKS.format(voltage=5.0)
    sequence(kicks)
    for at in (kicks.replace('"one"', f'"one{mark}"'), kicks.replace('"a"', f'"a{mark}"')):
        with pytest.raises(Refused, match=r"name: holds characters that can't be printed"):
            sequence(at)


@pytest.mark.parametrize(
    "text",
    [
        changed("cc = 0", "cc = -1"),
        changed("cc = 0", "cc = 999999999999"),
        changed("cv = 1", "cv = 15"),
        changed("deepest = 64", "deepest = 0"),
        changed("deepest = 64", "deepest = 99999999999999"),
        changed("window_s = 0.02", "window_s = nan"),
        changed('name = "SCPI-1999, one output"', 'name = "\\u001b[2J"'),
        changed('name = "SCPI-1999, one output"', f'name = "{"x" * 2000}"'),
        changed('"OUTP ON"', f'"OUTP {"N" * 2000}"'),
    ],
)
def test_a_dialects_figures_and_names_are_bounded(text: str) -> None:
    with pytest.raises(DialectError):
        dialect(text)


@pytest.mark.parametrize(
    "sly", [";:OUTP ON", "\\n*RST", "\\r*RST", "\\u0000", "{value}{value}", "{0}", "{value.real}", "}", "#", "\\u037e"]
)
@pytest.mark.parametrize("unit", ["VOLT {value}", "OUTP ON", "MEAS:VOLT?", "*IDN?"])
def test_no_unit_of_a_dialect_takes_a_second_command(unit: str, sly: str) -> None:
    assert f'"{unit}"' in TEXT
    with pytest.raises(DialectError):
        dialect(TEXT.replace(f'"{unit}"', f'"{unit}{sly}"'))


@settings(max_examples=300)
@given(st.text(max_size=400) | st.from_regex(r"[+-]?[0-9.]{1,30}(e[+-]?[0-9]{1,4})?[;,]?", fullmatch=True))
def test_any_reply_is_a_value_or_no_value(reply: str) -> None:
    for form in (scpi.number, scpi.step, scpi.boolean, scpi.bits, scpi.error, scpi.identity):
        with contextlib.suppress(ValueError):
            form(reply)
    with contextlib.suppress(ValueError):
        assert len(scpi.replies(reply, 6)) == 6


@pytest.mark.parametrize("unit", ["9", ",", ";", "e", "\x1b[", "\u202e", '"', "<b>"])
def test_a_reply_of_64_kb_is_answered_at_once_and_shown_short(unit: str) -> None:
    reply = unit * (scpi.LONGEST_REPLY // len(unit))
    for form in (scpi.step, scpi.boolean, scpi.bits, scpi.error, scpi.identity):
        with pytest.raises(ValueError) as caught:  # noqa: PT011  the form of the text is what is checked
            form(reply)
        assert len(str(caught.value)) < 400
        assert str(caught.value) == inert(str(caught.value))


@given(st.text(alphabet=st.sampled_from(ESCAPES + "ab<>&"), max_size=40))
def test_what_a_supply_says_of_itself_is_inert(text: str) -> None:
    code, words = scpi.error(f'-113,"{text}"')
    assert code == -113
    assert words.isprintable()
    named = scpi.identity(f"a{text},b,c,d")
    assert named.isprintable()
    assert named.isascii()


@given(st.floats())
def test_a_parameter_is_a_plain_decimal_number(value: float) -> None:
    with contextlib.suppress(ValueError):
        assert scpi.at_most(value, before=0, after=4).replace(".", "", 1).isdecimal()
