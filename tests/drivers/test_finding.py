"""A supply is known by its answers: right in what they tell, open in what they do not, and nothing is touched."""

import msgspec
import pytest

from drivers.dialect import Link, shipped, shipped_names
from drivers.finding import WITHIN_S, find_dialect
from drivers.finding_measured import READINGS, capabilities_of, least_kick_s, measure
from drivers.scpi_supply import ScpiSupply
from drivers.simulated.quirks import QUIRKS, Quirks
from drivers.supply import NotASupply, Setpoint, SupplyLost
from tests.drivers.found_right import ListeningBench, ask
from tests.drivers.random_dialects import draw
from tests.drivers.strangers import STRANGERS, Stranger

SEED = 11


@pytest.mark.parametrize("number", range(12))
def test_what_answers_tell_is_found_and_nothing_but_questions_arrives(number: int) -> None:
    asked = ask(SEED, number)
    assert asked.wrong == []
    assert asked.housekeeping
    assert asked.found.took_s < WITHIN_S
    assert asked.found.identity.strip()


@pytest.mark.parametrize("name", ["crlf", "no-compound", "units", "one-client", "echo", "no-error-queue"])
def test_habits_of_a_line_are_found_too(name: str) -> None:
    asked = ask(SEED, 3, QUIRKS[name])
    assert asked.wrong == []
    assert asked.housekeeping


@pytest.mark.parametrize("name", ["scpi-1999", "scpi-1999-suffix", "scpi-apply-character"])
def test_units_in_some_replies_only_are_found_and_read(name: str) -> None:
    link = msgspec.structs.replace(shipped(name).link, units_in_replies="some")
    bench = ListeningBench(msgspec.structs.replace(shipped(name), link=link))
    found = find_dialect(bench.open, bench.now, wait=bench.wait)
    assert found.usable, found.why
    assert found.dialect is not None
    assert found.dialect.link.units_in_replies == "some"
    known = capabilities_of(found, bench.now)
    supply = ScpiSupply(
        lambda timeout_s: bench.open(link, timeout_s), found.dialect, bench.now, known=known, wait=bench.wait
    )
    supply.set(Setpoint(volts=2.5, amps=0.5))
    reading = supply.read()
    assert (reading.set_volts, reading.set_amps) == (2.5, 0.5)
    assert (supply.capabilities.volts_max, supply.capabilities.over_volts) == (30.0, True)
    supply.close()


def test_a_dialect_that_answers_what_a_shipped_one_asks_is_that_one() -> None:
    bench = ListeningBench(shipped())
    found = find_dialect(bench.open, bench.now, wait=bench.wait)
    assert found.dialect is not None
    assert found.dialect.name == shipped().name
    assert (found.dialect.condition, found.questions) == (shipped().condition, ())
    assert "OUTP ON" in found.untried


@pytest.mark.parametrize("name", [name for name in shipped_names() if name != "terse-serial"])
def test_a_supply_of_a_shipped_dialect_is_usable_as_it_is_found(name: str) -> None:
    bench = ListeningBench(shipped(name))
    found = find_dialect(bench.open, bench.now, wait=bench.wait)
    assert found.usable, found.why
    assert found.dialect is not None
    assert found.dialect.readback.set_volts == shipped(name).readback.set_volts
    assert found.dialect.outputs.count == shipped(name).outputs.count


def test_bits_that_no_answer_explains_are_asked_of_the_user() -> None:
    """The terse set tells its output by a bit, and which one no question tells: so it is not used as it is."""
    bench = ListeningBench(shipped("terse-serial"))
    found = find_dialect(bench.open, bench.now, wait=bench.wait)
    assert found.dialect is not None
    assert not found.usable
    assert any("which of them says that the output is on" in question for question in found.questions)


def test_where_outputs_are_chosen_the_one_that_was_chosen_is_put_back() -> None:
    bench = ListeningBench(shipped("scpi-1999-select"))
    session = bench.open(shipped().link, 1.0)
    session.write("INST:NSEL 2")
    session.close()
    found = find_dialect(bench.open, bench.now, wait=bench.wait)
    assert found.dialect is not None
    assert found.dialect.outputs.select == "INST:NSEL {n}"
    assert bench.instrument.chosen == 2  # type: ignore[union-attr]


@pytest.mark.parametrize("name", STRANGERS)
def test_what_is_no_supply_is_told_with_the_reason_in_time(name: str) -> None:
    make, words = STRANGERS[name]
    stranger = Stranger(make())
    found = find_dialect(stranger.open, stranger.now, wait=stranger.wait)
    assert found.dialect is None
    assert not found.usable
    assert words in found.why
    assert found.took_s < 10.0
    assert all(message.partition(" ")[0].endswith("?") for heard in stranger.heard for message in heard.split(";"))


