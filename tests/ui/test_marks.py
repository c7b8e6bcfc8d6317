"""Words on the chart never run into each other, and the important ones are there."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from ui.charts.marks import fit_words

wanted = st.lists(st.tuples(st.floats(0, 800), st.text("abc", min_size=1, max_size=12), st.booleans()), max_size=20)


def width(text: str) -> float:
    return 7.0 * len(text)


@given(wanted)
def test_no_two_words_touch_and_none_runs_out(words: list[tuple[float, str, bool]]) -> None:
    placed = fit_words(words, width, 850.0)
    for before, after in pairwise(placed):
        assert before.left + width(before.text) < after.left
    assert all(word.left + width(word.text) <= 850.0 for word in placed)


def test_an_important_word_comes_before_an_earlier_plain_one() -> None:
    placed = fit_words([(0.0, "gentle start", False), (20.0, "turning", True)], width, 850.0)
    assert [word.text for word in placed] == ["turning"]
