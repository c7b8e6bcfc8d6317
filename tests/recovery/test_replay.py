"""Filed runs through today's code: the same conclusions where nothing changed, and where a threshold did, it shows."""

from pathlib import Path

import msgspec
import numpy as np
import pytest

from benchlog.bench.frames import Answer, Frame, Question
from benchlog.bench.journal import read_journal
from benchlog.motor import motion
from benchlog.motor.motion import CoastVerdict
from benchlog.outcome import Outcome
from benchlog.records import EventKind, RunKind, Trace
from benchlog.recovery import by_hand, looking
from benchlog.recovery.ceilings import Bound, Layer
from benchlog.recovery.climbing import DID_IT_MOVE, YES
from benchlog.recovery.filed_run import Filed
from benchlog.recovery.plan import PLANS
from benchlog.recovery.replay import replay
from drivers.simulated.scenario import load, names
from tests.bench.test_attended import Attended
from tests.bench.test_by_hand import Bench
from tests.conftest import RunVirtually

LOOKED = (EventKind.KICK, EventKind.LOOK)


def filed_of(journal: Path) -> Filed:
    """A finished journal as the ledger would hand it on."""
    contents = read_journal(journal)
    asked, armed, ending = contents.begun.request, contents.armed, contents.ending
    assert armed is not None
    assert ending is not None
    return Filed(
        kind=asked.kind,
        resource=asked.resource,
        rated_volts=asked.rated_volts,
        ceilings=armed.ceilings,
        sequence=asked.sequence,
        trace=contents.trace,
        events=contents.events,
        result=ending.result,
        complete=True,
        duration_s=ending.duration_s,
        unattended=asked.unattended,
        kicks_today=asked.kicks_today,
        ambient_c=asked.ambient_c,
        lead_ohm=asked.lead_ohm,
        known_ohm=asked.known_ohm,
        earlier=asked.earlier,
        starts=asked.starts,
        start_test=asked.start_test,
        run_in=asked.run_in,
    )


def cut(trace: Trace, samples: int) -> Trace:
    return Trace(**{name: getattr(trace, name)[:samples] for name in Trace.__slots__})


def changed(filed: Filed, **changes: object) -> Filed:
    return Filed(**({name: getattr(filed, name) for name in Filed.__slots__} | changes))


def test_every_kind_of_run_has_a_plan() -> None:
    assert set(PLANS) == set(RunKind)


@pytest.mark.parametrize("seed", [3, 11])
@pytest.mark.parametrize("scenario", names())
def test_a_run_of_today_replays_with_no_difference(run_virtually: RunVirtually, scenario: str, seed: int) -> None:
    told = replay(filed_of(run_virtually(scenario, seed=seed).journal))
    assert told.differences == []
    assert told.readings > 100


@pytest.mark.parametrize("kind", [RunKind.PROBE, RunKind.PROOF])
@pytest.mark.parametrize("scenario", ["free", "stuck-hard", "diode", "open"])
def test_probe_and_proof_replay_as_well(run_virtually: RunVirtually, scenario: str, kind: RunKind) -> None:
    assert replay(filed_of(run_virtually(scenario, seed=4, kind=kind).journal)).differences == []


class Mover(Attended):
    """Says that it moved, whenever asked."""

    def emit(self, frame: Frame) -> None:
        if isinstance(frame, Question) and frame.text == DID_IT_MOVE:
            self.bench.lease.take(Answer(frame.id, YES))
        super().emit(frame)


@pytest.mark.parametrize("person", [Attended, Mover])
@pytest.mark.parametrize("choice", [0, 1])
def test_answers_of_the_operator_are_given_again(tmp_path: Path, person: type[Attended], choice: int) -> None:
    one = person("contact-step", choice, takes_s=5.0)
    one.run(tmp_path / "a.journal")
    filed = filed_of(tmp_path / "a.journal")
    assert sum(e.kind is EventKind.ANSWER for e in filed.events) >= 2
    assert replay(filed).differences == []


