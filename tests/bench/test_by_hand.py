"""Hand on the shaft, the probe at several angles, the leads, and a ladder that stays where it moved."""

from collections.abc import Callable
from pathlib import Path

import msgspec
import pytest

from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import HELD_S, Answer, Frame, Hold, Note, Question
from benchlog.bench.journal import Journal, JournalContents, read_journal
from benchlog.bench.lease import Lease
from benchlog.clock import VirtualClock
from benchlog.motor.compare import measured_of
from benchlog.motor.fit import Fitted
from benchlog.outcome import Outcome, RunResult, WindingVerdict
from benchlog.records import FLAG_ON, TICK_S, Event, EventKind, RunKind
from benchlog.recovery.by_hand import IT_TURNS, STILL_STUCK
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.climbing import DID_IT_MOVE, NO, YES
from benchlog.recovery.probing import ENOUGH, SWAPPED, SWAPPED_BACK, TURNED
from demo_db.virtual import HeldLease, VirtualBench
from drivers.simulated.scenario import DiodeData, ResistorData, Scenario, load
from tests.conftest import BEGAN


class Hands(HeldLease):
    """A key that is down in the spells given, counted from when the question was put, and an answer after them."""

    def __init__(self, clock: VirtualClock) -> None:
        super().__init__(clock)
        self.spells: list[tuple[float, float]] = []
        self.answers_at_s, self.choice = 10.0, STILL_STUCK
        self.asked_at_s: float | None = None
        self.question = 0
        self._virtual = clock

    def held(self, now_s: float) -> bool:
        return self.asked_at_s is not None and any(a <= now_s - self.asked_at_s < b for a, b in self.spells)

    def said(self) -> list[Answer | Note]:
        now_s = self._virtual.now()
        if self.asked_at_s is not None and now_s - self.asked_at_s >= self.answers_at_s:
            self.take(Answer(self.question, self.choice))
            self.asked_at_s = None
        return super().said()


class Bench:
    """A virtual bench whose operator answers by `reply`, or holds the key in spells."""

    def __init__(self, scenario: Scenario, reply: Callable[[Question], str] | None = None) -> None:
        self.virtual = VirtualBench(scenario, seed=3, began=BEGAN)
        self.hands = Hands(self.virtual.clock)
        self.virtual.lease = self.hands
        self.reply = reply

    def emit(self, frame: Frame) -> None:
        self.virtual.frames.append(frame)
        if not isinstance(frame, Question):
            return
        if self.reply is None:
            self.hands.asked_at_s, self.hands.question = self.virtual.clock.now(), frame.id
        else:
            self.hands.take(Answer(frame.id, self.reply(frame)))

    def run(self, journal: Path, kind: RunKind, **changes: object) -> tuple[RunResult, JournalContents]:
        request = self.virtual.request(journal, kind, unattended=False, **changes)
        conductor = Conductor(
            request,
            clock=self.virtual.clock,
            lease=self.hands,
            emit=self.emit,
            beat=lambda: None,
            going_off=lambda: None,
            journal=Journal(journal, sync_thread=False),
        )
        result = conductor.run(self.virtual.open_supply, lambda capabilities: None)
        return result, read_journal(journal)


def of_kind(contents: JournalContents, kind: EventKind) -> list[Event]:
    return [event for event in contents.events if event.kind is kind]


def driven_spells(contents: JournalContents, since_s: float) -> list[tuple[float, float]]:
    """s: when output and volts were on, after the probe."""
    trace = contents.trace
    spells: list[float | None] = []
    for sent, flags, volts in zip(trace.sent * TICK_S, trace.flags, trace.set_volts, strict=True):
        if sent < since_s or not (flags & FLAG_ON and volts > 0):
            spells.append(None)
        else:
            spells.append(float(sent))
    found: list[tuple[float, float]] = []
    for before, here in zip([None, *spells], spells, strict=False):
        if here is not None and before is None:
            found.append((here, here))
        elif here is not None:
            found[-1] = (found[-1][0], here)
    return found


