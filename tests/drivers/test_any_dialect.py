"""One driver over every dialect: each shipped one, and each habit of a line on its own."""

import time
from collections.abc import Callable, Iterator

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drivers.dialect import (
    Condition,
    Dialect,
    Digits,
    Errors,
    Mode,
    Outputs,
    Ranges,
    Sense,
    Status,
    Watchdog,
    check,
    shipped,
    shipped_names,
)
from drivers.scpi_supply import ScpiSupply
from drivers.supply import (
    CHOICE_NOT_TOLD,
    CHOSEN_APART,
    NO_ERROR_QUEUE,
    NO_MODE,
    NO_OVER_AMPS_LATCH,
    NO_OVER_VOLTS_LATCH,
    ONE_SWITCH,
    RANGE_NOT_TOLD,
    NotASupply,
    Protection,
    Regulation,
    Setpoint,
    SupplyGarbled,
    SupplyTimeout,
)
from tests.drivers.spoken import Output, Spoken

with_part = msgspec.structs.replace


def changed(name: str, part: str, **fields: object) -> Dialect:
    """A shipped dialect without its array, with fields of one part changed."""
    dialect = with_part(shipped(name), array=None)
    return check(with_part(dialect, **{part: with_part(getattr(dialect, part), **fields)}))


def with_timer(feed: str = "") -> Dialect:
    timer = Watchdog(
        set="OUTP:WATC:DEL {value}",
        ask="OUTP:WATC:DEL?",
        enable="OUTP:WATC ON",
        disable="OUTP:WATC OFF",
        enabled="OUTP:WATC?",
        feed=feed,
    )
    return check(with_part(shipped(), watchdog=timer))


def in_words() -> Dialect:
    plain = shipped()
    back = with_part(plain.readback, condition="")
    mode = Mode(ask="OUTP:MODE?", cc=("CC", "LIMIT"), cv=("CV",))
    return check(with_part(plain, condition=None, readback=back, mode=mode))


def by_number() -> Dialect:
    """The switch and the regulation from one register of two outputs, with a number of its own for each."""
    plain = shipped("scpi-1999-list")
    back = with_part(plain.readback, condition="", output="")
    status = Status(ask="STAT:OUTP?", output=(0, 1), cc=(2, 3), cv=(4, 5))
    return check(with_part(plain, outputs=Outputs(count=2), condition=None, readback=back, status=status))


DIALECTS: dict[str, Callable[[], Dialect]] = {
    **{name: (lambda name=name: shipped(name)) for name in shipped_names()},  # type: ignore[misc]
    "one unit a message": lambda: changed("scpi-1999", "link", compound=False),
    "one unit a message, chosen before": lambda: changed("scpi-1999-select", "link", compound=False),
    "gap": lambda: changed("scpi-1999", "link", gap_s=0.05),
    "gap, one unit a message, chosen before": lambda: changed("scpi-1999-select", "link", compound=False, gap_s=0.03),
    "echo": lambda: changed("scpi-1999", "link", echo=True),
    "echo, one unit a message": lambda: changed("scpi-apply-character", "link", echo=True),
    "terse echo": lambda: changed("terse-serial", "link", echo=True),
    "units": lambda: changed("scpi-1999-suffix", "link", units_in_replies=True),
    "carriage return and line feed": lambda: changed("scpi-1999", "link", termination="\n", reply_termination="\r\n"),
    "errors by number": lambda: changed("scpi-1999", "errors", form="number"),
    "no error queue": lambda: changed("scpi-1999", "errors", form="none", ask=""),
    "mode in words": in_words,
    "register of two outputs": by_number,
    "timer": with_timer,
    "coarse setpoints": lambda: changed("scpi-1999-list", "program", volts_digits=Digits(after=2)),
}


@pytest.fixture(params=DIALECTS)
def spoken(request: pytest.FixtureRequest) -> Iterator[Spoken]:
    bench = Spoken(DIALECTS[request.param]())
    yield bench
    assert bench.too_early == []


