"""Rows that go on in the next line."""

from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from ui.pieces import button
from ui.wrapping import WrapRow


def test_what_follows_a_stretch_stands_at_the_right_in_the_next_line_as_well(qtbot: QtBot) -> None:
    holder = QWidget()
    qtbot.addWidget(holder)
    row = WrapRow(holder)
    first, again, onward = (button(words, words) for words in ("Measure the leads", "Probe again", "On to the next"))
    row.add(first)
    row.add_stretch()
    row.add(again)
    row.add(onward)
    holder.resize(900, 50)
    holder.show()
    assert first.x() == 0
    assert first.y() == again.y() == onward.y()
    assert onward.geometry().right() == holder.width() - 1
    holder.resize(first.sizeHint().width() + again.sizeHint().width() + 40, 120)
    row.activate()
    assert onward.y() > again.y() == first.y()
    assert again.geometry().right() == onward.geometry().right() == holder.width() - 1