def test_at_most_a_quarter_of_the_stall_current_and_only_while_the_key_is_down(tmp_path: Path) -> None:
    bench = Bench(load("hopeless"))
    bench.hands.spells = [(1.0, 2.5), (4.0, 4.4)]
    result, contents = bench.run(tmp_path / "a.journal", RunKind.HAND)
    assert result.outcome is Outcome.STILL_STUCK
    assert "2 holds" in result.reason
    asked_s = of_kind(contents, EventKind.QUESTION)[0].t_s
    spells = driven_spells(contents, asked_s)
    assert len(spells) == 2
    took_s = float(max(contents.trace.received - contents.trace.sent)) * TICK_S
    for (began, ended), (down, up) in zip(spells, bench.hands.spells, strict=True):
        assert asked_s + down <= began <= asked_s + down + 0.2
        assert ended <= asked_s + up + 2 * took_s
    scenario = bench.virtual.scenario
    assert scenario.motor is not None
    stall = scenario.rated_volts / scenario.motor.ohms
    after = contents.trace.sent * TICK_S > asked_s
    assert 0.2 * stall < max(contents.trace.amps[after]) < 0.2625 * stall
    assert result.output_confirmed_off
    assert not bench.virtual.bench.output.on


def test_a_long_hold_ends_before_a_ceiling_and_says_to_rest(tmp_path: Path) -> None:
    bench = Bench(load("hopeless"))
    bench.hands.spells, bench.hands.answers_at_s = [(0.5, 200.0)], 30.0
    layers = {Layer.JOB: Limits(volts=bench.virtual.scenario.rated_volts, locked_s=0.6)}
    result, contents = bench.run(tmp_path / "b.journal", RunKind.HAND, layers=layers)
    assert result.outcome is Outcome.STILL_STUCK
    assert of_kind(contents, EventKind.TRIP) == []
    assert any("locked time" in event.text for event in of_kind(contents, EventKind.REST))
    assert result.locked_s < 0.6


def test_what_the_operator_says_is_what_it_comes_to(tmp_path: Path) -> None:
    bench = Bench(load("free"))
    bench.hands.spells, bench.hands.choice = [(1.0, 2.0)], IT_TURNS
    result, _ = bench.run(tmp_path / "c.journal", RunKind.HAND)
    assert (result.outcome, result.moved) == (Outcome.UNDETERMINED, True)
    assert "proof" in result.reason


def test_a_key_not_said_again_to_be_down_is_up() -> None:
    clock = VirtualClock()
    lease = Lease(clock)
    assert not lease.held(clock.now())
    lease.take(Hold(down=True))
    assert lease.held(clock.now())
    clock.advance(HELD_S + 0.01)
    assert not lease.held(clock.now())
    lease.take(Hold(down=True))
    lease.take(Hold(down=False))
    assert not lease.held(clock.now())


@pytest.mark.parametrize("ohms", [0.03, 0.12, 0.6])
def test_the_leads_are_measured_with_their_clips_joined(tmp_path: Path, ohms: float) -> None:
    joined = msgspec.structs.replace(load("short"), resistor=ResistorData(ohms=ohms))
    result, _ = Bench(joined).run(tmp_path / "d.journal", RunKind.LEADS)
    assert (result.outcome, result.winding_verdict) == (Outcome.SHORT, WindingVerdict.SHORT)
    assert result.resistance_low_ohm is not None
    assert result.resistance_high_ohm is not None
    assert result.resistance_low_ohm <= ohms <= result.resistance_high_ohm
    assert result.resistance_high_ohm - result.resistance_low_ohm < 0.03


@pytest.mark.parametrize(("scenario", "outcome"), [("open", Outcome.OPEN), ("hopeless", Outcome.UNDETERMINED)])
def test_what_is_not_leads_is_not_taken_for_them(tmp_path: Path, scenario: str, outcome: Outcome) -> None:
    result, _ = Bench(load(scenario)).run(tmp_path / "e.journal", RunKind.LEADS)
    assert (result.outcome, result.resistance_ohm) == (outcome, None)