def supply_on(bench: Spoken, output: int | None = None) -> ScpiSupply:
    """The last output, unless another one is meant."""
    return ScpiSupply(
        bench.open,
        bench.dialect,
        lambda: bench.now_s,
        output=output or bench.dialect.outputs.count,
        wait=bench.wait,
    )


def queries_of(dialect: Dialect) -> int:
    """Of one reading."""
    told = [dialect.readback.output, dialect.readback.condition, dialect.mode, dialect.status]
    return 4 + sum(map(bool, told))


def test_it_is_identified_by_queries_alone_and_no_state_is_changed(spoken: Spoken) -> None:
    before = [repr(output) for output in spoken.outputs]
    can = supply_on(spoken).capabilities
    assert can.dialect == spoken.dialect.name
    assert (can.output, can.outputs) == (spoken.dialect.outputs.count,) * 2
    assert [repr(output) for output in spoken.outputs] == before
    link, each_s = spoken.dialect.link, spoken.reply_s + spoken.dialect.link.gap_s
    apart = 2 if spoken.dialect.outputs.select and not link.compound else 1
    assert can.reply_s == pytest.approx(apart * each_s)
    assert can.reading_s == pytest.approx(can.reply_s if link.compound else queries_of(spoken.dialect) * can.reply_s)
    select = spoken.dialect.outputs.select.partition(" ")[0] or "?"
    for message in spoken.heard:
        for unit in message.split(";"):
            assert "?" in unit or unit.startswith((select, f":{select}")), unit
    assert len(spoken.sessions) == 1


def test_what_is_set_is_read_back_on_that_output_and_on_no_other(spoken: Spoken) -> None:
    supply = supply_on(spoken)
    supply.set(Setpoint(volts=7.25, amps=0.5))
    supply.switch(True)
    reading = supply.read()
    assert (reading.volts, reading.amps) == (7.25, 0.25)
    assert (reading.set_volts, reading.set_amps, reading.output_on) == (7.25, 0.5, True)
    assert all((one.volts, one.amps, one.on) == (0.0, 0.0, False) for one in spoken.outputs[:-1])
    supply.off()
    reading = supply.read()
    assert (reading.set_volts, reading.output_on) == (0.0, False)
    assert spoken.queue == []


def test_the_regulation_is_told_where_the_dialect_has_it(spoken: Spoken) -> None:
    supply = supply_on(spoken)
    assert NO_MODE not in supply.capabilities.gaps
    supply.switch(True)
    assert supply.read().regulation is Regulation.CV
    spoken.outputs[-1].cc = True
    assert supply.read().regulation is Regulation.CC


def test_a_reading_takes_as_few_messages_as_the_dialect_allows(spoken: Spoken) -> None:
    supply = supply_on(spoken)
    spoken.heard.clear()
    supply.read()
    asked = [message for message in spoken.heard if "?" in message]
    chosen = [message for message in spoken.heard if "?" not in message]
    dialect = spoken.dialect
    assert len(asked) == (1 if dialect.link.compound else queries_of(dialect))
    assert len(chosen) == (len(asked) if dialect.outputs.select and not dialect.link.compound else 0)


def test_the_latches_are_set_and_read_back_on_that_output_where_there_are_any(spoken: Spoken) -> None:
    supply = supply_on(spoken)
    found = supply.protect(Protection(over_volts=13.2, over_amps=2.2))
    output, has = spoken.outputs[-1], spoken.dialect.over_volts is not None
    assert found == (Protection(over_volts=13.2, over_amps=2.2) if has else Protection(over_volts=None, over_amps=None))
    assert (output.over_volts.level, output.over_volts.on) == ((13.2, True) if has else (1.0, False))
    assert all(not one.over_volts.on for one in spoken.outputs[:-1])
    assert {NO_OVER_VOLTS_LATCH, NO_OVER_AMPS_LATCH} & supply.capabilities.gaps == (
        set() if has else {NO_OVER_VOLTS_LATCH, NO_OVER_AMPS_LATCH}
    )
    output.over_amps.tripped = True
    tells = has and spoken.dialect.over_amps is not None and bool(spoken.dialect.over_amps.tripped)
    assert supply.tripped() == ("over-current" if tells else None)
    supply.clear()
    assert not (has and output.over_amps.tripped)
    assert (output.volts, output.on) == (0.0, False)


