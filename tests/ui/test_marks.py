"""Words on the chart never run into each other, and the important ones are there."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from ui.charts.marks import LABEL_GAPS, fit_words, free_level

wanted = st.lists(st.tuples(st.floats(0, 800), st.text("abc", min_size=1, max_size=12), st.booleans()), max_size=20)


def width(text: str) -> float:
    return 7.0 * len(text)


@given(wanted)
def test_no_two_words_touch_and_none_runs_out(words: list[tuple[float, str, bool]]) -> None:
    placed = fit_words(words, width, 850.0)
    for before, after in pairwise(placed):
        assert before.left + width(before.text) < after.left
    assert all(word.left + width(word.text) <= 850.0 for word in placed)


@given(wanted, st.lists(st.floats(0, 800), max_size=8))
def test_no_word_lies_on_a_sign_that_is_there(words: list[tuple[float, str, bool]], signs: list[float]) -> None:
    placed = fit_words(words, width, 850.0, [(sign - 2, sign) for sign in signs])
    for word in placed:
        assert not any(word.left - 8 < sign and sign - 10 < word.left + width(word.text) for sign in signs)


def test_an_important_word_comes_before_an_earlier_plain_one() -> None:
    placed = fit_words([(0.0, "gentle start", False), (20.0, "turning", True)], width, 850.0)
    assert [word.text for word in placed] == ["turning"]


@given(
    st.floats(-50, 250),
    st.lists(st.floats(0, 200), max_size=2),
)
def test_a_label_is_set_clear_of_those_that_stand_and_near_to_where_it_belongs(
    wanted: float, taken: list[float]
) -> None:
    level = free_level(wanted, taken, 0.0, 200.0)
    assert 0.0 <= level <= 200.0
    assert all(abs(level - other) >= LABEL_GAPS[0] - 1e-3 for other in taken)
    within = min(max(wanted, 0.0), 200.0)
    assert abs(level - within) <= LABEL_GAPS[0] * (1 + len(taken))


def test_a_label_with_little_room_comes_closer_but_does_not_cover() -> None:
    assert free_level(20.0, [16.0], 0.0, 34.0) == 32.0  # the lesser gap below it
    assert free_level(5.0, [17.0], 0.0, 34.0) == 1.0