def test_the_lowest_of_a_few_angles_is_the_winding_s(tmp_path: Path) -> None:
    scenario = load("hopeless")
    assert scenario.motor is not None
    answers = iter((TURNED, TURNED, ENOUGH))
    bench = Bench(scenario)
    motor = bench.virtual.bench.motor
    assert motor is not None
    factors = iter((1.5, 1.2))

    def reply(question: Question) -> str:
        answer = next(answers)
        if answer == TURNED:  # the brushes stand elsewhere: a contact that is worse by so much
            data = scenario.motor
            assert data is not None
            motor._data = msgspec.structs.replace(data, ohms=data.ohms * next(factors))
        return answer

    bench.reply = reply
    result, contents = bench.run(tmp_path / "f.journal", RunKind.PROBE)
    assert result.resistance_ohm == pytest.approx(scenario.motor.ohms, rel=0.05)
    told = next(event for event in of_kind(contents, EventKind.FINDING) if "angles" in event.values)
    assert told.values["angles"] == 3
    highest = told.values["highest_ohm"]
    assert isinstance(highest, float)
    assert highest == pytest.approx(1.5 * scenario.motor.ohms, rel=0.05)


@pytest.mark.parametrize("diode", [False, True])
def test_with_the_leads_swapped_a_diode_across_the_motor_is_found(tmp_path: Path, diode: bool) -> None:
    plain = load("hopeless")
    bench = Bench(msgspec.structs.replace(plain, diode=DiodeData(way=-1)) if diode else plain)
    asked: list[str] = []

    def reply(question: Question) -> str:
        asked.append(question.text)
        if SWAPPED in question.choices:
            bench.virtual.bench.swap_leads()
            return SWAPPED
        if SWAPPED_BACK in question.choices:
            bench.virtual.bench.swap_leads()
            return SWAPPED_BACK
        return ENOUGH

    bench.reply = reply
    result, contents = bench.run(tmp_path / "g.journal", RunKind.PROBE)
    assert result.winding_verdict is WindingVerdict.WINDING
    found = [event for event in of_kind(contents, EventKind.FINDING) if event.values.get("reversed")]
    assert [event.values["diode"] for event in found] == [diode]
    assert len(asked) == 3


def test_the_ladder_stays_at_a_rung_where_the_operator_says_it_moved(tmp_path: Path) -> None:
    said = iter((YES, NO))
    bench = Bench(load("hopeless"))
    bench.reply = lambda question: next(said, NO) if question.text == DID_IT_MOVE else question.choices[-1]
    result, contents = bench.run(tmp_path / "h.journal", RunKind.RECOVERY)
    assert result.moved
    assert result.reason.startswith("it moved and stopped again")
    kicks = [event.values["rung"] for event in of_kind(contents, EventKind.KICK)]
    assert kicks[:9] == [1, 1, 1, 1, 1, 1, 2, 2, 2]
    assert [event.values["by"] for event in of_kind(contents, EventKind.MOVED)] == ["operator"]


def test_a_movement_noted_during_the_kicks_is_stamped_and_counts(tmp_path: Path) -> None:
    bench = Bench(load("hopeless"), reply=lambda question: question.choices[-1])
    bench.hands.take(Note("felt it move", hand=False, moved=True))
    result, contents = bench.run(tmp_path / "i.journal", RunKind.RECOVERY)
    moved = of_kind(contents, EventKind.MOVED)
    assert [(event.text, event.values["by"]) for event in moved] == [("felt it move", "operator")]
    assert result.moved


def test_a_proof_ends_with_a_start_that_is_held_until_it_is_steady(tmp_path: Path) -> None:
    result, contents = Bench(load("free")).run(tmp_path / "j.journal", RunKind.PROOF, starts=3)
    assert result.outcome is Outcome.RUNS
    steps = [event for event in of_kind(contents, EventKind.STEP) if event.values.get("name") == "measured start"]
    looks = of_kind(contents, EventKind.LOOK)
    assert len(steps) == 1
    assert 3.0 <= looks[-1].t_s - steps[0].t_s < 11.5
    assert "Measured start: a turning rotor's voltage" in looks[-1].text