def test_an_entry_of_the_error_queue_is_told_where_there_is_one(spoken: Spoken) -> None:
    supply = supply_on(spoken)
    spoken.queue = [-222, -113]
    told = {"scpi": ["-222, what it says", "-113, what it says"], "number": ["-222", "-113"], "none": []}
    assert supply.errors() == told[spoken.dialect.errors.form]
    assert (NO_ERROR_QUEUE in supply.capabilities.gaps) == (spoken.dialect.errors.form == "none")


def test_after_a_fresh_session_everything_goes_on(spoken: Spoken) -> None:
    supply = supply_on(spoken)
    supply.set(Setpoint(volts=5.25, amps=0.5))
    supply.reopen()
    assert supply.read().set_volts == 5.25
    assert [session.closed for session in spoken.sessions] == [True, False]


def test_what_is_known_is_not_asked_again_and_off_is_sent_at_once(spoken: Spoken) -> None:
    known = supply_on(spoken).capabilities
    spoken.outputs[-1].on, spoken.outputs[-1].volts = True, 12.0
    spoken.wait(spoken.now_s + 1.0)
    spoken.heard.clear()
    began_s = spoken.now_s
    supply = ScpiSupply(
        spoken.open,
        spoken.dialect,
        lambda: spoken.now_s,
        output=spoken.dialect.outputs.count,
        known=known,
        wait=spoken.wait,
    )
    supply.off()
    assert not spoken.outputs[-1].on
    assert spoken.outputs[-1].volts == 0.0
    assert not any("?" in message for message in spoken.heard)
    link = spoken.dialect.link
    messages = 1 if link.compound else 2 * (2 if spoken.dialect.outputs.select else 1)
    assert len(spoken.heard) == messages
    assert spoken.now_s - began_s == pytest.approx(messages * (spoken.reply_s + link.gap_s), abs=1e-6)


def test_what_another_process_said_a_moment_ago_does_not_swallow_an_off() -> None:
    bench = Spoken(shipped("terse-serial"))
    known = supply_on(bench).capabilities
    bench.outputs[0].on = True
    bench.hears("VSET1:05.00")
    ScpiSupply(bench.open, bench.dialect, lambda: bench.now_s, known=known, wait=bench.wait).off()
    assert not bench.outputs[0].on


@settings(max_examples=40, deadline=None)
@given(
    name=st.sampled_from(sorted(DIALECTS)),
    volts=st.floats(0.0, 60.0),
    amps=st.floats(0.0, 9.9),
)
def test_no_dialect_sets_more_than_was_asked_for(name: str, volts: float, amps: float) -> None:
    dialect = DIALECTS[name]()
    bench = Spoken(dialect)
    supply = supply_on(bench)
    supply.set(Setpoint(volts=volts, amps=amps))
    output = bench.outputs[-1]
    program = dialect.program
    # 0.1 nV is the noise of a float at 60 V, far below what any supply resolves.
    assert volts - 10.0**-program.volts_digits.after - 1e-9 <= output.volts <= volts + 1e-9
    assert amps - 10.0**-program.amps_digits.after - 1e-9 <= output.amps <= amps + 1e-9
    if supply.capabilities.over_volts:
        supply.protect(Protection(over_volts=volts, over_amps=amps))
        assert output.over_volts.level <= volts + 1e-9
    assert bench.queue == []


