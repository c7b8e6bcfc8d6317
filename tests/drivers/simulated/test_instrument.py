"""What the instrument does and remembers: commands, replies, errors, status.

Source of the forms unless said otherwise: IEEE 488.2-1992 / SCPI-1999, as published.
"""

import pytest

from drivers.simulated.status import QUEUE_DEPTH, Refusal, Status, event_bit
from drivers.simulated.supply_model import Mode, SupplyData, Trip
from tests.drivers.simulated.subject import Subject


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
