"""Which rung frees which type, what is hopeless, what waits, and what the next job may expect."""

import pytest

from benchlog.history.past import Key, PastJob, summarise
from benchlog.history.prior import hopeless, prior, rungs, waiting
from tests.history.test_past import NOW, job, utc


def stuck(number: int, **changed: object) -> PastJob:
    return job(number, **{"outcome": "still-stuck", "result": "not-repaired", "freed_rung": "", **changed})


def test_the_rungs_that_freed_a_type_with_their_jobs() -> None:
    pasts = [
        job(1, freed_rung="same way, 60 %"),
        job(2),
        job(3),
        job(4, freed_rung="", kicks=0),
        stuck(5),
        job(6, kind="cabin fan"),
        job(7, closed_utc=None, state="open"),
    ]
    told = [(row.label, row.rung, row.jobs, row.rate.hits, row.rate.count) for row in rungs(pasts, Key.KIND)]
    assert told == [
        ("bilge pump", "same way, 80 %", (2, 3), 2, 4),
        ("bilge pump", "—", (4,), 1, 4),
        ("bilge pump", "same way, 60 %", (1,), 1, 4),
        ("cabin fan", "same way, 80 %", (6,), 1, 1),
    ]
    assert rungs([], Key.MODEL) == ()


@pytest.mark.parametrize(("freed", "tried", "is_hopeless"), [(0, 7, False), (0, 8, True), (1, 8, False), (1, 13, True)])
def test_hopeless_is_where_even_the_upper_limit_is_low(freed: int, tried: int, is_hopeless: bool) -> None:
    # Wilson's upper limits, computed: 0 of 7 35.4 %, 0 of 8 32.4 %, 1 of 8 47.1 %, 1 of 13 33.3 %
    pasts = [job(number) if number < freed else stuck(number) for number in range(tried)]
    found = hopeless(summarise(pasts, Key.KIND, NOW))
    assert prior(pasts).hopeless == is_hopeless
    assert bool(found) == is_hopeless
    if found:
        assert found[0].label == "bilge pump"
        assert found[0].jobs == tuple(range(tried))
        assert found[0].why == f"{found[0].rate.text} came free: even the upper limit is below 35 %."


def test_too_few_are_never_hopeless() -> None:
    groups = summarise([stuck(number) for number in range(4)], Key.KIND, NOW)
    assert hopeless(groups, below=0.9) == ()
    assert len(hopeless(groups, below=0.9, at_least=4)) == 1


def test_what_waits_the_longest_first() -> None:
    part = {"state": "waiting-for-part", "closed_utc": None}
    told = waiting(
        [
            job(1, **part, waiting_since_utc=utc(197)),
            job(2, **part, waiting_since_utc=utc(150)),
            job(3, **part),  # since when was not said: since it was opened
            job(4, state="waiting-for-approval", closed_utc=None, waiting_since_utc=utc(199)),
            job(5, state="open", closed_utc=None),
            job(6),
        ],
        NOW,
    )
    assert [(row.state, row.jobs, row.days) for row in told] == [
        ("waiting-for-approval", (4,), (1.0,)),
        ("waiting-for-part", (3, 2, 1), (200.0, 50.0, 3.0)),
    ]
    assert waiting([], NOW) == ()


def test_the_prior_of_nothing_says_so() -> None:
    for pasts in ([], [job(1, outcome="open", kicks=0)], [job(1, closed_utc=None)]):
        told = prior(pasts)
        assert told.sentence == "None like it was tried before."
        assert (told.freed.count, told.rung, told.kicks, told.hopeless) == (0, "", None, False)


def test_the_prior_of_some_that_came_free() -> None:
    pasts = [job(number, kicks=number) for number in range(1, 6)]
    pasts += [job(6, freed_rung="", kicks=0), job(7, freed_rung="same way, 100 %", kicks=30), stuck(8), stuck(9)]
    told = prior(reversed(pasts))
    assert told.jobs == tuple(range(1, 10))
    assert (told.rung, told.at_rung.hits, told.at_rung.count) == ("same way, 80 %", 5, 7)
    assert told.kicks is not None
    assert told.kicks.median == 3
    assert told.sentence == (
        "Of those like it 7 of 9 (45 to 94 %) came free, the middle one after 3 kicks; "
        'most often at "same way, 80 %": 5 of 7 (36 to 92 %).'
    )


def test_the_prior_of_a_hopeless_type_says_why() -> None:
    told = prior([stuck(number) for number in range(9)])
    assert told.sentence == (
        "Of those like it 0 of 9 (0 to 30 %) came free: even the upper limit is below 35 %. "
        "More kicks are hardly worth it."
    )


def test_came_free_by_hand_alone_names_no_rung() -> None:
    told = prior([job(1, freed_rung="", kicks=0)])
    assert told.rung == ""
    assert told.sentence == "Of those like it 1 of 1 (21 to 100 %) came free, the middle one after 0 kicks."