@settings(max_examples=60, deadline=None)
@given(name=st.sampled_from(sorted(DIALECTS)), volts=st.floats(), amps=st.floats())
def test_nothing_that_is_said_ends_a_message_or_starts_another(name: str, volts: float, amps: float) -> None:
    dialect = DIALECTS[name]()
    bench = Spoken(dialect)
    supply = supply_on(bench)
    for act in (
        lambda: supply.set(Setpoint(volts=volts, amps=amps)),
        lambda: supply.protect(Protection(over_volts=volts, over_amps=amps)),
        supply.off,
        supply.read,
    ):
        try:
            act()
        except ValueError:
            continue
    assert bench.queue == []
    most = 8 if dialect.link.compound else 1
    for message in bench.heard:
        assert message.isascii()
        assert message.isprintable()
        assert message.count(";") < most
        assert not set("{}'\"#") & set(message)


def test_a_number_that_a_pattern_does_not_hold_is_refused_and_nothing_is_sent() -> None:
    bench = Spoken(shipped("terse-serial"))
    supply = supply_on(bench)
    heard = len(bench.heard)
    with pytest.raises(ValueError, match="more than 1 digits"):
        supply.set(Setpoint(volts=5.0, amps=10.0))
    assert len(bench.heard) == heard
    assert (supply.capabilities.volts_max, supply.capabilities.amps_max) == pytest.approx((99.99, 9.999))
    assert RANGE_NOT_TOLD in supply.capabilities.gaps


def test_the_terse_set_says_exactly_its_pattern() -> None:
    bench = Spoken(shipped("terse-serial"))
    supply = supply_on(bench)
    bench.heard.clear()
    supply.set(Setpoint(volts=5.0, amps=0.25))
    supply.switch(True)
    supply.off()
    assert bench.heard == ["ISET1:0.250", "VSET1:05.00", "OUT1", "OUT0", "VSET1:00.00"]


def test_volts_and_limit_at_once_keep_the_limit_when_it_goes_off() -> None:
    bench = Spoken(shipped("scpi-apply-character"))
    supply = supply_on(bench, 2)
    bench.heard.clear()
    supply.set(Setpoint(volts=7.2, amps=0.5))
    supply.off()
    assert bench.heard == ["APPL CH2,7.2000,0.5000", "OUTP CH2,OFF", "APPL CH2,0.0000,0.5000"]


def test_an_output_is_chosen_before_everything_that_concerns_it() -> None:
    bench = Spoken(changed("scpi-1999-select", "link", compound=False))
    supply = supply_on(bench, 3)
    assert CHOSEN_APART in supply.capabilities.gaps
    bench.heard.clear()
    supply.set(Setpoint(volts=7.2, amps=0.5))
    bench.chosen = 0  # a hand at the front panel
    supply.off()
    assert bench.heard[0::2] == ["INST:NSEL 3"] * 4
    assert bench.heard[1::2] == ["CURR 0.5000", "VOLT 7.2000", "OUTP OFF", "VOLT 0.0000"]
    assert bench.outputs[0].amps == 0.0


def test_in_one_message_the_choice_goes_in_front() -> None:
    bench = Spoken(shipped("scpi-1999-select"))
    supply = supply_on(bench, 2)
    assert CHOSEN_APART not in supply.capabilities.gaps
    bench.heard.clear()
    supply.off()
    supply.errors()
    assert bench.heard == ["INST:NSEL 2;:VOLT 0.0000;:OUTP OFF", "SYST:ERR?"]


@pytest.mark.parametrize("output", [0, 5, -1])
def test_an_output_that_the_dialect_does_not_have_is_refused_before_anything_is_opened(output: int) -> None:
    bench = Spoken(shipped("scpi-1999-list"))
    with pytest.raises(NotASupply, match="has 4 of them"):
        ScpiSupply(bench.open, bench.dialect, lambda: bench.now_s, output=output)
    assert bench.sessions == []


