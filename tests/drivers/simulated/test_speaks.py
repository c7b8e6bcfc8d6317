"""An instrument that speaks a dialect: its units and nothing else, on the outputs that they name, in its manner."""

from dataclasses import dataclass, field

import msgspec
import pytest

from drivers.dialect import Dialect, Outputs, shipped, shipped_names
from drivers.simulated.bench import Bench
from drivers.simulated.quirks import QUIRKS, Quirks, together
from drivers.simulated.scenario import load, with_array
from drivers.simulated.truth import OutputTruth, ReadingTruth
from drivers.simulated.virtual import VirtualSession
from drivers.supply import SupplyTimeout


@dataclass
class Spoken:
    """A bench and a line to it; each message waits out the gap."""

    bench: Bench
    now_s: float = 0.0
    every_s: float = 0.06
    session: VirtualSession = field(init=False)

    def __post_init__(self) -> None:
        self.session = VirtualSession(self.bench, lambda: self.now_s, self.wait)
        self.session.set_timeout(0.1)

    def wait(self, until_s: float) -> None:
        self.now_s = max(self.now_s, until_s)

    def say(self, message: str) -> None:
        self.now_s += self.every_s
        self.session.write(message)

    def ask(self, message: str) -> str | None:
        """The reply to it, None for silence."""
        self.say(message)
        try:
            if self.bench.manner.reply_ends:
                return self.session.read()
            return self.session.read_until_quiet(0.05).decode("latin-1")
        except SupplyTimeout:
            return None


def spoken(name: str, quirks: Quirks | None = None, load_name: str = "open") -> Spoken:
    return Spoken(Bench(load(load_name), seed=3, speaks=shipped(name), quirks=quirks))


def test_what_the_dialect_does_not_have_is_refused_in_the_manner_of_its_kind() -> None:
    scpi = spoken("scpi-1999-suffix")
    assert scpi.ask("VOLT?") is None
    assert scpi.ask("SYST:ERR?") == '-113,"Undefined header;VOLT?"'
    terse = spoken("terse-serial")
    assert terse.ask("SYST:ERR?") is None
    assert terse.ask("*OPC?") is None
    assert terse.ask("*IDN?") == "BENCH SUPPLY OPEN V1.0"


def test_an_output_is_the_one_that_is_named() -> None:
    by = {
        "scpi-1999-suffix": ("SOUR{n}:VOLT 5.0000", "SOUR{n}:VOLT?"),
        "scpi-1999-list": ("VOLT 5.0000,(@{n})", "VOLT? (@{n})"),
        "scpi-apply-character": ("APPL CH{n},5.0000,0.5000", "APPL? CH{n},VOLT"),
    }
    for name, (setting, query) in by.items():
        own = shipped(name).readback.set_volts
        one = spoken(name)
        one.say(setting.replace("{n}", "2"))
        assert [bench.output.set_v for bench in (one.bench, *one.bench.others)][:2] == [0.0, 5.0], name
        assert (one.ask(own.replace("{n}", "1")), one.ask(own.replace("{n}", "2"))) == ("0.000", "5.000"), (name, query)


def test_a_chosen_output_stays_chosen_and_is_told() -> None:
    one = spoken("scpi-1999-select")
    one.say("INST:NSEL 2")
    one.say("VOLT 5.0000")
    assert one.ask("INST:NSEL?;:VOLT?") == "2;5.000"
    assert one.ask("INST:NSEL 1;:VOLT?") == "0.000"
    one.say("INST:NSEL 9")
    assert one.ask("INST:NSEL?") == "1"


def test_an_output_that_a_supply_does_not_have_is_no_output() -> None:
    bench = Bench(load("open"), seed=3, speaks=shipped("scpi-1999-list"), others=())
    one = Spoken(bench)
    assert one.ask("VOLT? (@1)") == "0.000"
    assert one.ask("VOLT? (@2)") is None


