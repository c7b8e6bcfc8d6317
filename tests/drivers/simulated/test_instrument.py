"""The instrument's text layer. Source of the forms unless said otherwise: IEEE 488.2-1992 / SCPI-1999, as published."""

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers.simulated.instrument import Instrument
from drivers.simulated.scpi_tree import Tree, Unit, nodes_of, units_of
from drivers.simulated.status import QUEUE_DEPTH, Refusal, Status, event_bit
from drivers.simulated.supply_model import Mode, OutputStage, SupplyData, Trip


class Subject:
    """An instrument on an output stage that never steps; the meter shows fixed figures."""

    def __init__(self, data: SupplyData | None = None) -> None:
        data = data or SupplyData()
        self.output = OutputStage(data, random.Random(0))
        self.instrument = Instrument(data, self.output, lambda: (12.345, 0.678), "test")

    def say(self, message: str) -> str | None:
        self.instrument.write(message)
        return self.instrument.read() if self.instrument.reply_waits else None

    def error(self) -> int:
        """The code of the next error in the queue."""
        reply = self.say("SYST:ERR?")
        assert reply is not None
        return int(reply.split(",")[0])


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


def test_several_queries_answer_in_one_line() -> None:
    subject = Subject()
    subject.say("VOLT 5;CURR 1")
    assert subject.say(":MEAS:VOLT?;:MEAS:CURR?;:VOLT?;:CURR?;:OUTP?") == "12.345;0.678;5.000;1.000;0"


def test_limits_can_be_asked_for() -> None:
    subject = Subject()
    assert subject.say("VOLT? MAX;VOLT? MIN;CURR? MAX;CURR? MIN") == "30.000;0.000;5.000;0.000"
    assert subject.say("VOLT:PROT? MAX") == "33.000"


def test_figures_have_as_many_decimals_as_the_resolution() -> None:
    assert Subject(SupplyData(step_v=0.01, step_a=0.1)).say("MEAS:VOLT?;CURR?") == "12.35;0.7"


@pytest.mark.parametrize(
    "command",
    ["*CLS", "*ESE 1", "*ESE?", "*ESR?", "*IDN?", "*OPC", "*OPC?", "*RST", "*SRE 1", "*SRE?", "*STB?", "*TST?", "*WAI"],
)
def test_every_common_command_that_is_required_is_there(command: str) -> None:
    subject = Subject()
    reply = subject.say(command)  # published list
    assert (reply is not None) == command.endswith("?")
    assert subject.error() == 0


@pytest.mark.parametrize(
    ("command", "reply"),
    [
        ("SYST:VERS?", "1999.0"),
        ("STAT:OPER?", "0"),
        ("STAT:OPER:EVEN?", "0"),
        ("STAT:OPER:COND?", "0"),
        ("STAT:OPER:ENAB?", "0"),
        ("STAT:QUES?", "0"),
        ("STAT:QUES:EVENT?", "0"),
        ("STATUS:QUESTIONABLE:CONDITION?", "0"),
        ("STAT:QUES:ENAB?", "0"),
        ("STAT:PRES", None),
    ],
)
def test_every_scpi_command_that_is_required_is_there(command: str, reply: str | None) -> None:
    subject = Subject()
    assert subject.say(command) == reply  # published list
    assert subject.error() == 0


def test_identity_has_four_fields() -> None:
    assert Subject().say("*IDN?") == "Harbour Workshop,Simulated bench supply,test,1.0"


def test_the_error_queue_is_first_in_first_out_and_overflows_at_its_end() -> None:
    subject = Subject()
    subject.say("VOLT 99")
    for _ in range(QUEUE_DEPTH + 5):
        subject.say("NONSENSE")
    codes = [subject.error() for _ in range(QUEUE_DEPTH)]
    assert codes == [-222] + [-113] * (QUEUE_DEPTH - 2) + [-350]  # published
    assert subject.say("SYST:ERR?") == '0,"No error"'


@pytest.mark.parametrize(
    ("code", "bit"), [(-113, 0x20), (-222, 0x10), (-350, 0x08), (7, 0x08), (-410, 0x04), (-420, 0x04)]
)
def test_each_error_class_sets_its_event_bit(code: int, bit: int) -> None:
    assert event_bit(code) == bit  # published


def test_event_bits_are_read_once() -> None:
    subject = Subject()
    assert subject.say("*ESR?") == "128"  # power on, from memory
    subject.say("NONSENSE")
    subject.say("VOLT 99")
    subject.say("*OPC")
    assert subject.say("*ESR?") == str(0x20 | 0x10 | 0x01)
    assert subject.say("*ESR?") == "0"


def test_a_message_before_the_reply_was_taken_interrupts_the_query() -> None:
    subject = Subject()
    subject.instrument.write("*IDN?")
    subject.instrument.write("VOLT?")
    assert subject.instrument.read() == "0.000"
    assert subject.error() == -410  # published


def test_asking_for_a_reply_that_nobody_queried_is_unterminated() -> None:
    subject = Subject()
    subject.instrument.write("VOLT 3")
    assert subject.instrument.read() is None
    assert subject.error() == -420  # published


def test_cls_empties_the_queue_and_the_events_but_not_the_enables() -> None:
    subject = Subject()
    subject.say("*ESE 36;*SRE 32;NONSENSE")
    subject.say("*CLS")
    assert subject.error() == 0
    assert subject.say("*ESR?;*ESE?;*SRE?") == "0;36;32"