@pytest.mark.parametrize("name", ["scpi-1999-select", "scpi-1999-list", "scpi-1999-suffix", "scpi-apply-character"])
@pytest.mark.parametrize("compound", [True, False], ids=["in one message", "unit by unit"])
@pytest.mark.parametrize("tells_choice", [True, False], ids=["tells which", "says nothing"])
def test_an_output_that_the_supply_does_not_have_is_refused_and_no_other_is_touched(
    name: str, compound: bool, tells_choice: bool
) -> None:
    bench = Spoken(changed(name, "link", compound=compound), has=2, tells_choice=tells_choice)
    bench.outputs[0].on = True
    with pytest.raises(NotASupply):
        supply_on(bench, 3)
    assert [repr(output) for output in bench.outputs] == [repr(Output(on=True)), repr(Output())]
    assert supply_on(bench, 2).read().output_on is False


def test_without_an_error_queue_the_choice_is_asked_for() -> None:
    plain = changed("scpi-1999-select", "errors", form="none", ask="")
    plain = with_part(plain, readback=with_part(plain.readback, condition="STAT:QUES:COND?"))
    bench = Spoken(plain, has=2)
    with pytest.raises(NotASupply, match="goes on with another one, asked for output 3"):
        supply_on(bench, 3)
    assert CHOICE_NOT_TOLD not in supply_on(bench, 2).capabilities.gaps


def test_a_choice_that_nothing_tells_of_is_a_gap() -> None:
    plain = changed("scpi-1999-select", "errors", form="none", ask="")
    can = supply_on(Spoken(plain, tells_choice=False), 2).capabilities
    assert CHOICE_NOT_TOLD in can.gaps


def test_one_switch_for_all_outputs_is_told() -> None:
    plain = shipped("scpi-1999-list")
    dialect = check(with_part(plain, program=with_part(plain.program, on="OUTP ON", off="OUTP OFF")))
    assert ONE_SWITCH in supply_on(Spoken(dialect)).capabilities.gaps


@pytest.mark.parametrize(
    ("fields", "gap"), [({"set_amps": ""}, "no read-back of setpoints"), ({"output": ""}, "no output state")]
)
def test_a_supply_that_could_change_unseen_is_not_used_and_says_why(fields: dict[str, str], gap: str) -> None:
    bench = Spoken(changed("scpi-1999", "readback", **fields))
    with pytest.raises(NotASupply, match=gap) as refusal:
        supply_on(bench)
    assert "would go unseen" in str(refusal.value)
    assert bench.sessions[0].closed
    assert bench.heard == ["*IDN?"]


def test_a_supply_without_a_mode_is_used_and_says_so() -> None:
    plain = shipped()
    dialect = check(with_part(plain, condition=None, readback=with_part(plain.readback, condition="")))
    bench = Spoken(dialect)
    supply = supply_on(bench)
    assert NO_MODE in supply.capabilities.gaps
    assert supply.read().regulation is Regulation.UNKNOWN


def test_ranges_of_the_dialect_stand_in_where_no_query_tells() -> None:
    plain = shipped("scpi-apply-character")
    silent = with_part(plain, identify=with_part(plain.identify, volts_max="", amps_max=""))
    can = supply_on(Spoken(check(silent)), 3).capabilities
    assert (can.volts_max, can.amps_max) == (None, None)
    assert RANGE_NOT_TOLD in can.gaps
    ranges = Ranges(volts_max=(30.0, 30.0, 6.0), amps_max=(3.0, 3.0, 5.0))
    can = supply_on(Spoken(check(with_part(silent, ranges=ranges))), 3).capabilities
    assert (can.volts_max, can.amps_max) == (6.0, 5.0)
    assert RANGE_NOT_TOLD not in can.gaps


