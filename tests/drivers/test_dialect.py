"""Command sets as data: the shipped one, and what is refused with its place."""

from importlib.resources import files

import pytest

from drivers.dialect import DialectError, parse, shipped

TEXT = (files("drivers.dialects") / "scpi-1999.toml").read_text(encoding="utf-8")


def changed(old: str, new: str) -> str:
    """The shipped dialect's text with one thing changed, which must be there once."""
    assert TEXT.count(old) == 1
    return TEXT.replace(old, new)


def test_the_shipped_dialect_loads_with_both_latches() -> None:
    dialect = shipped()
    assert dialect.name == "SCPI-1999, one output"
    assert dialect.program.volts.format(value="5.0000") == "VOLT 5.0000"
    assert dialect.over_volts is not None
    assert dialect.over_amps is not None
    assert dialect.link.compound


def test_a_dialect_may_do_without_latches() -> None:
    dialect = parse(TEXT.replace("[over_volts]", "[over_amps_too]").split("[over_amps_too]")[0] + _ERRORS)
    assert dialect.over_volts is None
    assert dialect.over_amps is None


_ERRORS = '[errors]\nask = "SYST:ERR?"\ndeepest = 64\n'


@pytest.mark.parametrize(
    ("text", "place"),
    [
        (changed("[condition]", "[condition]\nspeed = 3"), "condition"),
        ('colour = "red"\n' + TEXT, "colour"),
        (changed("cv = 1", ""), "condition"),
        (changed("cv = 1", ""), "cv"),
        (changed("compound = true", ""), "link"),
        (changed('name = "SCPI-1999, one output"', ""), "name"),
        (changed(_ERRORS, ""), "errors"),
    ],
)
def test_an_unknown_or_a_missing_key_is_refused_naming_it_or_its_table(text: str, place: str) -> None:
    with pytest.raises(DialectError, match=place):
        parse(text)


@pytest.mark.parametrize(
    ("text", "place"),
    [
        (changed("compound = true", 'compound = "yes"'), r"link\.compound"),
        (changed("cc = 0", "cc = 0.5"), r"condition\.cc"),
        (changed("deepest = 64", 'deepest = "64"'), r"errors\.deepest"),
        (changed('on = "OUTP ON"', "on = 1"), r"program\.on"),
        (changed("window_s = 0.02", "window_s = -1.0"), r"readback\.window_s"),
        (changed("settle_s = 0.012", "settle_s = 6.0"), r"readback\.settle_s"),
        (changed("settle_s = 0.012", "settle_s = nan"), r"readback\.settle_s"),
    ],
)
def test_a_value_of_the_wrong_type_or_range_is_refused_naming_its_place(text: str, place: str) -> None:
    with pytest.raises(DialectError, match=place):
        parse(text)


@pytest.mark.parametrize(
    ("unit", "why"),
    [
        ("OUTP ON;VOLT 60", "a second unit"),
        (r"OUTP ON\nVOLT 60", "a second message"),
        (r"OUTP ON\r", "the half of a terminator"),
        (r"OUTP ON\u0000", "a control character"),
        ("OUTP {value} {", "an opening brace that is no value"),
        ("OUTP {level}", "another name"),
        ("OUTP {value!r}", "a conversion"),
        ("OUTP {}", "a value without a name"),
        ("AUSGANG Ä", "a letter beyond ASCII"),
        ("", "nothing"),
    ],
)
def test_what_is_not_one_program_message_unit_is_refused_naming_its_place(unit: str, why: str) -> None:
    with pytest.raises(DialectError, match=r"program\.on: .* is not one program message unit"):
        parse(changed('on = "OUTP ON"', f'on = "{unit}"'))


def test_what_is_no_toml_is_refused() -> None:
    with pytest.raises(DialectError):
        parse("name = ")


@pytest.mark.parametrize(
    ("old", "unit"),
    [
        ('volts = "VOLT {value}"', 'volts = "VOLT {value} {value}"'),
        ('volts = "VOLT {value}"', 'volts = "VOLT 5"'),
        ('volts = "VOLT {value}"', 'volts = "VOLT {value} }"'),
        ('on = "OUTP ON"', 'on = "OUTP {value}"'),
    ],
    ids=["two values", "no value where one is set", "a closing brace alone", "a value where none is set"],
)
def test_a_unit_has_one_value_exactly_where_one_is_set(old: str, unit: str) -> None:
    with pytest.raises(DialectError):
        parse(changed(old, unit))


def test_the_shipped_dialect_describes_a_measurement_array_and_one_may_do_without() -> None:
    array = shipped().array
    assert array is not None
    assert array.interval.format(value="0.000200") == "SENS:SWE:TINT 0.000200"
    assert array.at_once == ("SENS:SWE:OFFS:POIN 0", "TRIG:SOUR IMM")
    before, _, rest = TEXT.partition("[array]")
    assert parse(before + _ERRORS).array is None
    assert "[errors]" in rest


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ('interval = "SENS:SWE:TINT {value}"', 'interval = "SENS:SWE:TINT {value} {value}"', "array.interval"),
        ('interval = "SENS:SWE:TINT {value}"', 'interval = "SENS:SWE:TINT 1"', "array.interval"),
        ('points = "SENS:SWE:POIN {value}"', 'points = "SENS:SWE:POIN {value};VOLT 60"', "array.points"),
        ('start = "INIT"', 'start = "INIT {value}"', "array.start"),
        ('start = "INIT"', 'start = "INIT\\nVOLT 60"', "array.start"),
        ('"TRIG:SOUR IMM"]', '"TRIG:SOUR IMM;VOLT 60"]', "array.at_once"),
        ('"TRIG:SOUR IMM"]', '"TRIG:SOUR {value}"]', "array.at_once"),
        ('"TRIG:SOUR IMM"]', "5]", "array.at_once"),
        ('volts = "FETC:ARR:VOLT?"', 'volts = "FETC:ARR:VOLT?;:OUTP ON"', "array.volts"),
        ("least_interval_s = 1e-5", "least_interval_s = 0.0", "array.least_interval_s"),
        ("least_interval_s = 1e-5", "least_interval_s = nan", "array.least_interval_s"),
        ("most_points = 4096", "most_points = 1", "array.most_points"),
        ("most_reply_bytes = 60000", "most_reply_bytes = 70000", "array.most_reply_bytes"),
        ('abort = "ABOR"', "", "abort"),
        ('abort = "ABOR"', 'abort = "ABOR"\ncolour = "red"', "colour"),
    ],
)
def test_a_bad_table_of_an_array_is_refused_naming_its_place(old: str, new: str, place: str) -> None:
    before, heading, array = TEXT.partition("[array]")
    assert array.count("\n" + old) + array.count(" " + old) == 1
    with pytest.raises(DialectError, match=place):
        parse(before + heading + array.replace("\n" + old, "\n" + new).replace(" " + old, " " + new))
