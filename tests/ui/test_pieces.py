"""Words that are too long for their place take no more of it; a list to choose from shows all of its rows."""

import pytest
from PySide6.QtWidgets import QStyleOptionComboBox, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from ui import theme
from ui.pieces import LEAST_CHOICE_PX, Chooser, FewLines

LONG = "The current limit was reached before the winding answered, " * 8


def test_a_long_reason_is_two_lines_and_moves_nothing(qtbot: QtBot) -> None:
    why = FewLines(2, "second")
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
    why = FewLines(2, "second")
    qtbot.addWidget(why)
    why.show()
    why.resize(200, why.height())
    why.say("The rotor made a voltage of its own after the kick, so it turns; next it is held.")
    assert why.text().endswith("…")
    why.resize(500, why.height())
    assert why.text().replace("\n", " ") == why.said
    assert why.toolTip() == ""


@pytest.mark.parametrize("editable", [False, True])
@pytest.mark.parametrize("count", [1, 3, 7])
def test_what_can_be_chosen_stands_whole_in_its_list_in_rows_for_gloves(
    qtbot: QtBot, *, editable: bool, count: int
) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.setStyleSheet(theme.style_sheet(theme.LIGHT))
    chooser = Chooser("kind", "What it is")
    chooser.setEditable(editable)
    chooser.addItems([f"fan {number}" for number in range(count)])
    QVBoxLayout(window).addWidget(chooser)
    window.show()
    chooser.showPopup()
    view = chooser.view()
    assert view.sizeHintForRow(0) >= theme.TOUCH_PX
    assert view.viewport().height() >= count * view.sizeHintForRow(0)
    chooser.hidePopup()


def test_a_narrow_field_opens_a_list_that_shows_its_words_whole(qtbot: QtBot) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.resize(900, 200)
    made = Chooser("which", "Which")
    made.setFixedWidth(120)
    words = "What it may cost its owner at the most"
    made.addItems([words, "cause"])
    QVBoxLayout(window).addWidget(made)
    window.show()
    made.showPopup()
    assert made.view().viewport().width() >= made.fontMetrics().horizontalAdvance(words)
    made.hidePopup()
    made.addItem(words * 20)
    made.showPopup()
    assert made.view().width() <= window.width()
    made.hidePopup()


def test_long_words_to_choose_from_hold_no_page_open_and_are_shortened_with_a_mark(qtbot: QtBot) -> None:
    made = Chooser("which", "Which")
    qtbot.addWidget(made)
    made.addItems(["short", LONG])
    assert made.minimumSizeHint().width() <= LEAST_CHOICE_PX
    made.resize(160, made.height())
    for index, cut in ((0, False), (1, True)):
        made.setCurrentIndex(index)
        option = QStyleOptionComboBox()
        made.initStyleOption(option)
        assert option.currentText.endswith("…") is cut
        assert made.fontMetrics().horizontalAdvance(option.currentText) < 160
        assert made.currentText() == ["short", LONG][index]