def test_a_held_key_is_inferred_from_the_current_and_said_to_be(tmp_path: Path) -> None:
    bench = Bench(load("hopeless"))
    bench.hands.spells, bench.hands.choice = [(1.0, 2.0), (4.0, 4.7)], by_hand.STILL_STUCK
    bench.run(tmp_path / "h.journal", RunKind.HAND)
    told = replay(filed_of(tmp_path / "h.journal"))
    assert told.differences == []
    assert "key" in told.remarks[0]


def test_a_changed_threshold_shows_where_it_changes_what_is_concluded(
    run_virtually: RunVirtually, monkeypatch: pytest.MonkeyPatch
) -> None:
    filed = filed_of(run_virtually("stuck-soft", seed=3).journal)
    freeing = next(e for e in filed.events if e.kind in LOOKED and e.text.endswith(f": {CoastVerdict.EMF}."))
    monkeypatch.setattr(motion, "LEAST_EMF_SHARE", 0.9)
    monkeypatch.setattr(motion, "LEAST_DOUBT_SHARE", 0.01)
    first = replay(filed).differences[0]
    # The first coast of the hold says doubtful today: down, where the filed run held on.
    assert first.t_s is not None
    assert freeing.t_s - 2.0 < first.t_s <= freeing.t_s
    assert first.what == "command"
    assert first.today.startswith("set 0 V")
    assert first.filed != first.today


def test_another_command_is_a_divergence_with_both_sides_told(
    run_virtually: RunVirtually, monkeypatch: pytest.MonkeyPatch
) -> None:
    filed = filed_of(run_virtually("stuck-soft", seed=3).journal)
    monkeypatch.setattr(looking, "FIRST_RAISE", 1.6)
    told = replay(filed)
    assert told.diverged_s is not None
    command = next(d for d in told.differences if d.what == "command")
    assert command.t_s == told.diverged_s
    assert command.filed.startswith(("7.2 V", "6 V"))
    assert "set " in command.today
    assert "gentle start" in command.why
    assert any("guard" in remark for remark in told.remarks)


def test_a_lower_ceiling_trips_today(run_virtually: RunVirtually) -> None:
    filed = filed_of(run_virtually("hopeless", seed=3).journal)
    low = msgspec.structs.replace(filed.ceilings, locked_s=Bound(value=0.3, layer=Layer.JOB))
    told = replay(changed(filed, ceilings=low))
    assert told.differences


def test_a_filed_trip_is_one_today_and_one_that_would_not_be_is_told(run_virtually: RunVirtually) -> None:
    filed = filed_of(run_virtually("hopeless", seed=3).journal)
    on = int(np.flatnonzero(filed.trace.set_volts > 5)[0]) + 4
    volts = filed.trace.volts.copy()
    volts[on] = 40.0
    spoiled = {name: getattr(filed.trace, name) for name in Trace.__slots__} | {"volts": volts}
    told = replay(changed(filed, trace=Trace(**spoiled)))
    outcome = next(d for d in told.differences if d.what == "outcome")
    assert outcome.filed.startswith(Outcome.STILL_STUCK)
    assert "40 V is above" in outcome.today


def test_a_run_cut_short_is_compared_as_far_as_it_goes(run_virtually: RunVirtually) -> None:
    filed = filed_of(run_virtually("stuck-soft", seed=3).journal)
    end_s = filed.trace.received[399] * 1e-4
    events = tuple(e for e in filed.events if e.t_s <= end_s)
    told = replay(changed(filed, trace=cut(filed.trace, 400), events=events, complete=False))
    assert told.differences == []
    assert any("cut short" in remark for remark in told.remarks)


def test_a_record_without_the_supplys_timing_says_what_was_assumed(run_virtually: RunVirtually) -> None:
    filed = filed_of(run_virtually("diode").journal)
    events = tuple(
        msgspec.structs.replace(e, values={k: v for k, v in e.values.items() if k != "settle_s"}) for e in filed.events
    )
    assert "settle_s" in replay(changed(filed, events=events)).remarks[0]
