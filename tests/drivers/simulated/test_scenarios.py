"""Each scenario keeps what it promises, under the kicks that a technician's ladder gives."""

import re
from pathlib import Path

import pytest

from drivers.simulated.bench import Bench
from drivers.simulated.motor import Motor
from drivers.simulated.scenario import BadScenario, load, names, parse

ORDINARY = names()
LOOK_ALIKES = names(look_alikes=True)
READ = ":MEAS:VOLT?;:MEAS:CURR?"


class Technician:
    """Kicks an item by hand: volts as a share of rated volts, current limited to `limit` stall currents."""

    def __init__(self, name: str, *, seed: int = 0, limit: float = 1.0) -> None:
        self.scenario = load(name)
        self.bench = Bench(self.scenario, seed)
        self.now_s = 0.0
        motor = self.scenario.motor
        stall_a = self.scenario.rated_volts / motor.ohms if motor is not None else 2.0
        self.limit_a = min(limit * stall_a, self.scenario.supply.amps_max)
        self.say("CURR 0.1;VOLT 0;:OUTP ON")

    @property
    def motor(self) -> Motor:
        assert self.bench.motor is not None
        return self.bench.motor

    def say(self, message: str) -> str:
        reply, at_s = self.bench.send(message, self.now_s)
        self.now_s = max(self.now_s, at_s)
        return reply or ""

    def read(self) -> tuple[float, float]:
        volts, amps = self.say(READ).split(";")
        return float(volts), float(amps)

    def hold(self, volts: float, amps: float, for_s: float) -> tuple[float, float]:
        """Volts and limit for a time; the reading at its end."""
        self.say(f"CURR {amps:.4f};VOLT {volts:.4f}")
        self.now_s += for_s
        return self.read()

    def kick(self, share: float, for_s: float = 0.2, then_hold_s: float = 0.0) -> bool:
        """One kick with its coast look and a second of rest; True when the shaft turned during the look."""
        volts = share * self.scenario.rated_volts
        _, amps = self.hold(volts, self.limit_a, for_s)
        if then_hold_s:
            volts = 0.71 * self.scenario.rated_volts
            _, amps = self.hold(volts, self.limit_a, then_hold_s)
        self.hold(1.2 * volts, max(0.15 * amps, 0.005), 0.05)
        turns = self.motor.speed != 0.0
        self.say("VOLT 0")
        self.now_s += 1.0
        self.bench.advance(self.now_s)
        return turns

    def ladder(self, rungs: tuple[float, ...] = (0.6, 0.8, 1.0, 1.0)) -> int | None:
        """Gentle start, then three kicks a rung. Returns the number of the kick after which the shaft turned."""
        if self.kick(0.5, 0.15):
            return 0
        for number in range(3 * len(rungs)):
            if self.kick(rungs[number // 3], then_hold_s=0.9 if number % 3 == 2 else 0.0):
                return number + 1
        return None


def test_there_is_a_scenario_for_every_ending_and_every_look_alike() -> None:
    assert set(ORDINARY) == {
        "stuck-soft",
        "stuck-hard",
        "hopeless",
        "free",
        "grips-again-at-rest",
        "open",
        "short",
        "diode",
        "electronic",
    }
    assert set(LOOK_ALIKES) == {"locked-hot", "protector-opens", "brush-lifts", "contact-step"}


@pytest.mark.parametrize("name", ORDINARY + LOOK_ALIKES)
def test_every_scenario_tells_its_story_in_one_line(name: str) -> None:
    scenario = load(name)
    assert scenario.name == name
    assert "\n" not in scenario.story
    assert 20 < len(scenario.story) <= 120
    assert (scenario.expected == "not-freed") == scenario.look_alike


@pytest.mark.parametrize("limit", [0.95, 1.0, 1.03])
@pytest.mark.parametrize("seed", [0, 1])
def test_the_softly_stuck_pump_breaks_free_at_60_to_80_percent_whatever_the_seed(seed: int, limit: float) -> None:
    technician = Technician("stuck-soft", seed=seed, limit=limit)
    broke_at = technician.ladder()
    assert broke_at is not None
    assert 1 <= broke_at <= 6
    # Cleared by running, it draws 10 to 15 % of stall and starts again from rest.
    technician.kick(0.71, 1.5)
    technician.kick(0.71, 1.5)
    assert technician.motor.speed == 0.0
    volts, amps = technician.hold(12.0, technician.limit_a, 1.5)
    assert technician.motor.speed > 300.0
    assert 0.10 <= amps / (12.0 / 8.0) <= 0.15
    assert volts == pytest.approx(12.0, abs=0.02)


def test_the_softly_stuck_pump_does_not_start_at_half_its_rated_volts() -> None:
    technician = Technician("stuck-soft")
    for _ in range(5):
        assert not technician.kick(0.5, 1.0)
    assert technician.motor.angle_rad == 0.0


def test_the_mechanical_time_constant_of_the_softly_stuck_pump_is_that_of_a_small_pump() -> None:
    motor = load("stuck-soft").motor
    assert motor is not None
    assert 0.05 <= motor.ohms * motor.inertia / motor.k**2 <= 0.15


@pytest.mark.parametrize("limit", [0.95, 1.0, 1.03])
@pytest.mark.parametrize("seed", [0, 1])
def test_the_hard_stuck_pump_gives_in_after_four_to_six_kicks_at_rated_volts(seed: int, limit: float) -> None:
    technician = Technician("stuck-hard", seed=seed, limit=limit)
    broke_at = technician.ladder()
    assert broke_at is not None
    assert 4 <= broke_at - 6 <= 6
    technician.kick(0.71, 1.5)
    technician.hold(12.0, technician.limit_a, 1.0)
    assert technician.motor.speed > 300.0


def test_a_single_kick_at_rated_volts_never_frees_the_hard_stuck_pump() -> None:
    technician = Technician("stuck-hard", limit=1.05)
    assert not technician.kick(1.0, 2.0)
    assert technician.motor.angle_rad == 0.0


def test_the_hopeless_actuator_never_moves() -> None:
    technician = Technician("hopeless", limit=2.0)
    assert technician.ladder((1.0, 1.5, 2.0)) is None
    technician.bench.swap_leads()
    assert technician.ladder((1.0, 1.5, 2.0)) is None
    assert technician.motor.angle_rad == 0.0


def test_the_free_fan_starts_well_under_half_its_rated_volts_but_not_on_100_milliamperes() -> None:
    technician = Technician("free")
    for amps in (0.02, 0.05, 0.1):
        volts, shown_a = technician.hold(2.0, amps, 1.0)
        assert technician.motor.speed == 0.0
        assert volts / shown_a == pytest.approx(6.0, rel=0.2)
    technician.hold(0.3 * 12.0, technician.limit_a, 0.5)
    assert technician.motor.speed > 50.0


@pytest.mark.parametrize("seed", [0, 1])
def test_the_gripping_fan_turns_when_kicked_and_is_as_stuck_as_before_once_it_stands(seed: int) -> None:
    technician = Technician("grips-again-at-rest", seed=seed)
    broke_at = technician.ladder()
    assert broke_at is not None
    for share in (0.71, 0.85, 1.0):
        assert not technician.kick(share, 1.5)
    fresh = Technician("grips-again-at-rest", seed=seed)
    assert not fresh.kick(1.0, 1.5)
    assert technician.ladder() is not None


def test_the_open_item_shows_volts_and_no_current() -> None:
    technician = Technician("open")
    volts, amps = technician.hold(2.0, 0.05, 0.15)
    assert volts == pytest.approx(2.0, abs=0.01)
    assert abs(amps) < 0.006


def test_the_short_shows_its_fifty_milliohms() -> None:
    technician = Technician("short")
    volts, amps = technician.hold(2.0, 1.0, 0.15)
    assert amps == pytest.approx(1.0, abs=0.01)
    assert volts == pytest.approx(0.05, abs=0.006)


def test_the_diode_gives_one_voltage_at_two_currents_and_none_with_the_leads_swapped() -> None:
    technician = Technician("diode")
    low_v, _ = technician.hold(2.0, 0.05, 0.15)
    high_v, _ = technician.hold(2.0, 0.1, 0.15)
    assert 0.55 < low_v < high_v < 0.75
    technician.bench.swap_leads()
    volts, amps = technician.hold(2.0, 0.1, 0.3)
    assert volts / amps == pytest.approx(60.0, rel=0.12)


def test_the_driver_draws_nothing_low_and_less_the_higher_the_volts() -> None:
    technician = Technician("electronic")
    _, nothing_a = technician.hold(2.0, 0.05, 0.3)
    assert abs(nothing_a) < 0.006
    currents = [technician.hold(volts, 0.2, 0.5)[1] for volts in (6.5, 9.0, 12.0)]
    assert currents[0] > currents[1] > currents[2] > 0.02


@pytest.mark.parametrize("seed", [0, 1])
@pytest.mark.parametrize("name", LOOK_ALIKES)
def test_a_look_alike_never_turns_by_more_than_a_slip(name: str, seed: int) -> None:
    technician = Technician(name, seed=seed)
    technician.ladder()
    assert technician.motor.speed == 0.0
    assert technician.motor.holding
    assert abs(technician.motor.angle_rad) < 0.5


def test_the_hot_look_alike_heats_by_40_kelvin_a_second_at_stall() -> None:
    technician = Technician("locked-hot")
    technician.say("CURR 2;VOLT 12")
    technician.now_s += 0.1
    technician.bench.advance(technician.now_s)
    assert (technician.motor.winding_c - 20.0) / 0.1 == pytest.approx(40.0, rel=0.1)


def test_the_look_alike_with_a_protector_loses_its_current_during_the_ladder() -> None:
    technician = Technician("protector-opens")
    technician.ladder()
    _, amps = technician.hold(12.0, technician.limit_a, 0.2)
    assert amps < 0.05


def test_the_look_alike_with_a_bad_bar_looks_as_if_it_had_half_its_volts_as_back_emf() -> None:
    technician = Technician("contact-step")
    technician.ladder()
    volts, amps = technician.hold(8.5, technician.limit_a, 0.5)
    assert 1.0 - amps * 8.0 / volts == pytest.approx(1.0 - 1.0 / 1.9, abs=0.02)


def test_the_look_alike_with_a_lifting_brush_is_open_now_and_then_only() -> None:
    technician = Technician("brush-lifts")
    technician.say("CURR 2;VOLT 6")
    technician.now_s += 0.1
    currents = []
    for _ in range(300):
        technician.now_s += 0.02
        currents.append(technician.read()[1])
    lifted = sum(amps < 0.1 for amps in currents)
    assert 10 <= lifted <= 200
    assert sum(amps > 0.9 for amps in currents) > 50


GOOD = 'item = "cabin fan"\nstory = "Nothing is wrong with it at all."\nrated_volts = 12.0\nexpected = "open"\n'
MOTOR = "[motor]\nohms = 2.0\nhenries = 1e-3\nk = 0.01\ninertia = 1e-6\n"


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("item = ", "not TOML"),
        (GOOD.replace("12.0", '"twelve"'), "rated_volts: Expected `float`"),
        (GOOD.replace("12.0", "-12.0"), "rated_volts: -12 has to be"),
        (GOOD.replace("12.0", "nan"), "rated_volts: nan has to be"),
        (GOOD.replace('"open"', '"great"'), "expected: Invalid enum value"),
        (GOOD.replace("item", "itme"), "top level: Object contains unknown field `itme`"),
        (GOOD + "[supply]\nfarads = 0.0\n", "supply.farads: 0 has to be above 0"),
        (GOOD + "[motor]\nohms = 2.0\n", "motor: Object missing required field `henries`"),
        (GOOD + MOTOR + "[motor.joint]\nbreaks_at = 1e99\n", "motor.joint.breaks_at"),
        (GOOD + "# " + "x" * 70000, "longer than"),
    ],
    ids=lambda value: re.sub(r"[^a-z_. ]", "", value)[:30],
)
def test_a_scenario_that_cannot_be_used_is_refused_by_file_and_place(text: str, place: str) -> None:
    with pytest.raises(BadScenario, match=re.escape(place)) as refused:
        parse(text, name="mine")
    assert str(refused.value).startswith("mine.toml: ")


def test_a_scenario_is_loaded_from_a_file_of_ones_own(tmp_path: Path) -> None:
    path = tmp_path / "fan-of-mine.toml"
    path.write_text(GOOD, encoding="utf-8")
    assert load(str(path)).name == "fan-of-mine"


def test_an_unknown_name_is_refused_with_the_names_there_are() -> None:
    with pytest.raises(BadScenario, match="stuck-soft"):
        load("stuck-sideways")


def test_a_file_that_is_not_there_is_refused_by_name() -> None:
    with pytest.raises(BadScenario, match=r"gone\.toml"):
        load("gone.toml")
