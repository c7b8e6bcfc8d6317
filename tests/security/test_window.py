"""What looks like HTML is shown as it is written: no label or tooltip of the window takes it for HTML."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QTextDocument
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from benchlog.bench.frames import Question
from benchlog.records import Item, Job, JobState, Motor
from tests.ui.conftest import Desk, desk, ledger  # noqa: F401  fixtures
from ui import theme
from ui.history.room import HistoryRoom
from ui.pieces import Elided, FewLines, label, plain_hint

HTML = '<img src="file:///x"><b>off</b> & <a href="http://192.0.2.1/">safe</a>'


def shown(hint: str) -> str:
    """What a tooltip shows: Qt takes text with a tag in it for HTML."""
    document = QTextDocument()
    if "<" in hint:
        document.setHtml(hint)
    else:
        document.setPlainText(hint)
    return document.toPlainText()


def test_every_label_of_the_window_but_the_figures_of_ceilings_is_plain(desk: Desk) -> None:  # noqa: F811
    desk.take_in()
    found = desk.window.findChildren(QLabel)
    assert len(found) > 50
    rich = [made for made in found if made.textFormat() is not Qt.TextFormat.PlainText]
    figures = [row.figures for row in desk.window.panel.ceilings._rows]
    assert {id(made) for made in rich} == {id(made) for made in figures}


def test_a_question_shows_tags_as_they_are_written(desk: Desk) -> None:  # noqa: F811
    card = desk.window.free.question
    card.ask(Question(id=1, text=HTML, choices=[HTML, "skip"]))
    assert card.text.textFormat() is Qt.TextFormat.PlainText
    assert "<b>off</b>" in card.text.text()


def test_a_tooltip_shows_tags_as_they_are_written(qtbot: QtBot) -> None:
    assert shown(HTML) != HTML
    assert shown(plain_hint(HTML)) == HTML
    assert plain_hint("5 V & more") == "5 V & more"
    for made in (Elided(HTML), FewLines()):
        qtbot.addWidget(made)
        made.say(HTML)
        made.resize(40, 40)
        made.show()
        made.say(HTML * 3)
        assert made.textFormat() is Qt.TextFormat.PlainText
        assert shown(made.toolTip()) == HTML * 3
    plain = label(HTML)
    qtbot.addWidget(plain)
    assert plain.textFormat() is Qt.TextFormat.PlainText


def test_the_history_shows_tags_and_unknown_words_as_they_are_written(qtbot: QtBot) -> None:
    room = HistoryRoom(theme.LIGHT)
    qtbot.addWidget(room)
    job = Job(
        id=1,
        number=1,
        tag="H-0001",
        opened_utc="2026-11-25T10:00:00.000Z",
        closed_utc=None,
        state=JobState.OPEN,
        item=Item(kind=HTML),
        motor=Motor(rated_volts=12.0),
        complaint=HTML,
        load_state="",
        cause=HTML,
        last_outcome="danced",
        runs=1,
    )
    room.show_jobs([job], more=False)
    cells = [room.table.item(0, column) for column in range(room.table.columnCount())]
    assert [cell.text() for cell in cells if cell is not None][4:6] == [HTML, "danced"]
    assert all(shown(cell.toolTip()) == cell.text() for cell in cells if cell is not None)
    room.show_job(job, [])
    for made in (room.detail, room.words):
        assert made.textFormat() is Qt.TextFormat.PlainText
        assert "<b>off</b>" in made.text()