def test_a_hostile_identification_is_inert_where_it_is_said() -> None:
    stranger = Stranger(lambda message: "Harbour,\x1b[2J,1,1\n" if message == "*IDN?" else None)
    found = find_dialect(stranger.open, stranger.now, wait=stranger.wait)
    assert found.why.isprintable()


def test_an_address_at_which_nothing_is_says_so() -> None:
    def nobody(link: Link, timeout_s: float) -> None:
        raise SupplyLost("TCPIP::127.0.0.1::9::SOCKET", "nothing listens at this address")

    found = find_dialect(nobody, lambda: 0.0, wait=lambda until_s: None)  # type: ignore[arg-type]
    assert (found.dialect, found.why) == (None, "nothing listens at this address")


def test_an_answer_that_comes_late_is_taken_for_its_own_question() -> None:
    """Silence is over with the identity: what comes before belongs to the question before, and patience grows."""
    slow = ask(SEED, 4, Quirks(reply_s=0.06))
    assert slow.found.dialect is not None
    quick = ask(SEED, 4)
    assert quick.found.dialect is not None
    assert slow.found.dialect.readback == quick.found.dialect.readback


class SlowMeter(ListeningBench):
    """Who it is and what is set is told at once; what it measures takes a while."""

    def send(self, message: str, at_s: float) -> tuple[str | None, float]:
        reply, leaves_s = super().send(message, at_s)
        return reply, leaves_s + (0.15 if "MEAS" in message else 0.0)


@pytest.mark.parametrize("compound", [True, False])
def test_a_measurement_that_takes_a_hundred_times_longer_than_the_rest_is_waited_for(compound: bool) -> None:
    link = msgspec.structs.replace(shipped().link, compound=compound)
    bench = SlowMeter(msgspec.structs.replace(shipped(), link=link))
    found = find_dialect(bench.open, bench.now, wait=bench.wait)
    assert found.dialect is not None
    assert found.dialect.link.compound is compound
    assert found.dialect.readback.volts == "MEAS:VOLT?"
    assert found.took_s < WITHIN_S


def test_time_that_runs_out_leaves_out_what_seldom_is_there_and_says_so() -> None:
    drawn = draw(SEED, 0)
    bench = ListeningBench(drawn)
    whole = find_dialect(bench.open, bench.now, wait=bench.wait)
    bench = ListeningBench(drawn, Quirks(reply_s=0.09))
    found = find_dialect(bench.open, bench.now, wait=bench.wait, within_s=0.5 * WITHIN_S)
    assert whole.dialect is not None
    assert found.took_s < 0.5 * WITHIN_S + 1.5
    assert found.dialect is None or found.remarks or found.dialect.readback == whole.dialect.readback
    if found.dialect is None:
        assert "too slowly" in found.why


def test_readings_tell_how_quick_it_is_and_how_short_a_kick_can_be() -> None:
    bench = ListeningBench(shipped(), Quirks(reply_s=0.02))
    dialect = shipped()
    supply = ScpiSupply(
        lambda timeout_s: bench.open(dialect.link, timeout_s), dialect, bench.now, output=1, wait=bench.wait
    )
    heard = len(bench.heard)
    measured = measure(supply, bench.now)
    assert len(bench.heard) - heard == READINGS
    assert measured.reading_s == pytest.approx(0.02, abs=0.002)
    assert measured.readings_per_s == pytest.approx(50.0, rel=0.1)
    assert measured.least_kick_s == least_kick_s(measured.capabilities, measured.worst_s)
    assert measured.least_kick_s > measured.reading_s


def test_another_output_is_as_the_first_but_for_its_range_and_nothing_is_asked_twice() -> None:
    bench = ListeningBench(shipped("scpi-1999-suffix"))
    found = find_dialect(bench.open, bench.now, wait=bench.wait, output=3)
    heard = len(bench.heard)
    first, third = capabilities_of(found, bench.now), capabilities_of(found, bench.now, 3)
    assert first is not None
    assert third is not None
    assert len(bench.heard) == heard
    assert (third.output, third.latches, third.gaps) == (3, first.latches, first.gaps)
    assert "SOUR3:VOLT? MAX" in [answer.unit for answer in found.answered]
    assert third.volts_max == first.volts_max
    assert capabilities_of(found, bench.now, 9) is None


def test_an_output_that_it_does_not_have_is_refused_before_anything_is_sent() -> None:
    bench = ListeningBench(shipped())
    dialect = msgspec.structs.replace(shipped())
    with pytest.raises(NotASupply):
        ScpiSupply(lambda timeout_s: bench.open(dialect.link, timeout_s), dialect, bench.now, output=2, wait=bench.wait)
    assert bench.heard == []
