"""Groups of earlier jobs: what counts as tried, as freed and as back again, and the jobs behind each figure."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.history.past import Group, Key, PastJob, summarise
from benchlog.outcome import Outcome
from benchlog.records import JobState, Result

DAY_0 = datetime(2026, 1, 1, 9, tzinfo=UTC)


def utc(days: float) -> str:
    return (DAY_0 + timedelta(days=days)).isoformat(timespec="milliseconds").replace("+00:00", "Z")


NOW = utc(200)
FREED = PastJob(
    id=1,
    number=1,
    kind="bilge pump",
    make="",
    model="B 12",
    serial="0815",
    opened_utc=utc(0),
    closed_utc=utc(10),
    state=JobState.CLOSED.value,
    outcome=Outcome.FREED.value,
    result=Result.WORKS.value,
    kicks=6,
    kick_s=42.0,
    minutes=30,
    cents=4500,
    freed_rung="same way, 80 %",
)


def job(number: int, **changed: object) -> PastJob:
    return msgspec.structs.replace(FREED, id=number, number=number, **{"serial": f"S{number}", **changed})


def only(*pasts: PastJob, now: str = NOW) -> Group:
    (group,) = summarise(pasts, Key.KIND, now)
    return group


def test_of_nothing_there_is_no_group() -> None:
    assert summarise([], Key.KIND, NOW) == ()


def test_every_figure_carries_its_jobs() -> None:
    group = only(
        job(5, kicks=2, minutes=0, cents=0),
        job(2),
        job(3, outcome="still-stuck", result="not-repaired", kicks=40),
        job(4, outcome="open", result="not-repaired", kicks=0),
        job(1, state="waiting-for-part", closed_utc=None, outcome="still-stuck", result=""),
    )
    assert group.jobs == (1, 2, 3, 4, 5)
    assert group.still_open == (1,)
    assert group.tried == (2, 3, 5)
    assert group.freed == (2, 5)
    assert group.freed_rate.text == "2 of 3 (21 to 94 %)"  # Wilson, computed
    assert group.kicks is not None
    assert (group.kicks.count, group.kicks.low, group.kicks.median, group.kicks.high) == (2, 3, 4, 5)
    assert group.run_s is not None
    assert group.run_s.median == 42
    assert group.timed == (2,)
    assert group.minutes is not None
    assert group.minutes.median == 30
    assert group.charged == (1, 2, 3, 4)
    assert group.cents == 4 * 4500
    assert group.comebacks.at_risk == (2, 5)


@pytest.mark.parametrize(
    ("outcome", "kicks", "tried", "freed"),
    [
        ("freed", 4, True, True),
        ("freed", 0, True, True),  # by hand
        ("runs", 4, True, True),  # the proof after it came free
        ("runs", 0, False, False),  # was not stuck
        ("still-stuck", 0, True, False),
        ("undetermined", 3, True, False),
        ("undetermined", 0, False, False),
        ("stopped", 2, True, False),
        ("open", 0, False, False),
        ("refused", 0, False, False),
        (None, 0, False, False),
    ],
)
def test_what_counts_as_tried_and_as_freed(outcome: str | None, kicks: int, tried: bool, freed: bool) -> None:
    group = only(job(1, outcome=outcome, kicks=kicks))
    assert (group.tried == (1,), group.freed == (1,)) == (tried, freed)


@pytest.mark.parametrize(
    ("result", "outcome", "at_risk"),
    [
        ("works", "freed", True),
        ("works", None, True),
        ("partly", "freed", False),
        ("not-repaired", "freed", False),
        ("", "freed", True),
        ("", "runs", True),
        ("", "still-stuck", False),
        ("", None, False),
    ],
)
def test_only_what_went_out_working_can_come_back(result: str, outcome: str | None, at_risk: bool) -> None:
    group = only(job(1, result=result, outcome=outcome, came_back_utc=utc(15)))
    assert group.comebacks.at_risk == ((1,) if at_risk else ())
    assert group.comebacks.within_30 == group.comebacks.at_risk


def test_an_open_job_is_neither_freed_nor_a_failure_yet() -> None:
    for outcome in ("freed", "still-stuck"):
        group = only(job(1, closed_utc=None, state="open", outcome=outcome))
        assert (group.tried, group.freed, group.comebacks.at_risk) == ((), (), ())
        assert group.freed_rate.text == "0 of 0"
        assert group.kicks is None
        assert group.comebacks.by(30) is None


def test_comebacks_are_counted_from_the_day_it_went_out() -> None:
    back = only(
        job(1, came_back_utc=utc(40)),  # on day 30 after it was closed
        job(2, came_back_utc=utc(41)),
        job(3, came_back_utc=utc(100)),  # on day 90
        job(4, came_back_utc=utc(101)),
        job(5),
    ).comebacks
    assert (back.within_30, back.within_90) == ((1,), (1, 2, 3))
    month, quarter = back.by(30), back.by(90)
    assert month is not None
    assert quarter is not None
    assert (month.share, quarter.share) == pytest.approx((0.2, 0.6))
    assert back.survival.median == 90


def test_what_is_still_out_is_no_success() -> None:
    # 9 went out yesterday and 1 came back after 20 days of the 2 that have been out for longer
    fresh = [job(number, closed_utc=utc(199)) for number in range(3, 12)]
    back = only(job(1, came_back_utc=utc(30)), job(2), *fresh).comebacks
    month = back.by(30)
    assert month is not None
    assert month.share == 0.5
    assert len(back.at_risk) == 11


def test_nobody_has_been_out_for_so_long() -> None:
    back = only(job(1), now=utc(25)).comebacks
    assert back.at_risk == (1,)
    assert back.by(30) is None


@pytest.mark.parametrize("days", [10.0, 10.2, 8.0])
def test_back_the_same_day_or_before_it_was_closed_is_back_at_once(days: float) -> None:
    back = only(job(1, came_back_utc=utc(days)), job(2)).comebacks
    assert back.within_30 == (1,)
    assert back.survival.steps[0].time == 0
    assert back.survival.steps[0].at_risk == 2


def test_seen_from_before_it_came_back_it_is_still_out() -> None:
    back = only(job(1, came_back_utc=utc(40)), now=utc(39)).comebacks
    assert (back.at_risk, back.within_90, back.survival.times) == ((1,), (), (29,))
    assert only(job(1, came_back_utc=utc(40)), now=utc(40)).comebacks.within_30 == (1,)


def test_closed_after_now_was_out_for_no_time() -> None:
    assert only(job(1), now=utc(5)).comebacks.survival.times == (0,)


def test_without_a_serial_nobody_would_know_it_again() -> None:
    back = only(job(1, serial=" "), job(2, serial="", came_back_utc=utc(20)), job(3)).comebacks
    assert (back.at_risk, back.unseen, back.within_90) == ((3,), (1, 2), ())


def test_groups_are_the_largest_first_in_the_usual_spelling() -> None:
    pasts = [
        job(1, kind="Bilge Pump "),
        job(2, kind="cabin fan"),
        job(3),
        job(4),
        job(5, kind=""),
        job(6, kind="cabin fan"),
    ]
    assert [(group.label, group.jobs) for group in summarise(pasts, Key.KIND, NOW)] == [
        ("bilge pump", (1, 3, 4)),
        ("cabin fan", (2, 6)),
        ("—", (5,)),
    ]


@pytest.mark.parametrize(
    ("by", "labels"),
    [
        (Key.KIND, ["bilge pump"]),
        (Key.MODEL, ["B 12", "Harbour B 12"]),
        (Key.CAUSE, ["dried residue", "—"]),
        (Key.METHOD, ["soaked, kicks", "—"]),
    ],
)
def test_each_key_groups_by_what_was_said(by: Key, labels: list[str]) -> None:
    pasts = [job(1, make="Harbour"), job(2, cause="dried residue", method="soaked, kicks")]
    assert sorted(group.label for group in summarise(pasts, by, NOW)) == labels


def test_an_instant_that_is_none_is_refused() -> None:
    with pytest.raises(ValueError, match="yesterday"):
        summarise([job(1)], Key.KIND, "yesterday")


some = st.lists(
    st.builds(
        lambda changed, days: {**changed, "closed_utc": None if days is None else utc(days)},
        st.fixed_dictionaries(
            {
                "kind": st.sampled_from(["bilge pump", "cabin fan", "Cabin fan", "hatch actuator", ""]),
                "outcome": st.sampled_from([None, *(outcome.value for outcome in Outcome)]),
                "result": st.sampled_from([result.value for result in Result]),
                "kicks": st.integers(0, 60),
                "minutes": st.integers(0, 300),
                "cents": st.integers(0, 10_000),
                "serial": st.sampled_from(["", "S1", "S2"]),
                "came_back_utc": st.none() | st.integers(0, 250).map(utc),
            }
        ),
        st.none() | st.integers(0, 220),
    ),
    max_size=25,
)


@given(some, st.randoms(use_true_random=False))
def test_the_jobs_are_parted_and_the_order_says_nothing(drawn: list[dict[str, object]], random: object) -> None:
    pasts = [job(number, **changed) for number, changed in enumerate(drawn, start=1)]
    groups = summarise(pasts, Key.KIND, NOW)
    assert sorted(number for group in groups for number in group.jobs) == list(range(1, len(pasts) + 1))
    assert sum(group.cents for group in groups) == sum(past.cents for past in pasts)
    for group in groups:
        back = group.comebacks
        assert set(group.freed) <= set(group.tried) <= set(group.jobs) - set(group.still_open)
        assert set(back.within_30) <= set(back.within_90) <= set(back.at_risk) <= set(group.jobs)
        assert not set(back.unseen) & set(back.at_risk)
        assert len(back.survival.times) == len(back.at_risk)
    shuffled = list(pasts)
    shuffle: Callable[[list[PastJob]], None] = random.shuffle  # type: ignore[attr-defined]
    shuffle(shuffled)
    assert summarise(shuffled, Key.KIND, NOW) == groups
