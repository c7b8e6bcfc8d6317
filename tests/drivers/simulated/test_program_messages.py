"""How program messages are read: headers, paths, numbers, and what is refused.

Source of the forms unless said otherwise: IEEE 488.2-1992 / SCPI-1999, as published.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers.simulated.scpi_tree import Tree, Unit, nodes_of, units_of
from tests.drivers.simulated.subject import Subject


@pytest.mark.parametrize(
    "header", ["SYST:ERR?", "SYSTEM:ERROR?", "SYST:ERROR?", "SYSTEM:ERR?", "syst:err?", "Syst:Err:Next?"]
)
def test_exact_short_and_long_forms_are_accepted_in_any_case(header: str) -> None:
    assert Subject().say(header) == '0,"No error"'  # published


@pytest.mark.parametrize(
    "header", ["SY:ERR?", "SYS:ERR?", "SYSTE:ERR?", "SYSTEMS:ERR?", "SYST:ER?", "SYST:ERRO?", "SYST:ERRORS?"]
)
def test_forms_between_short_and_long_are_undefined_headers(header: str) -> None:
    subject = Subject()
    assert subject.say(header) is None
    assert subject.error() == -113  # published


@pytest.mark.parametrize(
    "message",
    [
        "VOLT 5",
        "volt 5",
        "VOLTAGE 5",
        "VOLT:LEV 5",
        "VOLT:AMPL 5",
        "VOLT:LEV:IMM:AMPL 5",
        "SOUR:VOLT 5",
        ":SOURCE:VOLTAGE:LEVEL:IMMEDIATE:AMPLITUDE 5",
        "SOUR1:VOLT1 5",
        "VOLT\t5",
        "  VOLT   5  ",
        "VOLT 5;",
    ],
)
def test_optional_nodes_may_be_left_out_and_a_suffix_of_one_is_the_default(message: str) -> None:
    subject = Subject()
    subject.say(message)
    assert subject.output.set_v == 5.0
    assert subject.error() == 0


@pytest.mark.parametrize("message", ["VOLT2 5", "SOUR3:VOLT 5", "OUTP2 ON"])
def test_another_suffix_is_refused_and_nothing_changes(message: str) -> None:
    subject = Subject()
    subject.say(message)
    assert (subject.output.set_v, subject.output.wanted_on) == (0.0, False)
    assert subject.error() == -114  # from memory


def test_a_compound_message_goes_on_at_the_level_of_the_last_header() -> None:
    # Published: TRIG:SOUR EXT;COUNT 10 is TRIG:SOUR EXT and TRIG:COUNT 10; a leading colon is the root.
    tree = Tree({"TRIGger:SOURce": "source", "TRIGger:COUNt": "count", "COUNt": "root count"})
    units = [unit for unit in units_of("TRIG:SOUR EXT;COUNT 10;*WAI;COUN 11;:COUN 12") if isinstance(unit, Unit)]
    assert [tree.find(unit) for unit in units if not unit.header.startswith("*")] == [
        "source",
        "count",
        "count",
        "root count",
    ]
    assert [unit.parameters for unit in units] == ["EXT", "10", "", "11", "12"]


def test_common_commands_do_not_move_the_level() -> None:
    subject = Subject()
    assert subject.say("MEAS:VOLT?;*OPC?;CURR?") == "12.345;1;0.678"
    assert subject.error() == 0


def test_a_second_path_without_a_leading_colon_starts_at_the_level_of_the_first() -> None:
    subject = Subject()
    assert subject.say("MEAS:VOLT?;MEAS:CURR?") == "12.345"
    assert subject.error() == -113
    assert subject.say("MEAS:VOLT?;:MEAS:CURR?") == "12.345;0.678"


def test_short_forms_are_the_capitals_of_the_definition() -> None:
    assert [(node.short, node.long, node.optional) for node in nodes_of("[SOURce:]VOLTage:PROTection[:LEVel]")] == [
        ("SOUR", "SOURCE", True),
        ("VOLT", "VOLTAGE", False),
        ("PROT", "PROTECTION", False),
        ("LEV", "LEVEL", True),
    ]


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("2.73E+1", 27.3),
        ("27.3", 27.3),
        ("0.273", 0.273),
        (".5", 0.5),
        ("1.", 1.0),
        ("+1", 1.0),
        ("273E-1", 27.3),
        ("5 V", 5.0),
        ("5V", 5.0),
        ("500 mV", 0.5),
        ("500MV", 0.5),
        ("0.01 kV", 10.0),
        ("MAX", 30.0),
        ("maximum", 30.0),
        ("MIN", 0.0),
        ("DEF", 0.0),
    ],
)
def test_numbers_are_taken_in_every_form_they_may_have(text: str, value: float) -> None:
    subject = Subject()
    subject.say(f"VOLT {text}")
    assert subject.error() == 0
    assert subject.output.set_v == pytest.approx(value, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", -109),
        ("-", -102),
        (".", -102),
        ("E3", -104),
        ("1E", -131),
        ("1.2.3", -102),
        ("1 2", -102),
        ("0x10", -102),
        ("--1", -102),
        ("ABC", -104),
        ("5 A", -131),
        ("5,6", -108),
        ("31", -222),
        ("-1", -222),
        ("9.9E37", -222),
        ("1E999", -222),
    ],
)
def test_malformed_and_impossible_numbers_are_refused_and_nothing_changes(text: str, code: int) -> None:
    subject = Subject()
    subject.say("VOLT 7")
    subject.say(f"VOLT {text}")
    assert subject.output.set_v == 7.0
    assert subject.error() == code
    assert subject.error() == 0


@pytest.mark.parametrize(
    ("message", "code"),
    [
        ("*IDN? 3", -108),
        ("*RST 1", -108),
        ("OUTP", -109),
        ("OUTP MAYBE", -104),
        ("VOLT? 5", -104),
        ("VOLT", -109),
        ("*XYZ?", -113),
        ("*IDN", -113),
        ("MEAS:VOLT", -113),
        ("OUTP?? ", -102),
        ("VOLT:", -102),
        ("1VOLT 3", -102),
        ("VÖLT 3", -102),
        ("\x00", -102),
        (";VOLT 3", -102),
        ("VOLT;;CURR 1", -109),
    ],
)
def test_wrong_messages_are_refused_by_their_class(message: str, code: int) -> None:
    subject = Subject()
    subject.say(message)
    assert subject.error() == code
    assert subject.output.set_v == 0.0


def test_after_a_command_error_the_rest_of_the_message_is_thrown_away() -> None:
    subject = Subject()
    subject.say("VOLT 3;NONSENSE 4;CURR 2")
    assert (subject.output.set_v, subject.output.limit_a) == (3.0, 0.5)


def test_a_value_out_of_range_drops_its_own_command_only() -> None:
    subject = Subject()
    subject.say("VOLT 99;CURR 2")
    assert (subject.output.set_v, subject.output.limit_a) == (0.0, 2.0)
    assert subject.error() == -222


@given(st.text(max_size=200))
def test_no_text_whatever_breaks_the_instrument(message: str) -> None:
    subject = Subject()
    subject.say(message)
    error = subject.say("SYST:ERR?")
    assert error is not None
    assert error.isascii()
    assert error.isprintable()
    assert error.count('"') == 2
    assert subject.say("*IDN?") == "Harbour Workshop,Simulated bench supply,test,1.0"
