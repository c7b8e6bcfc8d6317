"""NOT CONFIRMED stays until a person says so, also across closing and starting the program again."""

import sqlite3
from contextlib import closing

import msgspec
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from benchlog.bench.frames import Request
from benchlog.ledger.filing import file_journal, journals_of
from benchlog.ledger.off_by_hand import acknowledge, not_confirmed
from benchlog.records import RunKind
from tests.ledger.benches import FREED, blocks, request, write_journal
from tests.ui.conftest import RESOURCE, Desk
from tests.ui.fake_link import FakeLink
from ui import texts, theme
from ui.main_window import MainWindow
from ui.off_state import OffState
from ui.off_watch import OVERDUE_MS
from ui.session import Session

NOT_OFF = msgspec.structs.replace(FREED, output_confirmed_off=False)


def off_state(session: Session) -> OffState:
    return session.off.state


def seen(session: Session) -> bool:
    return session.window.isVisible()


def started_again(desk: Desk) -> Session:
    """Another program on the same ledger."""

    def no_link(_: Request) -> FakeLink:
        raise AssertionError

    window = MainWindow(theme.LIGHT)
    desk.bot.addWidget(window, before_close_func=lambda closing: setattr(closing, "may_close", lambda: True))
    session = Session(window, desk.ledger, no_link)
    window.show()
    return session


def not_off_elsewhere(desk: Desk, resource: str) -> None:
    """A run of the terminal's on another supply."""
    asked = msgspec.structs.replace(request("elsewhere", job=1), resource=resource)
    file_journal(
        desk.ledger, write_journal(desk.ledger.path.parent / "elsewhere.journal", blocks(asked, result=NOT_OFF))
    )


def unconfirmed_run(desk: Desk) -> None:
    desk.confirms = False
    desk.begin_probe()
    desk.until_over()


def test_the_next_program_begins_with_it_and_says_which_run_until_a_person_says_so(desk: Desk) -> None:
    unconfirmed_run(desk)
    again = started_again(desk)
    assert off_state(again) is OffState.NOT_CONFIRMED
    assert again.window.panel.off.words.text() == texts.OFF_NOT_CONFIRMED
    assert again.window.panel.off.seen.isVisible()
    said = again.window.notice.words.text()
    assert "Run 1 of job 0001" in said
    assert RESOURCE in said
    again.window.notice.hide()
    assert again.window.panel.off.seen.isVisible()
    again.window.close()
    assert seen(again)

    QTest.mouseClick(again.window.panel.off.seen, Qt.MouseButton.LeftButton)
    assert off_state(again) is OffState.IDLE
    assert not seen(again)
    assert not_confirmed(desk.ledger) == []
    entry = desk.ledger.entries(1)[-1]
    assert "run 1" in entry.text
    assert "switched off by hand" in entry.text
    assert entry.who
    assert off_state(started_again(desk)) is OffState.IDLE


def test_what_is_acknowledged_here_is_kept_with_the_job(desk: Desk) -> None:
    unconfirmed_run(desk)
    assert len(not_confirmed(desk.ledger)) == 1
    desk.click("off_acknowledge")
    assert not_confirmed(desk.ledger) == []
    assert off_state(started_again(desk)) is OffState.IDLE


def test_one_supply_at_a_time(desk: Desk) -> None:
    unconfirmed_run(desk)
    not_off_elsewhere(desk, "TCPIP::192.0.2.8::5025::SOCKET")
    again = started_again(desk)
    first = again.window.notice.words.text()
    QTest.mouseClick(again.window.panel.off.seen, Qt.MouseButton.LeftButton)
    assert off_state(again) is OffState.NOT_CONFIRMED
    second = again.window.notice.words.text()
    assert {"192.0.2.7" in first, "192.0.2.7" in second} == {True, False}
    assert len(not_confirmed(desk.ledger)) == 1
    QTest.mouseClick(again.window.panel.off.seen, Qt.MouseButton.LeftButton)
    assert off_state(again) is OffState.IDLE
    assert not_confirmed(desk.ledger) == []


def test_what_another_program_filed_meanwhile_is_found_when_a_run_ends(desk: Desk) -> None:
    desk.begin_probe()
    not_off_elsewhere(desk, "TCPIP::192.0.2.8::5025::SOCKET")
    desk.until_over()
    assert off_state(desk.session) is OffState.NOT_CONFIRMED
    assert "192.0.2.8" in desk.window.notice.words.text()
    desk.session.running.begin(RunKind.PROBE)
    assert len(desk.links) == 1


def test_what_was_acknowledged_before_the_run_ended_is_asked_again_where_its_end_confirms_nothing(desk: Desk) -> None:
    desk.confirms = False
    link = desk.begin_probe()
    link.hold_back_end = True
    desk.session.running.output_off()
    desk.bot.waitUntil(lambda: desk.session.off.state is OffState.NOT_CONFIRMED, timeout=OVERDUE_MS + 2000)
    desk.click("off_acknowledge")
    assert desk.ledger.entries(1)[-1].text.endswith("done")
    link.hold_back_end = False
    desk.until_over()
    assert off_state(desk.session) is OffState.NOT_CONFIRMED


def test_a_ledger_that_can_not_keep_it_says_so_and_does_not_hold_the_window_open(desk: Desk) -> None:
    unconfirmed_run(desk)
    desk.window.close()
    assert seen(desk.session)
    with closing(sqlite3.connect(desk.ledger.path, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        desk.click("off_acknowledge")
    assert "could not be used" in desk.window.notice.words.text()
    assert not seen(desk.session)
    (run,) = not_confirmed(desk.ledger)
    assert off_state(started_again(desk)) is OffState.NOT_CONFIRMED
    acknowledge(desk.ledger, [run])


def test_it_is_shown_also_where_what_a_crash_left_behind_can_not_be_filed(desk: Desk) -> None:
    unconfirmed_run(desk)
    left = journals_of(desk.ledger.path) / "left.journal"
    write_journal(left, blocks(request("left", job=1), result=None))
    with closing(sqlite3.connect(desk.ledger.path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        again = started_again(desk)
    assert left.exists()
    assert off_state(again) is OffState.NOT_CONFIRMED
