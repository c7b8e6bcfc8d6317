"""Command sets as data: the shipped ones, and what is refused with its place."""

import re
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers import dialect_parts
from drivers.dialect import (
    Dialect,
    DialectError,
    Latch,
    check,
    for_output,
    from_json,
    parse,
    read,
    shipped,
    shipped_names,
    to_json,
)
from drivers.scpi_supply import ScpiSupply
from drivers.supply import Setpoint
from tests.drivers.spoken import Spoken

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


def text_of(name: str) -> str:
    return (files("drivers.dialects") / f"{name}.toml").read_text(encoding="utf-8")


def changed_in(name: str, old: str, new: str) -> str:
    """A shipped file with one thing changed, which must be there once."""
    text = text_of(name)
    assert text.count(old) == 1, (name, old)
    return text.replace(old, new)


def test_the_names_of_the_shipped_files_say_what_they_are() -> None:
    assert shipped_names() == [
        "scpi-1999",
        "scpi-1999-list",
        "scpi-1999-select",
        "scpi-1999-suffix",
        "scpi-apply-character",
        "terse-serial",
    ]


@pytest.mark.parametrize("name", shipped_names())
def test_every_shipped_file_loads_and_is_the_same_after_json(name: str) -> None:
    dialect = shipped(name)
    assert from_json(to_json(dialect)) == dialect
    assert len({shipped(other).name for other in shipped_names()}) == len(shipped_names())


@pytest.mark.parametrize("name", shipped_names())
def test_the_units_for_an_output_hold_its_number_and_no_placeholder_for_it(name: str) -> None:
    dialect = shipped(name)
    for output in range(1, dialect.outputs.count + 1):
        told = to_json(for_output(dialect, output))
        assert "{n}" not in told
        assert told.count("{value}") == to_json(dialect).count("{value}")
    with pytest.raises(ValueError, match=f"output {dialect.outputs.count + 1} of"):
        for_output(dialect, dialect.outputs.count + 1)
    with pytest.raises(ValueError, match="output 0 of"):
        for_output(dialect, 0)


