"""What is advised, each remark under its condition, and that nothing advised is above a ceiling."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.errors import Refused
from benchlog.motor.winding import Winding
from benchlog.outcome import Outcome, WindingVerdict
from benchlog.quantities import wilson
from benchlog.recovery.advice import Past, advise, begin_at, change, same_as_last
from benchlog.recovery.ceilings import Ceilings, Layer, Limits, intersect
from benchlog.recovery.steps import Kicks, Start, built_in

LADDER = built_in("starting-ladder")


def winding(ohm: float | None, verdict: WindingVerdict = WindingVerdict.WINDING) -> Winding:
    return Winding(verdict=verdict, reason="", ohm=ohm, reference_ohm=ohm)


def ceilings(**job: float) -> Ceilings:
    return intersect({Layer.JOB: Limits(**({"volts": 12.0} | job))})  # type: ignore[arg-type]


FREED = Past(
    likeness="this model",
    job=3,
    run=7,
    utc="2026-03-02T09:00:00.000Z",
    outcome=Outcome.FREED,
    kicks=8,
    freed_ratio=0.99,
    freed_amps=1.4,
    hand_steps=("soaked",),
    limits=Limits(volts=12.0, amps=2.0),
    sequence=LADDER,
)


@given(
    rated=st.none() | st.floats(0.5, 42.0),
    ohm=st.none() | st.floats(0.05, 500.0),
    volts=st.floats(0.5, 42.4),
    amps=st.floats(0.01, 20.0),
    owner=st.none() | st.floats(0.5, 60.0),
    verdict=st.sampled_from(WindingVerdict),
    ratios=st.lists(st.floats(0.3, 2.0), max_size=5),
)
def test_nothing_proposed_is_above_what_holds(
    rated: float | None,
    ohm: float | None,
    volts: float,
    amps: float,
    owner: float | None,
    verdict: WindingVerdict,
    ratios: list[float],
) -> None:
    holds = intersect({Layer.OWNER: Limits(volts=owner), Layer.JOB: Limits(volts=volts, amps=amps)})
    past = [replace(FREED, freed_ratio=ratio) for ratio in ratios]
    told = advise(rated_volts=rated, ceilings=holds, ladder=LADDER, winding=winding(ohm, verdict), past=past)
    for proposal in told.proposals:
        bound = getattr(holds, proposal.name).value
        assert 0 < proposal.value <= proposal.at_most <= bound
        assert proposal.why.endswith(".")
        with pytest.raises(Refused):
            change(proposal, 1.001 * proposal.at_most)
        assert change(proposal, 0.5 * proposal.value).value == 0.5 * proposal.value
    assert all(remark.endswith(".") for remark in told.remarks)


def remarks(**changes: object) -> str:
    asked: dict[str, object] = {
        "rated_volts": 12.0,
        "ceilings": ceilings(),
        "ladder": LADDER,
        "winding": winding(8.0),
    }
    return " ".join(advise(**(asked | changes)).remarks)  # type: ignore[arg-type]


def test_limited_by_current_is_said_where_the_limit_is_below_what_the_winding_draws() -> None:
    assert "raising the volts does nothing" in remarks(ceilings=ceilings(amps=1.0))
    assert "raising the volts does nothing" not in remarks(ceilings=ceilings(amps=1.5))


def test_a_limit_below_what_it_needs_to_start_is_said_from_history_or_as_a_share_of_stall() -> None:
    # common practice, no source: a motor that runs on 0.5 A can need 1.6 A to start
    assert "may be below what this motor needs" in remarks(ceilings=ceilings(amps=0.5))
    assert "needed to start: 1.40 A" in remarks(ceilings=ceilings(amps=1.0), past=[FREED])
    assert "needs to start" not in remarks(ceilings=ceilings(amps=1.0))


@pytest.mark.parametrize(
    "verdict", [WindingVerdict.OPEN, WindingVerdict.SHORT, WindingVerdict.DIODE, WindingVerdict.ELECTRONIC]
)
def test_an_electrical_finding_gets_no_ladder(verdict: WindingVerdict) -> None:
    told = advise(rated_volts=12.0, ceilings=ceilings(), ladder=LADDER, winding=winding(None, verdict))
    assert told.sequence is None
    assert len(told.remarks) == 1


def test_rest_and_hands_are_advised_when_it_is_time() -> None:
    assert "Rest 40 s" in remarks(rest=(40.0, "winding temperature"))
    assert "turn, tap, soak, warm" in remarks(last=Outcome.STILL_STUCK)
    assert "are used up" in remarks(kicks_today=60)
    assert "could not tell" in remarks(last=Outcome.UNDETERMINED)


def test_without_a_rating_small_volts_are_proposed_and_to_be_confirmed() -> None:
    told = advise(rated_volts=None, ceilings=ceilings(volts=42.0), ladder=LADDER, winding=winding(2.0))
    volts = told.proposals[0]
    assert volts.value == pytest.approx((3.0 * 2.0) ** 0.5)
    assert "Confirm" in volts.why


def test_the_ladder_begins_where_the_gentlest_kick_freed_one_and_only_after_two() -> None:
    one = advise(rated_volts=12.0, ceilings=ceilings(), ladder=LADDER, winding=winding(8.0), past=[FREED])
    assert one.first_rung == 1
    two = advise(rated_volts=12.0, ceilings=ceilings(), ladder=LADDER, winding=winding(8.0), past=[FREED, FREED])
    assert two.first_rung == 3
    assert two.sequence is not None
    kept = [step for step in two.sequence.steps if isinstance(step, Kicks)]
    assert len(kept) == sum(isinstance(step, Kicks) for step in LADDER.steps) - 2
    assert isinstance(two.sequence.steps[0], Start)
    assert begin_at(LADDER, 1) == LADDER


def test_history_is_told_with_its_count_and_interval() -> None:
    stuck = replace(FREED, outcome=Outcome.STILL_STUCK)
    told = remarks(past=[FREED, FREED, stuck])
    assert "2 of 3 (21 to 94 %) recoveries ended freed" in told
    assert "before 2 of them: soaked" in told


@pytest.mark.parametrize(
    ("hits", "count", "low", "high"), [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605), (0, 20, 0.0, 0.1611)]
)
def test_wilson_s_interval(hits: int, count: int, low: float, high: float) -> None:
    # Source: Newcombe 1998 (inputs published; limits from memory)
    assert wilson(hits, count) == pytest.approx((low, high), abs=6e-5)


def test_the_same_as_last_time_is_refused_where_the_ceilings_are_lower_today() -> None:
    assert same_as_last([replace(FREED, outcome=Outcome.RUNS), FREED], ceilings(), 12.0) is FREED
    owner = intersect({Layer.OWNER: Limits(volts=9.0), Layer.JOB: Limits(volts=12.0)})
    with pytest.raises(Refused, match="above the owner's ceiling of 9 V"):
        same_as_last([FREED], owner, 12.0)
    with pytest.raises(Refused, match="no motor like it"):
        same_as_last([], ceilings(), 12.0)


def test_what_hardly_ever_came_free_is_said_to_be_hardly_worth_more_kicks() -> None:
    stuck = replace(FREED, outcome=Outcome.STILL_STUCK)
    assert "More kicks are hardly worth it." in remarks(past=[stuck] * 12)
    assert "hardly worth" not in remarks(past=[stuck] * 3)