def set_after(contents: JournalContents, name: str) -> list[float]:
    """Setpoints above 0 V one after the other, from a step on."""
    began_s = next(e.t_s for e in of_kind(contents, EventKind.STEP) if e.values.get("name") == name)
    trace = contents.trace
    levels = trace.set_volts[trace.t_s >= began_s].round(3).tolist()
    return [level for level, before in zip(levels, [0.0, *levels], strict=False) if level > 0 and level != before]


def test_a_measured_start_goes_lower_once_it_is_steady_and_its_friction_is_told_in_two_parts(tmp_path: Path) -> None:
    scenario = load("free")
    motor = scenario.motor
    assert motor is not None
    bench = Bench(scenario)
    _, contents = bench.run(tmp_path / "l.journal", RunKind.PROOF, starts=1)
    top, coast, lower = set_after(contents, "measured start")
    assert lower == pytest.approx(top / 1.4, abs=0.002)
    assert coast == pytest.approx(1.2 * top, abs=0.002), "only the limit of the coast, at almost no current, is above"
    found = measured_of(
        contents.trace,
        contents.events,
        run=1,
        lead_ohm=0.0,
        ambient_c=20.0,
        load_state="dry, uncoupled",
        ohm=Fitted(value=motor.ohms, low=0.97 * motor.ohms, high=1.03 * motor.ohms),
    )
    assert found is not None
    coulomb, viscous = found.friction.coulomb_amps, found.friction.viscous_a_per_v
    assert coulomb is not None, found.friction.why
    assert viscous is not None
    assert coulomb.low <= motor.coulomb_nm / motor.k <= coulomb.high
    assert viscous.low <= motor.viscous / motor.k**2 <= viscous.high


def test_a_measured_start_stays_within_the_time_that_a_ceiling_leaves_it(tmp_path: Path) -> None:
    result, contents = Bench(load("free")).run(
        tmp_path / "m.journal", RunKind.PROOF, starts=1, layers={Layer.JOB: Limits(on_s=3.9)}
    )
    assert result.outcome is Outcome.RUNS
    assert len(set_after(contents, "measured start")) == 2, "no room for a lower hold"
    result, contents = Bench(load("free")).run(
        tmp_path / "n.journal", RunKind.PROOF, starts=1, layers={Layer.JOB: Limits(on_s=4.8)}
    )
    assert result.outcome is Outcome.RUNS
    assert len(set_after(contents, "measured start")) == 3


def test_a_motor_that_needs_most_of_its_torque_to_turn_is_not_held_lower(tmp_path: Path) -> None:
    scenario = load("free")
    assert scenario.motor is not None
    motor = scenario.motor
    heavy = 0.3 * motor.k * scenario.rated_volts / motor.ohms
    scenario = msgspec.structs.replace(
        scenario, motor=msgspec.structs.replace(motor, coulomb_nm=heavy, static_nm=heavy, viscous=0.0)
    )
    result, contents = Bench(scenario).run(tmp_path / "o.journal", RunKind.PROOF, starts=1)
    assert result.outcome is Outcome.RUNS, result.reason
    assert len(set_after(contents, "measured start")) == 2


def test_a_run_ends_with_what_is_believed_of_the_winding_s_warmth(tmp_path: Path) -> None:
    result, contents = Bench(load("hopeless"), reply=lambda question: question.choices[-1]).run(
        tmp_path / "k.journal", RunKind.RECOVERY
    )
    told = of_kind(contents, EventKind.FINDING)[-1]
    low, high, bound = told.values["low_c"], told.values["high_c"], result.winding_bound_c
    assert isinstance(low, float)
    assert isinstance(high, float)
    assert bound is not None
    assert low <= high <= bound + 5.0
    assert "can't be told" in told.text, "kicks may have moved the shaft: the level of R says nothing then"