def test_each_output_has_a_load_of_its_own() -> None:
    bench = Bench(load("open"), seed=3, speaks=shipped("scpi-1999-suffix"), others=(load("short"),))
    one = Spoken(bench)
    for number in (1, 2):
        one.say(f"SOUR{number}:VOLT 2.0000;:SOUR{number}:CURR 0.5000;:OUTP{number} ON")
    one.now_s += 0.3
    amps = [float(one.ask(f"MEAS{number}:CURR?") or "nan") for number in (1, 2)]
    assert amps == pytest.approx([0.0, 0.5], abs=0.02)
    assert [isinstance(record, ReadingTruth) for record in bench.others[0].truth] == [False, True]


def test_a_number_that_is_not_in_the_form_of_its_pattern_is_no_command() -> None:
    one = spoken("terse-serial")
    for text in ("VSET1:5", "VSET1:5.00", "VSET1:005.00", "VSET1:-5.00", "vset1:05.00"):
        one.say(text)
        assert one.bench.output.set_v == 0.0, text
    one.say("VSET1:05.00")
    assert one.ask("VSET1?") == "05.00"


def test_what_comes_before_the_gap_is_over_is_not_heard() -> None:
    one = spoken("terse-serial")
    one.every_s = 0.0
    one.say("VSET1:05.00")
    one.say("VSET1:06.00")
    assert one.bench.output.set_v == 5.0
    one.now_s += 0.06
    one.say("VSET1:07.00")
    assert one.bench.output.set_v == 7.0


def test_an_echo_comes_before_the_reply_and_after_commands_too() -> None:
    one = spoken("scpi-1999", QUIRKS["echo"])
    assert one.ask("VOLT 5.0000") == "VOLT 5.0000"
    assert one.ask("VOLT?") == "VOLT?"
    assert one.session.read() == "5.000"


@pytest.mark.parametrize(("lax", "volts", "error"), [(False, 0.0, "-102"), (True, 5.0, "0")])
def test_without_compound_messages_none_or_the_first_of_several_units_is_done(
    lax: bool, volts: float, error: str
) -> None:
    one = spoken("scpi-1999", Quirks(no_compound=True, lax=lax))
    one.say("VOLT 5.0000;:OUTP ON")
    assert (one.bench.output.set_v, one.bench.output.on) == (volts, False)
    assert (one.ask("SYST:ERR?") or "").split(",")[0] == error


def test_of_one_client_only_the_further_one_is_not_heard_until_the_first_has_gone() -> None:
    one = spoken("scpi-1999", QUIRKS["one-client"])
    other = VirtualSession(one.bench, lambda: one.now_s, one.wait)
    other.set_timeout(0.1)
    with pytest.raises(SupplyTimeout):
        other.query("*IDN?")
    other.write("VOLT 5.0000")
    assert one.bench.output.set_v == 0.0
    one.session.close()
    assert other.query("VOLT?").startswith("Harbour Workshop")
    assert one.bench.output.set_v == 5.0


def test_a_relay_follows_later_and_is_told_at_once() -> None:
    one = spoken("scpi-1999", QUIRKS["relay"])
    one.say("VOLT 5.0000;:OUTP ON")
    began_s = one.now_s
    assert not one.bench.output.on
    one.every_s = 0.0
    assert one.ask("OUTP?") == "1"
    assert not one.bench.output.on
    one.bench.advance(began_s + 0.5)
    switched = [record for record in one.bench.truth if isinstance(record, OutputTruth)]
    assert [record.at_s - began_s for record in switched] == [pytest.approx(0.03, abs=1e-6)]
    assert switched[0].on


def test_the_timer_switches_off_at_the_instant_at_which_the_silence_is_long_enough() -> None:
    one = spoken("scpi-1999", QUIRKS["watchdog"])
    one.say("VOLT 5.0000;:OUTP ON")
    began_s = one.now_s
    one.now_s += 4.0
    one.say("OUTP?")
    one.bench.advance(one.now_s + 30.0)
    switched = [record for record in one.bench.truth if isinstance(record, OutputTruth)]
    assert [(round(record.at_s - began_s, 3), record.on) for record in switched] == [(0.0, True), (9.06, False)]