@pytest.mark.parametrize(
    ("name", "old", "new", "place"),
    [
        ("scpi-1999-list", 'set_volts = "VOLT? (@{n})"', 'set_volts = "VOLT? (@{m})"', "readback.set_volts"),
        ("scpi-1999-list", 'set_volts = "VOLT? (@{n})"', 'set_volts = "VOLT?"', "readback.set_volts"),
        ("scpi-1999-list", 'volts = "VOLT {value},(@{n})"', 'volts = "VOLT {value}"', "program.volts"),
        ("scpi-1999-list", 'volts = "VOLT {value},(@{n})"', 'volts = "VOLT {value},{value},(@{n})"', "program.volts"),
        ("scpi-1999-list", "count = 4", "count = 0", "outputs.count"),
        ("scpi-1999-list", "count = 4", "count = 17", "outputs.count"),
        ("scpi-1999-list", "count = 4", "count = true", "outputs.count"),
        ("scpi-1999-list", 'on_words = ["EXT"]', "on_words = []", "sense.off_words"),
        ("scpi-1999-list", 'on_words = ["EXT"]', 'on_words = ["EXT;"]', "sense.on_words"),
        ("scpi-1999-select", 'select = "INST:NSEL {n}"', 'select = "INST:NSEL 1"', "outputs.select"),
        ("scpi-1999-select", 'select = "INST:NSEL {n}"', 'select = "INST:NSEL? {n}"', "outputs.select"),
        ("scpi-1999-select", 'select = "INST:NSEL {n}"', 'select = "INST:NSEL {n};:OUTP ON"', "outputs.select"),
        ("scpi-1999-select", 'select = "INST:NSEL {n}"', 'select = ""', "program.volts"),
        ("scpi-apply-character", "{volts},{amps}", "{volts}", "program.both"),
        ("scpi-apply-character", "{volts},{amps}", "{volts},{volts}", "program.both"),
        ("scpi-apply-character", "{volts},{amps}", "{value},{amps}", "program.both"),
        ("scpi-apply-character", 'both = "', 'volts = "VOLT {value}"\nboth = "', "program"),
        ("scpi-apply-character", 'both = "APPL CH{n},{volts},{amps}"', "", "program"),
        ("scpi-apply-character", 'cc = ["CC"]', 'cc = ["12.0"]', "mode.cc"),
        ("scpi-apply-character", 'on = "OUTP CH{n},ON"', 'on = "OUTP CH{n},OFF"', "program.off"),
        ("scpi-apply-character", 'on = "OUTP CH{n},ON"', 'on = "OUTP? CH{n}"', "program.on"),
        ("scpi-apply-character", 'output = "OUTP? CH{n}"', 'output = "OUTP CH{n},ON"', "readback.output"),
        ("scpi-apply-character", 'enabled = "OUTP:OVP? CH{n}"', "", "over_volts.enabled"),
        ("scpi-apply-character", '[errors]\nask = "SYST:ERR?"', "[errors]", "errors.ask"),
        ("scpi-apply-character", 'termination = "\\n"', 'termination = "x"', "link.termination"),
        ("scpi-apply-character", "compound = false", "compound = false\ngap_s = 0.6", "link.gap_s"),
        ("scpi-apply-character", "compound = false", "compound = false\nspeed = 1", "speed"),
        ("scpi-apply-character", "compound = false", 'compound = false\nreply_termination = ";"', "link.reply_term"),
        ("scpi-apply-character", "compound = false", 'compound = false\nreply_termination = ""', "reply_lengths"),
        ("terse-serial", "gap_s = 0.05", "", "link.gap_s"),
        ("terse-serial", "compound = false", "compound = true", "link.compound"),
        ("terse-serial", "set_amps = 5\nstatus = 1", "set_amps = 5", "reply_lengths.status"),
        ("terse-serial", "set_amps = 5\nstatus = 1", "set_amps = 5\nstatus = 2", "reply_lengths.status"),
        ("terse-serial", "set_amps = 5\nstatus = 1", "set_amps = 5\nstatus = 1\nmode = 2", "reply_lengths.mode"),
        ("terse-serial", "set_amps = 5\nstatus = 1", "set_amps = 0\nstatus = 1", "reply_lengths.set_amps"),
        ("terse-serial", 'reply_termination = ""', 'reply_termination = "\\n"', "reply_lengths"),
        ("terse-serial", "output = [6]", "output = [6, 7]", "status.output"),
        ("terse-serial", "output = [6]", "output = [15]", "status.output"),
        ("terse-serial", "output = [6]", "output = [8]", "status.output"),
        ("terse-serial", "after = 2 }", "after = 1 }", "program.volts_digits.after"),
        ("terse-serial", "after = 2 }", "after = 2, width = 5 }", "program.volts_digits"),
        ("terse-serial", 'form = "none"', 'form = "none"\nask = "ERR?"', "errors.ask"),
        ("terse-serial", 'form = "none"', 'form = "octal"', "errors.form"),
        ("terse-serial", "settle_s = 0.1\n", 'settle_s = 0.1\ncondition = "STAT?"\n', "reply_lengths.condition"),
    ],
)
def test_what_does_not_fit_is_refused_naming_its_place(name: str, old: str, new: str, place: str) -> None:
    text = changed_in(name, old, new)
    with pytest.raises(DialectError, match=place.replace(".", r"\.")):
        parse(text)


@pytest.mark.parametrize(
    ("table", "place"),
    [
        ("[ranges]\nvolts_max = [30.0]\namps_max = [3.0, 3.0, 5.0]\n", "ranges.volts_max"),
        ("[ranges]\nvolts_max = [30.0, 30.0, -6.0]\namps_max = [3.0, 3.0, 5.0]\n", "ranges.volts_max"),
        ("[ranges]\nvolts_max = [30.0, 30.0, inf]\namps_max = [3.0, 3.0, 5.0]\n", "ranges.volts_max"),
        ("[condition]\ncc = 0\ncv = 1\n", "condition"),
        ('[status]\nask = "STAT?"\ncc = [0, 1, 2]\n', "mode"),
        ('[status]\nask = "STAT?"\noutput = [0, 1, 2]\n', "status.output"),
        ('[status]\nask = "STAT"\noutput = [0, 1, 2]\n', "status.ask"),
        ('[watchdog]\nset = "WATC 5"\nask = "WATC?"\nenable = "A"\ndisable = "B"\nenabled = "C?"\n', "watchdog.set"),
        (
            '[watchdog]\nset = "W {value}"\nask = "W?"\nenable = "A"\ndisable = ""\nenabled = "C?"\n',
            "watchdog.dis",
        ),
        (
            '[watchdog]\nset = "WATC {value}"\nask = "W?"\nenable = "A"\ndisable = "B"\nenabled = "C?"\nfeed = "F?"\n',
            "watchdog.feed",
        ),
        ('[sense]\non = "S 1"\noff = "S 0"\nask = "S"\n', "sense.ask"),
        ("[reply_lengths]\nvolts = 5\namps = 5\nset_volts = 5\nset_amps = 5\noutput = 1\nmode = 2\n", "reply_lengths"),
    ],
)
def test_a_table_that_does_not_fit_the_rest_is_refused_naming_its_place(table: str, place: str) -> None:
    with pytest.raises(DialectError, match=place.replace(".", r"\.")):
        parse(text_of("scpi-apply-character") + table)


