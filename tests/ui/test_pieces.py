"""Words that are too long for their place take no more of it."""

from pytestqt.qtbot import QtBot

from ui.pieces import TwoLines

LONG = "The current limit was reached before the winding answered, " * 8


def test_a_long_reason_is_two_lines_and_moves_nothing(qtbot: QtBot) -> None:
    why = TwoLines("second")
    qtbot.addWidget(why)
    why.resize(400, why.height())
    why.show()
    why.say("Short.")
    height = why.height()
    assert (why.text(), why.toolTip()) == ("Short.", "")
    why.say(LONG)
    first, second = why.text().split("\n")
    assert LONG.startswith(first)
    assert second.endswith("…")
    assert max(why.fontMetrics().horizontalAdvance(line) for line in (first, second)) <= why.width()
    assert (why.toolTip(), why.said, why.height()) == (LONG, LONG, height)


def test_more_room_shows_more_of_it(qtbot: QtBot) -> None:
    why = TwoLines("second")
    qtbot.addWidget(why)
    why.show()
    why.resize(200, why.height())
    why.say("The rotor made a voltage of its own after the kick, so it turns; next it is held.")
    assert why.text().endswith("…")
    why.resize(500, why.height())
    assert why.text().replace("\n", " ") == why.said
    assert why.toolTip() == ""