def test_an_over_voltage_level_stays_above_the_setpoint_by_its_share() -> None:
    one = spoken("scpi-1999", QUIRKS["over-volts-margin"])
    one.say("VOLT:PROT 10.0000")
    one.say("VOLT 9.6000")
    assert one.bench.output.set_v == 0.0
    one.say("VOLT 9.5000")
    one.say("VOLT:PROT 9.9000")
    assert (one.bench.output.set_v, one.bench.output.over_volts) == (9.5, 10.0)
    assert [(one.ask("SYST:ERR?") or "").split(",")[0] for _ in range(3)] == ["-221", "-221", "0"]


def test_over_current_is_not_looked_at_while_it_is_masked() -> None:
    one = Spoken(Bench(load("short"), seed=3, speaks=shipped(), quirks=Quirks(over_amps_masked_s=0.4)))
    one.say("CURR:PROT 0.3000;:CURR:PROT:STAT ON;:VOLT 5.0000;:CURR 0.5000;:OUTP ON")
    seen = []
    for later_s in (0.39, 0.03):
        one.now_s += later_s
        one.bench.advance(one.now_s)
        seen.append(one.bench.output.on)
    assert seen == [True, False]
    assert one.ask("CURR:PROT:TRIP?;:OUTP?") == "1;0"


def test_an_array_is_spoken_to_in_the_words_of_the_dialect() -> None:
    dialect = shipped()
    assert dialect.array is not None
    array = msgspec.structs.replace(dialect.array, start="GO", volts="LIST:V?")
    one = Spoken(Bench(with_array(load("open")), seed=3, speaks=msgspec.structs.replace(dialect, array=array)))
    one.say("SENS:SWE:TINT 0.001000;:SENS:SWE:POIN 10;:GO")
    one.now_s += 0.1
    assert len((one.ask("LIST:V?") or "").split(",")) == 10
    assert one.ask("INIT;:VOLT?") is None


@pytest.mark.parametrize("name", shipped_names())
def test_every_query_of_a_dialect_is_answered_and_every_command_taken(name: str) -> None:
    """Each unit by itself, on the last output that the dialect has: no silence, no error entry."""
    dialect = shipped(name)
    one = spoken(name)
    number, values = str(dialect.outputs.count), {"value": "01.00", "volts": "1.00", "amps": "1.00"}
    if dialect.program.amps_digits.before == 1:
        values["value"] = "1.000"
    units = {unit for unit in _texts(dialect) if unit and unit not in _texts_of_array(dialect)}
    for unit in sorted(units):
        said = unit.replace("{n}", number)
        digits = dialect.program.volts_digits
        for place, value in values.items():
            said = said.replace("{" + place + "}", "01.00" if digits.before and unit.startswith("V") else value)
        reply = one.ask(said)
        assert (reply is not None) == said.partition(" ")[0].endswith("?"), said
    if dialect.errors.ask:
        assert (one.ask(dialect.errors.ask) or "").startswith("0"), name


def _texts_of_array(dialect: Dialect) -> set[str]:
    return set() if dialect.array is None else set(_texts(dialect.array))


def _texts(part: msgspec.Struct) -> list[str]:
    """What is said or asked, of a whole dialect."""
    skipped = {"name", "termination", "reply_termination", "form"}
    found: list[str] = []
    for field_name in part.__struct_fields__:
        value = getattr(part, field_name)
        if isinstance(value, msgspec.Struct):
            found += _texts(value)
        elif isinstance(value, str) and field_name not in skipped:
            found.append(value)
        elif isinstance(value, tuple) and field_name == "at_once":
            found += value
    return found


def test_habits_add_up_and_those_that_matter_are_in_the_dialect() -> None:
    quirks = together(["slow", "units", "no-error-queue", "no-compound"])
    assert (quirks.reply_s, quirks.units, quirks.no_error_queue, quirks.crlf) == (0.09, True, True, False)
    described = quirks.described(shipped())
    assert (described.link.units_in_replies, described.link.compound, described.errors.form) == (True, False, "none")
    assert Quirks().described(shipped()) == shipped()
    assert together([]) == Quirks()
    with pytest.raises(KeyError):
        together(["fast"])


def test_without_a_dialect_the_bench_is_the_strict_instrument_with_one_output() -> None:
    bench = Bench(load("open"), seed=3)
    assert bench.others == ()
    assert Spoken(bench).ask("SOURce:VOLTage:LEVel?") == "0.000"
    assert Outputs().count == 1