def test_its_own_timer_is_set_fed_and_stopped() -> None:
    bench = Spoken(with_timer(feed="OUTP:WATC:FEED"))
    supply = supply_on(bench)
    assert supply.capabilities.watchdog
    bench.heard.clear()
    assert supply.watch(2.4) == 3.0
    assert bench.heard[0] == "OUTP:WATC:DEL 3;:OUTP:WATC ON"
    for _ in range(10):
        bench.wait(bench.now_s + 0.5)
        supply.read()
        assert bench.now_s - bench.fed_s < 3.0 / 2
    assert supply.watch(None) is None
    assert not bench.timer_on
    bench.heard.clear()
    bench.wait(bench.now_s + 5.0)
    supply.read()
    assert "OUTP:WATC:FEED" not in bench.heard


def test_a_timer_that_any_message_feeds_gets_no_word_of_its_own() -> None:
    bench = Spoken(with_timer())
    supply = supply_on(bench)
    assert supply.watch(3.0) == 3.0
    bench.heard.clear()
    bench.wait(bench.now_s + 5.0)
    supply.read()
    assert len(bench.heard) == 1


def test_a_supply_without_a_timer_is_not_told_anything_about_one() -> None:
    bench = Spoken(shipped())
    supply = supply_on(bench)
    heard = len(bench.heard)
    assert supply.watch(3.0) is None
    assert len(bench.heard) == heard


@pytest.mark.parametrize("words", [(("EXT",), ("INT",)), ((), ())], ids=["in words", "as a number"])
def test_four_wires_are_switched_and_told_back(words: tuple[tuple[str, ...], tuple[str, ...]]) -> None:
    sense = Sense(on="VOLT:SENS ON", off="VOLT:SENS OFF", ask="VOLT:SENS?", on_words=words[0], off_words=words[1])
    bench = Spoken(check(with_part(shipped(), sense=sense)))
    supply = supply_on(bench)
    assert supply.capabilities.sense
    assert supply.four_wire(True)
    assert bench.outputs[0].four_wire
    assert not supply.four_wire(False)


def test_a_choice_of_sensing_that_is_not_there_is_refused_and_nothing_is_sent() -> None:
    bench = Spoken(shipped())
    supply = supply_on(bench)
    heard = len(bench.heard)
    with pytest.raises(ValueError, match="no choice of sensing"):
        supply.four_wire(True)
    assert len(bench.heard) == heard


def test_an_echo_of_something_else_makes_the_session_suspect() -> None:
    bench = Spoken(changed("scpi-apply-character", "link", echo=True))
    supply = supply_on(bench)
    usual = bench.hears
    bench.hears = lambda message: usual(message).replace(b"ON", b"OFF", 1)  # type: ignore[method-assign]
    with pytest.raises(SupplyGarbled, match="came back where"):
        supply.switch(True)
    with pytest.raises(SupplyTimeout, match="suspect"):
        supply.off()


@pytest.mark.parametrize(
    ("reply", "regulation"), [("CC", Regulation.CC), ('"cv"', Regulation.CV), ("UR", Regulation.UNKNOWN)]
)
def test_a_mode_in_words_is_one_of_those_or_not_known(reply: str, regulation: Regulation) -> None:
    bench = Spoken(
        check(with_part(in_words(), mode=Mode(ask="OUTP:MODE?", cc=("CC",), cv=(reply.strip('"').upper(),))))
    )
    bench = Spoken(with_part(bench.dialect, mode=Mode(ask="OUTP:MODE?", cc=("CC",), cv=("CV",))))
    supply = supply_on(bench)
    usual = bench.hears
    bench.hears = lambda message: usual(message).replace(b";CV", b";" + reply.encode())  # type: ignore[method-assign]
    assert supply.read().regulation is regulation


@pytest.mark.parametrize("reply", ["12.003", "", "0", "C,V"])
def test_a_mode_that_is_no_word_is_garbled(reply: str) -> None:
    bench = Spoken(in_words())
    supply = supply_on(bench)
    usual = bench.hears
    bench.hears = lambda message: usual(message).replace(b";CV", b";" + reply.encode())  # type: ignore[method-assign]
    with pytest.raises(SupplyGarbled, match="no word for a mode"):
        supply.read()


