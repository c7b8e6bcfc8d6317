"""Text in a fixed number of lines."""

from pytestqt.qtbot import QtBot

from ui.density import CLOSE, ROOMY, TIGHT
from ui.pieces import FewLines

LONG = "One motor started ten times spreads 0.8 % in run-up; the units spread 6.1 %: the test can tell them apart. " * 2


def test_what_has_room_is_shown_whole_and_without_a_hint(qtbot: QtBot) -> None:
    made = FewLines(3)
    qtbot.addWidget(made)
    made.resize(2000, 80)
    made.say("short")
    assert (made.text(), made.toolTip()) == ("short", "")


def test_what_has_no_room_is_cut_in_its_last_line_and_never_higher(qtbot: QtBot) -> None:
    made = FewLines(3)
    qtbot.addWidget(made)
    high = made.height()
    made.resize(300, high)
    made.say(LONG)
    lines = made.text().split("\n")
    assert len(lines) == 3
    assert lines[-1].endswith("…")
    assert (made.said, made.toolTip()) == (LONG, LONG)
    assert made.height() == high


def test_where_it_is_narrow_one_more_line_comes_when_the_words_need_it_and_goes_again(qtbot: QtBot) -> None:
    made = FewLines(1)
    qtbot.addWidget(made)
    made.resize(700, made.height())
    high = made.height()
    made.fit(CLOSE)
    made.say("short")
    assert made.height() == high
    words = LONG[:120]
    made.say(words)
    assert made.text().replace("\n", " ") == words.rstrip()
    assert made.toolTip() == ""
    assert high < made.height() < 2 * high
    made.say(LONG)
    assert made.text().endswith("…")
    made.say("short")
    assert made.height() == high
    made.fit(ROOMY)
    made.say(words)
    assert (made.height(), made.toolTip()) == (high, words)
    made.fit(TIGHT)
    assert made.height() > high
