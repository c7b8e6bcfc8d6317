"""Messages and replies as text. Source of the forms: IEEE 488.2-1992 / SCPI-1999, as published."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers import scpi


@pytest.mark.parametrize(
    ("reply", "value"),
    [
        # published
        ("273", 273.0),
        ("0.273", 0.273),
        ("2.73E+2", 273.0),
        (".5", 0.5),
        ("1.", 1.0),
        ("+1", 1.0),
        # ours
        ("-1.5e-3", -0.0015),
        (" 12.003\r", 12.003),
    ],
)
def test_a_number_in_any_published_form_is_taken(reply: str, value: float) -> None:
    assert scpi.number(reply) == value


@pytest.mark.parametrize(
    "reply",
    [
        # published
        *["", "-", ".", "E3", "1E", "1.2.3", "1 2", "0x10", "--1"],
        # ours
        *["1,2", "12.0V", "1_000", "٣", "1E+", "+-1", "1E1234", "ON", "#14\x00\xff\n\x1b", "1\x002"],
    ],
)
def test_a_malformed_number_is_refused(reply: str) -> None:
    with pytest.raises(ValueError, match="is not a number"):
        scpi.number(reply)


@pytest.mark.parametrize("reply", ["9.9E37", "+9.9E37", "-9.9E37", "9.91E37", "9.90000000E+37", "1E999", "-1E999"])
def test_infinity_and_not_a_number_are_never_a_measurement(reply: str) -> None:
    with pytest.raises(ValueError, match="nothing was measured"):
        scpi.number(reply)


@pytest.mark.parametrize("reply", ["NaN", "NAN", "nan", "INF", "-inf", "Infinity"])
def test_not_a_number_and_infinity_in_words_are_no_numbers(reply: str) -> None:
    with pytest.raises(ValueError, match="is not a number"):
        scpi.number(reply)


@given(st.text(max_size=30))
def test_any_text_is_a_finite_number_or_refused_with_a_value_error(text: str) -> None:
    try:
        value = scpi.number(text)
    except ValueError:
        return
    assert abs(value) < 9.9e37


@pytest.mark.parametrize(
    ("reply", "weight"),
    [("12.003", 1e-3), ("1.50E-1", 1e-3), ("12", 1.0), ("12.", 1.0), (".5", 0.1), ("2.5E+2", 10.0), ("-0.00", 0.01)],
)
def test_the_step_of_a_reply_is_the_weight_of_its_last_digit(reply: str, weight: float) -> None:
    assert scpi.step(reply) == pytest.approx(weight)


@pytest.mark.parametrize(("reply", "value"), [("0", 0), ("1", 1), ("+512", 512), ("32767", 32767), ("5.0E+0", 5)])
def test_a_register_is_a_whole_number_of_fifteen_bits(reply: str, value: int) -> None:
    assert scpi.bits(reply) == value


@pytest.mark.parametrize("reply", ["-1", "32768", "1.5", "", "ON", "9.9E37"])
def test_anything_else_is_no_register(reply: str) -> None:
    with pytest.raises(ValueError):  # noqa: PT011  the texts are those of two checks
        scpi.bits(reply)


@pytest.mark.parametrize(("reply", "value"), [("1", True), ("0", False), ("ON", True), ("off", False), (" 1\r", True)])
def test_a_boolean_is_one_zero_on_or_off(reply: str, value: bool) -> None:
    assert scpi.boolean(reply) is value


@pytest.mark.parametrize("reply", ["", "2", "01", "TRUE", "1;0", "1.0", "O"])
def test_anything_else_is_no_boolean(reply: str) -> None:
    with pytest.raises(ValueError, match="neither on nor off"):
        scpi.boolean(reply)


@pytest.mark.parametrize(
    ("reply", "entry"),
    [
        ('0,"No error"', (0, "No error")),  # published
        ('-113,"Undefined header"', (-113, "Undefined header")),  # published
        ('-222,"Data out of range;VOLT 61"', (-222, "Data out of range;VOLT 61")),  # published: device text after ;
        ('-350,"Queue overflow"', (-350, "Queue overflow")),  # published
        ('+0,"No error"', (0, "No error")),
        ('-102 , "Syntax error" ', (-102, "Syntax error")),
        ('201,"said ""no"", twice"', (201, 'said ""no"", twice')),
    ],
)
def test_an_entry_of_the_error_queue_is_a_code_and_a_text(reply: str, entry: tuple[int, str]) -> None:
    assert scpi.error(reply) == entry


@pytest.mark.parametrize("reply", ["", "0", "0,No error", '"No error",0', 'x,"y"', '0,"No error', "12.003", "A,B,1,2"])
def test_anything_else_is_no_entry(reply: str) -> None:
    with pytest.raises(ValueError, match="not an entry"):
        scpi.error(reply)


def test_each_unit_of_a_message_starts_from_the_root() -> None:
    assert scpi.join("VOLT 5", "OUTP ON", "STAT:QUES:COND?") == "VOLT 5;:OUTP ON;:STAT:QUES:COND?"


def test_a_unit_that_has_its_colon_keeps_one() -> None:
    assert scpi.join(":VOLT 5", ":CURR 1") == "VOLT 5;:CURR 1"


def test_common_commands_keep_no_colon_at_any_place() -> None:
    assert scpi.join("*CLS", "VOLT 5", "*OPC?") == "*CLS;:VOLT 5;*OPC?"


def test_one_unit_is_the_message() -> None:
    assert scpi.join("MEAS:VOLT?") == "MEAS:VOLT?"


def test_the_replies_of_one_message_come_apart_at_the_semicolons() -> None:
    assert scpi.replies(" 12.003;0.500;1\r", 3) == ["12.003", "0.500", "1"]


@pytest.mark.parametrize("reply", ["", "1;2", "1;2;3;4"])
def test_a_wrong_count_of_replies_is_refused_with_both_counts(reply: str) -> None:
    with pytest.raises(ValueError, match=r"\d replies where 3 were asked for"):
        scpi.replies(reply, 3)


def test_an_identification_keeps_its_four_fields() -> None:
    assert scpi.identity(" Harbour,Supply,17,1.0\r\n") == "Harbour,Supply,17,1.0"


def test_an_identification_is_made_inert() -> None:
    assert scpi.identity("Harbour\x1b[2J,Süd\n,\x00,1") == "Harbour?[2J,S?d?,?,1"


@pytest.mark.parametrize("reply", ["", "Harbour,Supply,17", "HTTP/1.1 400 Bad Request", "a,b,c," + "d" * 256])
def test_anything_else_is_no_identification(reply: str) -> None:
    with pytest.raises(ValueError, match="not an identification"):
        scpi.identity(reply)


@given(value=st.floats(0.0, 999.0), before=st.integers(0, 4), after=st.integers(2, 6))
def test_a_parameter_reads_back_as_no_more_than_the_number_and_less_than_one_step_below(
    value: float, before: int, after: int
) -> None:
    try:
        text = scpi.at_most(value, before=before, after=after)
    except ValueError:
        assert before
        assert value >= 10**before - 1e-9
        return
    assert "e" not in text.lower()
    # 0.1 nV is the noise of a float, far below what any supply resolves
    assert value - 10.0**-after - 1e-9 <= scpi.number(text) <= value + 1e-9
    whole, _, decimals = text.partition(".")
    assert len(decimals) == after
    assert len(whole) == before or not before


@pytest.mark.parametrize(
    ("value", "before", "after", "text"),
    [
        (12.0, 2, 2, "12.00"),
        (5.0, 2, 2, "05.00"),
        (0.3, 1, 3, "0.300"),
        (0.1 + 0.2, 1, 3, "0.300"),
        (2.2259, 1, 3, "2.225"),
        (1.99999, 0, 4, "1.9999"),
        (0.0, 0, 4, "0.0000"),
        (-0.0, 2, 2, "00.00"),
    ],
)
def test_a_parameter_has_the_digits_that_were_asked_for(value: float, before: int, after: int, text: str) -> None:
    assert scpi.at_most(value, before=before, after=after) == text


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, -0.001, 1e6])
def test_what_is_absurd_is_no_parameter(value: float) -> None:
    with pytest.raises(ValueError, match="is no parameter"):
        scpi.at_most(value, before=0, after=4)


def test_a_number_that_a_fixed_pattern_does_not_hold_is_refused() -> None:
    with pytest.raises(ValueError, match="more than 2 digits"):
        scpi.at_most(100.0, before=2, after=2)


@pytest.mark.parametrize(("reply", "value"), [("12.000V", 12.0), (" 0.5 V\r", 0.5), ("1.5E+1V", 15.0)])
def test_a_unit_behind_a_number_is_taken_where_it_is_expected(reply: str, value: float) -> None:
    assert scpi.number(reply, "V") == value


@pytest.mark.parametrize("reply", ["12.000", "12.000v", "500mV", "12.000A", "12.000  V", "V", "12.000VV", "12.000 V V"])
def test_another_unit_none_or_a_multiple_of_it_is_refused(reply: str) -> None:
    with pytest.raises(ValueError, match=r"does not end in V|is not a number"):
        scpi.number(reply, "V")


def test_the_step_of_a_reply_with_a_unit_is_that_of_its_number() -> None:
    assert scpi.step("12.00 V", "V") == pytest.approx(0.01)


@pytest.mark.parametrize(
    ("reply", "rest"),
    [
        ('0,"No error";0.0002', "0.0002"),
        ('0,"No error";1.5,2.5', "1.5,2.5"),
        ('-113,"Undefined header;SENS:SWE";3', "3"),
        ('-113,"a ""quoted"" word";3', "3"),
        (' +0 , "No error" ;x;y', "x;y"),
        ('0,"No error"', None),
        ('0,"No error";', ""),
    ],
)
def test_what_follows_an_entry_of_the_error_queue_is_told_apart_from_it(reply: str, rest: str | None) -> None:
    assert scpi.after_error(reply) == rest


@pytest.mark.parametrize("reply", ["", "0.0002", '0,"No error', '0;"No error";1', '0,"No error" 5', '"No error";1'])
def test_a_reply_without_an_entry_of_the_error_queue_first_is_refused(reply: str) -> None:
    with pytest.raises(ValueError, match="does not begin with"):
        scpi.after_error(reply)


def test_a_list_of_numbers_has_the_count_that_was_asked_for() -> None:
    assert scpi.numbers("1, -2.5,3E-3\r", 3) == (1.0, -2.5, 0.003)
    assert scpi.numbers("7", 1) == (7.0,)


@pytest.mark.parametrize(
    ("reply", "why"),
    [
        ("1,2", "2 numbers where 3"),
        ("1,2,3,4,5", "5 numbers where 3"),
        ("", "1 numbers where 3"),
        ("1,,3", "not a number"),
        ("1,2,9.91E37", "nothing was measured"),
        ("1,NAN,3", "not a number"),
    ],
)
def test_a_list_in_another_form_is_refused(reply: str, why: str) -> None:
    with pytest.raises(ValueError, match=why):
        scpi.numbers(reply, 3)


def test_a_duration_is_a_plain_decimal_to_the_microsecond() -> None:
    assert scpi.seconds(2e-4) == "0.000200"
    assert scpi.seconds(1.25e-5) == "0.000013"
    with pytest.raises(ValueError, match="no parameter"):
        scpi.seconds(math.nan)