def test_an_array_needs_the_error_queue_of_the_standard() -> None:
    with pytest.raises(DialectError, match="array"):
        parse(changed("deepest = 64", 'deepest = 64\nform = "number"'))


def test_a_dialect_put_together_by_hand_is_checked_in_the_same_way() -> None:
    with pytest.raises(DialectError, match=r"over_amps\.set"):
        check(msgspec.structs.replace(shipped(), over_amps=Latch(set="CURR:PROT 1;:VOLT {value}", ask="CURR:PROT?")))


@pytest.mark.parametrize("spoil", [lambda text: text.replace("OUTP OFF", "OUTP OFF;*RST"), lambda text: text[:-1]])
def test_json_that_is_no_dialect_is_refused(spoil: "Callable[[str], str]") -> None:
    with pytest.raises(DialectError):
        from_json(spoil(to_json(shipped())))


def test_a_file_of_the_users_own_is_read_and_its_name_stands_in_the_error(tmp_path: Path) -> None:
    mine = tmp_path / "mine.toml"
    mine.write_text(TEXT.replace("SCPI-1999, one output", "The one under the window"), encoding="utf-8")
    assert read(mine).name == "The one under the window"
    mine.write_text(changed('on = "OUTP ON"', 'on = "OUTP ON;VOLT 60"'), encoding="utf-8")
    with pytest.raises(DialectError, match=r"mine\.toml: program\.on"):
        read(mine)
    mine.write_bytes(b"\xff\xfe")
    with pytest.raises(DialectError, match=r"mine\.toml"):
        read(mine)
    with pytest.raises(DialectError, match=r"none\.toml"):
        read(tmp_path / "none.toml")


@given(
    place=st.sampled_from([("program", "on"), ("program", "volts"), ("readback", "output"), ("outputs", "select")]),
    text=st.text(max_size=20) | st.text(";:\n\r\t {}nvalue?,OUTP", max_size=20),
)
def test_whatever_a_unit_holds_a_dialect_that_passes_says_one_unit_there(place: tuple[str, str], text: str) -> None:
    plain = shipped()
    part = msgspec.structs.replace(getattr(plain, place[0]), **{place[1]: text})
    try:
        dialect: Dialect = for_output(check(msgspec.structs.replace(plain, **{place[0]: part})), 1)
    except DialectError:
        return
    said = getattr(getattr(dialect, place[0]), place[1]).format(value="12.0000")
    assert said.isascii()
    assert said.isprintable()
    assert not set(said) & set(";\"'#{}")
    assert ("?" in said) == (place[0] == "readback") or not said


GUIDE = (files("drivers.dialects") / "README.md").read_text(encoding="utf-8")


def test_the_example_of_the_guide_loads_and_is_a_supply_that_can_be_used() -> None:
    example = parse(GUIDE.split("```toml\n")[1].split("```")[0])
    bench = Spoken(example)
    supply = ScpiSupply(bench.open, example, lambda: bench.now_s, wait=bench.wait)
    supply.set(Setpoint(volts=5.0, amps=0.5))
    supply.switch(True)
    assert supply.read().volts == 5.0
    assert bench.heard[-9:-6] == ["I 0.500", "U 5.00", "OUT ON"]


def test_the_guide_has_every_table_and_every_field_and_every_shipped_file() -> None:
    for part in Dialect.__struct_fields__:
        assert f"[{part}]" in GUIDE or f"`{part}`" in GUIDE, part
    for struct in vars(dialect_parts).values():
        if isinstance(struct, type) and issubclass(struct, msgspec.Struct) and struct is not dialect_parts.Array:
            for name in struct.__struct_fields__:
                assert re.search(rf"`{name}`|`{name} =|{{ .*{name} = ", GUIDE), (struct.__name__, name)
    for name in shipped_names():
        assert f"`{name}.toml`" in GUIDE


def test_what_the_guide_says_of_limits_is_what_is_checked() -> None:
    example = GUIDE.split("```toml\n")[1].split("```")[0]
    parse(example.replace("gap_s = 0.02", "gap_s = 0.5"))
    for wrong in ("gap_s = 0.51", "gap_s = -0.01"):
        with pytest.raises(DialectError, match="gap_s"):
            parse(example.replace("gap_s = 0.02", wrong))
    for after in (1, 7):
        with pytest.raises(DialectError, match="volts_digits"):
            parse(example.replace("{ after = 2 }", f"{{ after = {after} }}"))