def test_the_status_byte_sums_up_and_asks_for_service_only_where_enabled() -> None:
    subject = Subject()
    subject.say("*CLS;*ESE 32")
    assert subject.say("*STB?") == "0"
    subject.say("NONSENSE")
    assert subject.say("*STB?") == str(0x04 | 0x20)
    subject.say("*SRE 32")
    assert subject.say("*STB?") == str(0x04 | 0x20 | 0x40)
    assert subject.say("*IDN?;*STB?") == f"Harbour Workshop,Simulated bench supply,test,1.0;{0x04 | 0x10 | 0x20 | 0x40}"


@pytest.mark.parametrize(
    ("mode", "on", "condition"),
    [(Mode.CV, True, 0b10), (Mode.CC, True, 0b01), (Mode.FLOATING, True, 0b10), (Mode.OFF, False, 0)],
)
def test_questionable_says_what_is_not_regulated(mode: Mode, on: bool, condition: int) -> None:
    subject = Subject()  # bit 0 voltage, bit 1 current: published; off and floating: this instrument's choice
    subject.output.switch(on)
    subject.output.mode = mode
    assert subject.say("STAT:QUES:COND?") == str(condition)


def test_questionable_events_latch_and_reach_the_status_byte_when_enabled() -> None:
    subject = Subject()
    subject.say("*CLS;STAT:QUES:ENAB 1")
    subject.output.switch(True)
    subject.output.mode = Mode.CC
    subject.instrument.follow_output()
    subject.output.mode = Mode.CV
    assert subject.say("*STB?") == str(0x08)
    assert subject.say("STAT:QUES?") == "3"
    assert subject.say("STAT:QUES?") == "0"
    subject.say("STAT:PRES")
    assert subject.say("STAT:QUES:ENAB?") == "0"


def test_trips_show_in_their_own_place_refuse_on_and_are_cleared() -> None:
    subject = Subject()
    subject.say("OUTP ON")
    subject.output.trip = Trip.OVER_AMPS
    assert subject.say("VOLT:PROT:TRIP?;:CURR:PROT:TRIP?;:OUTP?;:STAT:QUES:COND?") == "0;1;0;1024"
    subject.say("OUTP ON")
    assert subject.error() == -221
    subject.say("OUTP OFF;:OUTP:PROT:CLE")
    assert subject.say("CURR:PROT:TRIP?;:OUTP?") == "0;0"


@pytest.mark.parametrize(
    ("text", "on"), [("ON", "1"), ("1", "1"), ("OFF", "0"), ("0", "0"), ("0.3", "0"), ("2", "1"), ("on", "1")]
)
def test_a_switch_takes_words_and_numbers(text: str, on: str) -> None:
    subject = Subject()
    subject.say(f"OUTP {text}")
    assert subject.say("OUTP?") == on
    subject.say(f"CURR:PROT:STAT {text}")
    assert subject.say("CURR:PROT:STAT?") == on


def test_protection_levels_are_kept() -> None:
    subject = Subject()
    subject.say("VOLT:PROT 13.2;:CURR:PROT:LEV 1.65;:VOLT:PROT:STAT OFF")
    assert subject.say("VOLT:PROT?;:CURR:PROT?;:VOLT:PROT:STAT?") == "13.200;1.650;0"
    subject.say("VOLT:PROT 40")
    assert subject.error() == -222
    assert subject.say("VOLT:PROT?") == "13.200"


def test_reset_is_zero_volts_and_off() -> None:
    subject = Subject()
    subject.say("VOLT 5;CURR 3;VOLT:PROT 6;:OUTP ON")
    subject.say("*RST")
    assert subject.say("VOLT?;CURR?;VOLT:PROT?;:OUTP?") == "0.000;0.500;33.000;0"


def test_off_commands_are_ignored_as_often_as_the_quirk_says() -> None:
    subject = Subject(SupplyData(ignore_off=2))
    subject.say("OUTP ON")
    replies = [subject.say("OUTP OFF;OUTP?") for _ in range(3)]
    assert replies == ["1", "1", "0"]


def test_measurements_take_longer_than_other_queries_unless_one_latency_is_given() -> None:
    subject = Subject()
    assert subject.instrument.write("MEAS:VOLT?") == pytest.approx(0.008)
    subject.instrument.read()
    assert subject.instrument.write("VOLT?") == pytest.approx(0.001)
    subject.instrument.read()
    subject.instrument.reply_s = 0.0
    assert subject.instrument.write("MEAS:VOLT?") == 0.0


def test_an_empty_message_is_nothing() -> None:
    subject = Subject()
    assert subject.say("") is None
    assert subject.say("   ") is None
    assert subject.error() == 0


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


def test_every_refusal_has_its_published_text() -> None:
    # Published.
    for code, text in {
        -102: "Syntax error",
        -108: "Parameter not allowed",
        -109: "Missing parameter",
        -113: "Undefined header",
        -222: "Data out of range",
        -350: "Queue overflow",
        -410: "Query INTERRUPTED",
        -420: "Query UNTERMINATED",
    }.items():
        status = Status()
        status.record(code)
        assert status.next_error() == f'{code},"{text}"'
        assert text in str(Refusal(code, "somewhere"))
