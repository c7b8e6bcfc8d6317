"""Supplies at the intake: looked for and asked on a press only, never beside a run, and one of several outputs."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchlog.cli.supply_words import ABOUT_GAPS
from benchlog.ledger.store import Ledger
from benchlog.ledger.supplies import CHECKED, keep_supply, kept_supply
from benchlog.records import Stage
from tests.ui.conftest import RESOURCE, Desk, gone
from tests.ui.fake_supplies import NETWORK, REPORT, SERIAL, FakeSupplies
from tests.ui.lot_desk import LotDesk
from ui import texts, theme
from ui.asking_supplies import ASK_S, Question, SuppliesAsked, Told, report_of
from ui.main_window import MainWindow
from ui.session import Session
from ui.stages.supply_report import lines_of

QUESTION = Question(resource=RESOURCE)
METER = {"usable": False, "identity": "HARBOUR,BENCH METER,0007,1.0", "why": "it is no supply"}


class SupplyDesk(Desk):
    supplies: FakeSupplies

    @property
    def said(self) -> str:
        return self.window.intake.supply_row.said.text()

    def settle(self) -> None:
        self.session.supplying.settle()

    def ask(self) -> None:
        self.click("supply_ask")
        self.settle()


@pytest.fixture
def desk(qtbot: QtBot, ledger: Ledger) -> Iterator[SupplyDesk]:
    supplies = FakeSupplies(ledger)
    window = MainWindow(theme.LIGHT, resource=RESOURCE)
    session = Session(window, ledger, lambda request: made.make_link(request), resource=RESOURCE, supplies=supplies)
    made = SupplyDesk(window, session, ledger, qtbot)
    made.supplies = supplies
    window.show()
    yield made
    supplies.answer.set()
    made.settle()
    gone(window)


# looking


def test_it_is_looked_on_a_press_only_and_what_was_found_is_listed_with_what_was_not_looked_at(
    desk: SupplyDesk,
) -> None:
    assert desk.supplies.looks == 0
    desk.click("supply_look")
    desk.settle()
    row = desk.window.intake.supply_row
    assert desk.supplies.looks == 1
    assert [row.places.item(n).text().split()[0] for n in range(row.places.count())][::2] == [SERIAL, NETWORK]
    assert "serial port, USB serial adapter" in row.places.item(0).text()
    assert texts.LOOK_MISSED.format(part="VISA", why="not finished in time") in row.looked.text()


def test_a_serial_port_that_is_picked_by_keyboard_is_the_address_and_is_not_spoken_to_yet(desk: SupplyDesk) -> None:
    desk.window.activateWindow()
    desk.click("supply_look")
    desk.settle()
    places = desk.window.intake.supply_row.places
    places.setCurrentRow(0)
    QTest.keyClick(places, Qt.Key.Key_Return)
    assert desk.window.intake.setting().resource == SERIAL
    assert desk.supplies.asked == []
    assert places.isHidden()
    desk.ask()
    assert [question.resource for question in desk.supplies.asked] == [SERIAL]


def test_what_was_found_before_can_be_picked_while_it_is_looked_again(desk: SupplyDesk) -> None:
    desk.supplies.before = desk.supplies.found
    desk.supplies.answer.clear()
    desk.click("supply_look")
    desk.bot.waitUntil(lambda: desk.window.intake.supply_row.places.count() == 3, timeout=5_000)
    assert desk.window.intake.supply_row.looked.text() == texts.LOOKING
    assert not desk.window.intake.look_button.isEnabled()


def test_where_no_process_can_be_started_that_is_said_and_an_address_can_still_be_typed(desk: SupplyDesk) -> None:
    desk.supplies.found = None
    desk.click("supply_look")
    desk.settle()
    assert "no process can be started" in desk.window.intake.supply_row.looked.text()
    assert desk.window.intake.supply.isEnabled()
    assert desk.window.intake.look_button.isEnabled()


# asking


def test_what_a_supply_told_is_shown_kept_and_known_the_next_time(desk: SupplyDesk) -> None:
    desk.ask()
    kept = kept_supply(desk.ledger, RESOURCE)
    assert kept is not None
    assert desk.said.startswith(texts.SUPPLY_USABLE)
    assert texts.SUPPLY_NOT_CHECKED in desk.said
    report = desk.window.intake.supply_row.report
    assert report.isVisible()
    for part in (REPORT["identity"], REPORT["speaks"], "2.10 ms a question", "60 readings a second", "No mode"):
        assert part in report.text()
    keep_supply(
        desk.ledger,
        resource=RESOURCE,
        identity=REPORT["identity"],
        output=1,
        kind=CHECKED,
        dialect="",
        content={"passed": True},
    )
    desk.session.refresh()
    assert "; checked on " in desk.said


def test_one_that_is_not_usable_is_not_gone_on_with_and_another_address_may_be_given(desk: SupplyDesk) -> None:
    desk.supplies.report = METER
    desk.ask()
    desk.take_in()
    assert "not usable (it is no supply)" in desk.window.intake.problem.text()
    assert desk.ledger.jobs() == []
    desk.window.intake.supply.selectAll()
    QTest.keyClicks(desk.window.intake.supply, NETWORK)
    assert desk.window.intake.problem.text() == ""
    desk.click("intake_open")
    assert len(desk.ledger.jobs()) == 1
    assert desk.window.intake.setting().resource == NETWORK


def test_no_room_begins_a_run_on_one_that_is_not_usable(desk: SupplyDesk) -> None:
    desk.supplies.report = METER
    desk.take_in()
    desk.make_safe()
    desk.session.go_to(Stage.INTAKE)
    desk.ask()
    desk.session.go_to(Stage.PROBE)
    desk.click("probe_start")
    assert desk.links == []
    assert "not usable (it is no supply)" in desk.window.notice.words.text()


def test_asked_again_and_usable_it_is_gone_on_with(desk: SupplyDesk) -> None:
    desk.supplies.report = METER
    desk.ask()
    assert desk.window.intake.address_problem()
    desk.supplies.report = REPORT
    desk.ask()
    assert desk.window.intake.address_problem() == ""


def test_what_did_not_answer_may_be_tried_all_the_same(desk: SupplyDesk) -> None:
    """It may be switched on by then; and that the asking went wrong says nothing of the supply."""
    desk.supplies.report = {"usable": False, "why": "nobody answers"}
    desk.ask()
    assert desk.said == "Not usable: nobody answers."
    assert desk.window.intake.address_problem() == ""


def test_one_output_that_can_not_be_used_bars_no_other(desk: SupplyDesk) -> None:
    desk.supplies.report = METER
    desk.ask()
    intake = desk.window.intake
    resource = intake.setting().resource
    assert intake.address_problem(resource, 1)
    assert intake.address_problem(resource, 2) == ""


def test_one_that_can_not_be_used_says_why_and_nothing_is_kept(desk: SupplyDesk) -> None:
    desk.supplies.report = {"usable": False, "why": "nobody answers"}
    desk.ask()
    assert desk.said == "Not usable: nobody answers."
    assert kept_supply(desk.ledger, RESOURCE) is None
    intake = desk.window.intake
    intake.supply.setText(NETWORK)
    desk.session.refresh()
    assert desk.said == ""


def test_the_most_volts_and_amps_that_a_person_gives_are_asked_with(desk: SupplyDesk) -> None:
    desk.ask()
    report = desk.window.intake.supply_row.report
    desk.click("supply_ask_again")
    assert report.problem.text() == texts.NEEDS_RANGE
    assert len(desk.supplies.asked) == 1
    QTest.keyClicks(report.volts, "30")
    QTest.keyClicks(report.amps, "3,5")
    desk.click("supply_ask_again")
    desk.settle()
    assert desk.supplies.asked[-1].most == (30.0, 3.5)
    assert "30" in report.text()
    assert report.fields.isHidden()


def test_no_run_begins_while_a_supply_is_asked(desk: SupplyDesk) -> None:
    desk.take_in()
    desk.make_safe()
    desk.session.go_to(Stage.INTAKE)
    desk.supplies.answer.clear()
    desk.click("supply_ask")
    desk.session.go_to(Stage.PROBE)
    desk.click("probe_start")
    assert desk.links == []
    assert texts.NOT_WHILE_ASKING in desk.window.notice.words.text()
    desk.supplies.answer.set()
    desk.settle()
    desk.click("probe_start")
    assert len(desk.links) == 1


def test_nothing_is_looked_for_or_asked_while_a_run_is_on(desk: SupplyDesk) -> None:
    desk.begin_probe()
    assert not desk.window.intake.ask_button.isEnabled()
    assert not desk.window.intake.look_button.isEnabled()
    desk.session.supplying.ask()
    desk.session.supplying.look()
    assert (desk.supplies.asked, desk.supplies.looks) == ([], 0)
    assert texts.NOT_WHILE_ON in desk.window.notice.words.text()
    desk.until_over()
    assert desk.window.intake.ask_button.isEnabled()


def test_nothing_is_asked_before_an_output_that_is_not_confirmed_off_was_switched_off_by_hand(desk: SupplyDesk) -> None:
    desk.confirms = False
    desk.begin_probe()
    desk.until_over()
    desk.session.supplying.ask()
    desk.session.supplying.look()
    assert (desk.supplies.asked, desk.supplies.looks) == ([], 0)
    newest = desk.window.notice.alarms.newest
    assert newest is not None
    assert newest.words == texts.ACKNOWLEDGE_FIRST
    assert desk.window.notice.below.isVisible()  # what is urgent stays first


def test_a_window_that_is_closed_ends_what_is_asking(desk: SupplyDesk) -> None:
    desk.supplies.answer.clear()
    desk.click("supply_ask")
    desk.window.close()
    assert desk.supplies.stops == 1


# which output


def test_the_output_that_is_chosen_goes_into_the_run_and_is_there_again_with_the_job(desk: SupplyDesk) -> None:
    desk.ask()
    chooser = desk.window.intake.supply_row.output
    assert chooser.count() == 2
    chooser.setFocus()
    QTest.keyClick(chooser, Qt.Key.Key_Down)
    assert desk.window.intake.setting().output == 2
    link = desk.begin_probe()
    assert link.request.output == 2
    assert not chooser.isEnabled()
    desk.until_over()
    desk.session.new_job()
    desk.window.intake.supply_row.put_output(RESOURCE, 1)
    desk.session.open_job(desk.ledger.job_by_number(1).id)
    assert desk.window.intake.setting().output == 2


def test_a_supply_with_one_output_offers_no_choice(desk: SupplyDesk) -> None:
    desk.supplies.report = REPORT | {"dialect": {"name": "scpi-1999", "outputs": {"count": 1}}}
    desk.ask()
    assert desk.window.intake.supply_row.output.isHidden()
    assert desk.window.intake.setting().output == 1


def test_another_address_does_not_inherit_the_output(desk: SupplyDesk) -> None:
    desk.window.intake.supply_row.put_output(RESOURCE, 2)
    desk.window.intake.supply.setText(NETWORK)
    assert desk.window.intake.setting().output == 1
    desk.session.refresh()
    assert desk.window.intake.setting().output == 1


# the words, and the process that asks


def test_no_gap_sends_a_person_from_the_window_to_an_option_of_the_terminal() -> None:
    assert set(texts.REPORT_GAPS) <= set(ABOUT_GAPS)
    told = Told(usable=True, missing=ABOUT_GAPS)
    assert [text for _, text in lines_of(told) if "--" in text] == []


@pytest.mark.parametrize(
    ("out", "err", "why"),
    [
        ("", "benchlog: the ledger is full\n", "the ledger is full"),
        ("", "", texts.ASK_NOTHING),
        ("no JSON\n[1]\n", "Traceback\nKilled\n", "Killed"),
    ],
)
def test_a_process_that_ends_without_a_report_is_no_usable_supply(out: str, err: str, why: str) -> None:
    told = report_of(out, err, QUESTION)
    assert (told.usable, told.why, told.resource) == (False, why, RESOURCE)


def test_asking_is_what_the_command_does(tmp_path: Path) -> None:
    path = tmp_path / "harbour.db"
    with Ledger.open(path, sole_writer=True):
        told = SuppliesAsked(path).ask(Question(resource="--not an address"))
    assert not told.usable
    assert "no VISA address" in told.why
    with closing(sqlite3.connect(path)) as book:
        assert book.execute("select count(*) from supply").fetchone() == (0,)


def test_after_the_end_of_the_window_nothing_is_asked() -> None:
    supplies = SuppliesAsked(Path("nowhere.db"))
    supplies.stop()
    assert supplies.ask(QUESTION).why == texts.ASK_STOPPED
    assert ASK_S < 60.0


def test_a_unit_of_a_lot_starts_on_the_output_that_was_chosen_for_its_supply(lot_desk: LotDesk) -> None:
    lot_desk.window.intake.supply_row.put_output(RESOURCE, 2)
    lot_desk.ready()
    lot_desk.measure("0001", "free")
    assert (lot_desk.links[-1].request.resource, lot_desk.links[-1].request.output) == (RESOURCE, 2)
