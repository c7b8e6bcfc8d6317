"""The habits of a desktop program: keys, help, settings, going back, recent jobs, what is dropped. Common practice, no
source, but for the keys, which are those of Qt's own list of standard keys."""

from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, Qt, QUrl
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QLineEdit, QWidget

from benchlog.ledger.store import Ledger
from benchlog.settings import Settings
from tests.ui.conftest import Desk, gone
from tests.ui.fake_link import FakeLink
from ui import help_texts, shortcuts, texts, theme
from ui.help.pages import Topic, found, markdown
from ui.main_window import BENCH_ROOM, CURVES_ROOM, HELP_ROOM, HISTORY_ROOM, SETTINGS_ROOM, MainWindow
from ui.pieces import why_grey
from ui.recent import RecentRow, open_jobs
from ui.session import Session
from ui.taught_keys import Role, role_text


@pytest.fixture(scope="module")
def shared(qapp: QApplication, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    """One window with nothing on its bench, for what needs no job: making one takes longer than the tests."""
    with Ledger.open(tmp_path_factory.mktemp("desktop") / "harbour.db") as ledger:
        window = MainWindow(theme.LIGHT)
        window.wear(theme.LIGHT)
        session = Session(window, ledger, FakeLink, settings=Settings)
        window.show()
        yield Desk(window, session, ledger, None)  # type: ignore[arg-type]
        gone(window)


def pressed(desk: Desk, keys: str) -> None:
    desk.session.desktop.keys[keys].activated.emit()


def test_no_key_of_the_window_begins_a_run_or_is_one_of_output_off(desk: Desk) -> None:
    desk.take_in()
    desk.make_safe()
    for written, shortcut in desk.session.desktop.keys.items():
        if written not in ("Ctrl+Q", "Ctrl+W", "F11"):
            shortcut.activated.emit()
        assert written not in ("Esc", "Pause", "Space", "M")
    assert desk.links == []


def test_keys_that_systems_agree_on_mean_here_what_they_mean_there() -> None:
    named = {key.name: key.keys for key in shortcuts.TABLE}
    for name, standard in (
        ("find", QKeySequence.StandardKey.Find),
        ("paper", QKeySequence.StandardKey.Print),
        ("help", QKeySequence.StandardKey.HelpContents),
        ("new_job", QKeySequence.StandardKey.New),
        ("keep", QKeySequence.StandardKey.Save),
    ):
        assert QKeySequence(standard).toString() in named[name]


def test_every_key_has_words_and_stands_in_the_help() -> None:
    told = markdown(Topic.KEYS)
    assert all(words in told for words in texts.KEY_WORDS.values())
    assert {key.name for key in shortcuts.TABLE} == set(texts.KEY_WORDS)


def test_f1_shows_the_help_of_the_page_and_leads_back_to_where_the_keyboard_was(shared: Desk) -> None:
    shared.session.show_room(BENCH_ROOM)
    shared.window.intake.make.setFocus()
    pressed(shared, "F1")
    assert (shared.window.room, shared.window.help.topic) == (HELP_ROOM, Topic.INTAKE)
    pressed(shared, "F1")
    assert shared.window.room == BENCH_ROOM
    assert shared.window.intake.make.hasFocus()
    for key, room, topic in (
        ("Ctrl+2", CURVES_ROOM, Topic.CURVES),
        ("Ctrl+3", HISTORY_ROOM, Topic.HISTORY),
        ("Ctrl+,", SETTINGS_ROOM, Topic.SETTINGS),
    ):
        pressed(shared, key)
        pressed(shared, "F1")
        assert shared.window.help.topic is topic
        pressed(shared, "Alt+Left")
        assert shared.window.room == room


def test_help_and_settings_never_lead_back_in_a_ring(shared: Desk) -> None:
    for key in ("Ctrl+3", "F1", "Ctrl+,", "F1"):
        pressed(shared, key)
    for _ in range(3):
        pressed(shared, "Alt+Left")
    assert shared.window.room == HISTORY_ROOM


def test_every_topic_has_a_title_and_a_text() -> None:
    assert {topic.value for topic in Topic} == set(texts.HELP_TITLES)
    assert all(len(markdown(topic)) > 200 for topic in Topic)
    assert "not an emergency stop" in help_texts.SAFETY
    assert "42.4 V" in help_texts.SAFETY


def test_a_search_of_the_help_finds_what_has_every_word(shared: Desk) -> None:
    hits = found("space shaft")
    assert Topic.FREE in {topic for topic, _ in hits}
    assert all("space" in text.casefold() for _, text in hits)
    shared.session.show_room(HELP_ROOM)
    shared.window.help.search.setText("no such words anywhere")
    assert shared.window.help.page.toPlainText() == texts.HELP_NOTHING


def test_a_setting_applies_at_once_is_kept_and_is_taken_back_by_one_press(shared: Desk) -> None:
    pressed(shared, "Ctrl+,")
    shared.click("settings_colours_light")
    shared.click("settings_colours_dark")
    assert (shared.session.preferring.now.colours, shared.window.tokens.name) == ("dark", "dark")
    shared.click("settings_undo")
    assert (shared.session.preferring.now.colours, shared.window.tokens.name) == ("light", "light")


def test_the_settings_say_that_size_waits_for_the_next_start(shared: Desk) -> None:
    pressed(shared, "Ctrl+,")
    assert shared.window.settings.look.size_note.isHidden()
    shared.click("settings_size_1.5")
    assert not shared.window.settings.look.size_note.isHidden()


def test_the_settings_show_the_ceilings_of_the_owner_and_no_field_to_change_them(shared: Desk) -> None:
    pressed(shared, "Ctrl+,")
    card = shared.window.settings.limits
    assert texts.LIMITS_NONE in card.words.text()
    assert card.findChildren(QLineEdit) == []


def test_a_support_bundle_is_made_beside_the_window(shared: Desk, tmp_path: Path) -> None:
    path = tmp_path / "for-a-friend.zip"
    shared.session.desktop.arranging.make_bundle(path)
    shared.session.desktop.arranging.settle()
    assert path.exists()
    assert str(path) in shared.window.settings.bundle.words.text()


def test_while_a_key_is_taught_it_is_said_for_what(shared: Desk) -> None:
    keys = shared.window.settings.keys
    pressed(shared, "Ctrl+,")
    said = {}
    for role in Role:
        keys.teaches[role].click()
        said[role] = keys.words.text()
        shared.session.teaching.end()
        assert keys.words.text() == ""
    assert all(words.lower().startswith(role_text(role).lower() + ": ") for role, words in said.items())


def test_while_a_run_is_on_no_folder_is_opened_no_key_taught_and_no_bundle_made(desk: Desk) -> None:
    desk.begin_probe()
    pressed(desk, "Ctrl+,")
    room = desk.window.settings
    assert not room.bundle.make.isEnabled()
    assert not any(one.isEnabled() for one in room.keys.teaches.values())
    assert not any(one.isEnabled() for one in room.places.findChildren(QAbstractButton) if "open" in one.objectName())


def test_an_open_job_is_gone_on_with_by_one_press(desk: Desk) -> None:
    recent = desk.session.desktop.recent
    assert recent.isHidden()
    desk.take_in()
    assert recent.isHidden()
    pressed(desk, "Ctrl+N")
    assert recent.isVisible()
    desk.click("recent_1")
    assert desk.session.bench.job is not None
    assert desk.session.bench.job.number == 1


@pytest.mark.parametrize("wide", [300, 520, 900, 1600])
def test_jobs_to_go_on_with_stand_in_one_line_with_as_many_as_it_has_room_for(desk: Desk, wide: int) -> None:
    for _ in range(5):
        desk.take_in()
        pressed(desk, "Ctrl+N")
    row = RecentRow()
    desk.bot.addWidget(row)
    row.resize(wide, 60)
    row.show()
    row.offer(open_jobs(desk.ledger))
    for width in (wide, 1600, wide):
        row.resize(width, 60)
        QApplication.processEvents()
    offered = row.findChildren(QAbstractButton)
    shown = [one for one in offered if one.isVisible()]
    assert len(offered) == 5
    assert shown == offered[: len(shown)]
    assert len({one.y() for one in shown}) == 1
    assert shown[-1].geometry().right() < wide
    for left_out in offered[len(shown) : len(shown) + 1]:
        assert shown[-1].geometry().right() + left_out.sizeHint().width() > wide


def test_what_is_dropped_or_pasted_is_kept_with_the_job_on_the_bench(desk: Desk, tmp_path: Path) -> None:
    photo = tmp_path / "note.txt"
    photo.write_text("seal, 12 mm")
    assert desk.session.desktop.dropping.take(_mime(photo))
    assert desk.window.notice.words.text() == texts.DROPPED_NO_JOB
    desk.take_in()
    desk.session.desktop.dropping.take(_mime(photo))
    words = texts.DROPPED_KEPT.format(name="note.txt", number=1)
    desk.bot.waitUntil(lambda: desk.window.notice.words.text() == words)


def test_a_dropped_ledger_or_table_is_told_where_it_belongs(desk: Desk, tmp_path: Path) -> None:
    desk.take_in()
    for name, words in (("other.db", texts.DROPPED_LEDGER), ("curve.CSV", texts.DROPPED_TABLE)):
        desk.session.desktop.dropping.take(_mime(tmp_path / name))
        assert desk.window.notice.words.text() == words


def test_the_sheet_is_looked_at_before_it_is_paper_and_back_leads_to_the_bench(desk: Desk) -> None:
    pressed(desk, "Ctrl+P")
    assert desk.window.notice.words.text() == texts.NO_JOB_FOR_PAPER
    desk.take_in()
    pressed(desk, "Ctrl+P")
    desk.session.desktop.previewing.settle()
    preview = desk.window.history.preview
    assert preview.isVisible()
    assert len(preview.sheets) == 1
    assert preview.sheets[0].pixmap().width() > 300
    assert preview.area.hasFocus()
    down = preview.area.verticalScrollBar()
    QTest.keyClick(preview.area, Qt.Key.Key_PageDown)
    assert down.value() > 0
    pressed(desk, "Alt+Left")
    assert desk.window.room == BENCH_ROOM


def test_the_paper_s_menu_leads_to_it_as_well(desk: Desk) -> None:
    desk.take_in()
    desk.session.show_room(HISTORY_ROOM)
    desk.session.browsing.settle()
    desk.window.history.table.selectRow(0)
    desk.session.browsing.settle()
    (look,) = [one for one in desk.window.findChildren(QAction) if one.objectName() == "history_paper_view"]
    look.trigger()
    desk.session.desktop.previewing.settle()
    assert desk.session.desktop.previewing.shown
    pressed(desk, "Alt+Left")
    assert desk.window.room == HISTORY_ROOM
    assert not desk.session.desktop.previewing.shown


def test_what_changes_is_said_aloud_once(desk: Desk) -> None:
    said: list[tuple[str, bool]] = []
    desk.session.desktop.announcing.said.connect(lambda words, urgent: said.append((words, urgent)))
    desk.begin_probe()
    desk.until_over()
    heard = [words for words, _ in said]
    assert texts.OFF_RUNNING in heard
    assert any(words.startswith("Off, confirmed") for words in heard)
    assert desk.window.probe.say_label.text() in heard
    assert all(first != second for first, second in pairwise(heard))


def _mime(path: Path) -> QMimeData:
    made = QMimeData()
    made.setUrls([QUrl.fromLocalFile(str(path))])
    return made


def _states(desk: Desk) -> Iterator[str]:
    """Every room and page, with nothing kept, with a job, in a run and after it."""
    rooms = (BENCH_ROOM, CURVES_ROOM, HISTORY_ROOM, SETTINGS_ROOM, HELP_ROOM)
    for room in rooms:
        desk.session.show_room(room)
        yield f"room {room}, empty"
    desk.session.show_room(BENCH_ROOM)
    desk.take_in()
    yield "make safe"
    desk.make_safe()
    yield "probe"
    desk.click("probe_start")
    for room in rooms:
        desk.session.show_room(room)
        yield f"room {room}, in a run"
    desk.session.show_room(BENCH_ROOM)
    desk.until_over()
    desk.session.recording.open()
    for tab in range(4):
        desk.window.record.pick(tab)
        yield f"record {tab}"


@pytest.fixture
def walked(desk: Desk) -> Iterator[tuple[str, QWidget]]:
    """Every widget that is seen, state by state."""

    def walk() -> Iterator[tuple[str, QWidget]]:
        for state in _states(desk):
            QApplication.processEvents()
            desk.session.browsing.settle()
            for widget in desk.window.findChildren(QWidget):
                if widget.isVisible():
                    yield state, widget

    return walk()


def test_what_is_greyed_out_says_why_and_what_can_be_used_has_a_name(walked: Iterator[tuple[str, QWidget]]) -> None:
    silent, nameless = set(), set()
    for state, widget in walked:
        if not isinstance(widget, QAbstractButton | QLineEdit | QComboBox) or _inside(widget):
            continue
        if not widget.isEnabled() and not _reason(widget):
            silent.add(f"{state}: {widget.objectName() or type(widget).__name__}")
        if not (widget.accessibleName() or (isinstance(widget, QAbstractButton) and widget.text())):
            nameless.add(f"{state}: {widget.objectName() or type(widget).__name__}")
    assert silent == set()
    assert nameless == set()


def _inside(widget: QWidget) -> bool:
    """A part of Qt's own, in a widget that has the name: the line of a combo box, the corner of a table."""
    parent = widget.parentWidget()
    return (
        isinstance(parent, QComboBox)
        or widget.objectName().startswith("qt_")
        or (parent is not None and type(parent).__name__ in ("QTableWidget", "QTableView") and not widget.objectName())
    )


def _reason(widget: QWidget) -> str:
    above: QWidget | None = widget
    while above is not None:
        if why_grey(above):
            return why_grey(above)
        above = above.parentWidget()
    return ""


def test_no_theme_is_put_on_while_a_run_is_on_and_the_sheet_of_before_does_not_cover_it(desk: Desk) -> None:
    desk.take_in()
    desk.make_safe()
    desk.session.desktop.previewing.show(desk.session.bench.job)
    desk.click("probe_start")
    desk.session.desktop.previewing.settle()
    assert desk.window.room == BENCH_ROOM
    arranging = desk.session.desktop.arranging
    arranging.wear(theme.DARK)
    arranging.change(contrast=True)
    desk.session.show_room(SETTINGS_ROOM)
    assert desk.window.tokens is theme.LIGHT
    assert why_grey(desk.window.settings.look.contrast) == texts.NOT_WHILE_ON
    assert desk.session.run.on
    desk.session.show_room(BENCH_ROOM)
    desk.until_over()
    desk.bot.waitUntil(lambda: desk.window.tokens is theme.CONTRAST_LIGHT)
    desk.session.desktop.arranging.change(contrast=False)


def test_a_key_is_taught_only_where_it_can_be_seen(shared: Desk) -> None:
    shared.session.show_room(SETTINGS_ROOM)
    assert shared.session.teaching.begin("start_key")
    shared.session.show_room(BENCH_ROOM)
    assert shared.session.teaching.role is None