@pytest.mark.parametrize(
    ("cc", "cv", "byte", "regulation"),
    [
        ((), (0,), 0b1000001, Regulation.CV),
        ((), (0,), 0b1000000, Regulation.CC),
        ((3,), (), 0b1001000, Regulation.CC),
        ((3,), (), 0b1000000, Regulation.CV),
        ((3,), (0,), 0b1000000, Regulation.UNKNOWN),
    ],
)
def test_a_single_bit_tells_both_and_two_bits_each_their_own(
    cc: tuple[int, ...], cv: tuple[int, ...], byte: int, regulation: Regulation
) -> None:
    bench = Spoken(changed("terse-serial", "status", cc=cc, cv=cv))
    supply = supply_on(bench)
    usual = bench.hears
    bench.hears = lambda message: bytes([byte]) if message == "STATUS?" else usual(message)  # type: ignore[method-assign]
    reading = supply.read()
    assert reading.output_on
    assert reading.regulation is regulation


@pytest.mark.parametrize("reply", [b"1\xb02.3", b"12.3\n", b"     ", b"-.---"])
def test_bytes_that_are_no_number_are_garbled(reply: bytes) -> None:
    bench = Spoken(shipped("terse-serial"))
    supply = supply_on(bench)
    usual = bench.hears
    bench.hears = lambda message: reply if message == "VOUT1?" else usual(message)  # type: ignore[method-assign]
    with pytest.raises(SupplyGarbled):
        supply.read()
    with pytest.raises(SupplyTimeout, match="suspect"):
        supply.off()


def test_a_reply_that_is_cut_is_silence_and_makes_the_session_suspect() -> None:
    bench = Spoken(shipped("terse-serial"))
    supply = supply_on(bench)
    usual = bench.hears
    bench.hears = lambda message: usual(message)[:4] if message == "VOUT1?" else usual(message)  # type: ignore[method-assign]
    with pytest.raises(SupplyTimeout):
        supply.read()
    supply.reopen()
    supply.off()
    assert not bench.outputs[0].on


def test_a_gap_is_kept_before_off_as_well_and_costs_no_more_than_itself() -> None:
    bench = Spoken(changed("scpi-1999", "link", gap_s=0.05))
    supply = supply_on(bench)
    supply.set(Setpoint(volts=5.0, amps=0.5))
    supply.switch(True)
    sent_s = bench.now_s
    supply.off()
    assert not bench.outputs[0].on
    assert bench.too_early == []
    assert bench.now_s - sent_s <= 0.05 + bench.reply_s + 1e-9


def test_without_a_wait_the_process_sleeps_for_the_gap() -> None:
    bench = Spoken(changed("scpi-1999", "link", gap_s=0.01))
    supply = ScpiSupply(bench.open, bench.dialect, time.monotonic, known=supply_on(bench).capabilities)
    began_s = time.monotonic()
    for _ in range(3):
        supply.switch(False)
    assert time.monotonic() - began_s >= 0.02


def test_the_regulation_of_a_plain_condition_is_by_its_bits() -> None:
    dialect = check(with_part(shipped(), condition=Condition(cc=9, cv=8)))
    bench = Spoken(dialect)
    supply = supply_on(bench)
    assert supply.read().regulation is Regulation.CV
    bench.outputs[0].cc = True
    assert supply.read().regulation is Regulation.CC


def test_a_queue_by_number_that_never_ends_is_drained_no_deeper_than_the_dialect_says() -> None:
    bench = Spoken(check(with_part(shipped(), array=None, errors=Errors(form="number", ask="SYST:ERR?", deepest=5))))
    supply = supply_on(bench)
    bench.queue = [-100] * 100
    assert supply.errors() == ["-100"] * 5
