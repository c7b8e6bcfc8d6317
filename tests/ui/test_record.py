"""The page "Record and costs": from the rail and back, hand steps, findings, charges against the limit, waiting."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QWidget
from pytestqt.qtbot import QtBot

from benchlog.ledger.costs import charges_of, keep_part, parts, standing
from benchlog.ledger.drafts import draft
from benchlog.ledger.files import files_of
from benchlog.ledger.findings import findings_of
from benchlog.records import ChargeKind, Closing, EntryKind, EventKind, JobState, Stage
from benchlog.settings import Settings, Shop
from tests.pictures import making
from tests.ui.conftest import RESOURCE, Desk, gone
from ui import texts, theme
from ui.main_window import MainWindow
from ui.record.page import COSTS, FINDINGS, WAITING
from ui.session import Session


def type_into(field: QWidget, text: str) -> None:
    QTest.keyClicks(field, text)


@pytest.fixture
def opened(desk: Desk) -> Desk:
    """A job that may cost 60, its record open."""
    desk.owner = Settings(shop=Shop(currency="EUR", hour=60.0))
    type_into(desk.window.intake.owner.limit, "60")
    desk.take_in()
    desk.click("rail_record")
    type_into(desk.window.record.who, "Mira")
    desk.bot.waitUntil(lambda: desk.window.record.say_label.text() != "", timeout=5_000)
    return desk


def charge_other(desk: Desk, what: str, price: str) -> None:
    costs = desk.window.record.costs
    costs.other.setText(what)
    costs.price.setText(price)
    desk.click("charge_other")


def until_charged(desk: Desk, count: int) -> None:
    """As many lines are on the page."""
    costs = desk.window.record.costs
    desk.bot.waitUntil(lambda: costs.rows.count() == count, timeout=5_000)


def shown(desk: Desk, name: str) -> bool:
    """What was just made is shown when the layout has come to it."""
    found = desk.window.findChild(QAbstractButton, name)
    return isinstance(found, QAbstractButton) and found.isVisible()


# the page itself


def test_without_a_job_there_is_no_record_to_open(desk: Desk) -> None:
    assert not desk.window.rail.record.isEnabled()


def test_it_opens_from_the_rail_and_leads_back_to_the_stage(opened: Desk) -> None:
    window = opened.window
    assert window.stages.currentWidget() is window.record
    assert window.record.back_button.text() == texts.RECORD_BACK.format(stage="Make safe")
    assert texts.STANDING_HERE in window.rail.record.accessibleName()
    opened.click("record_back")
    assert window.stages.currentWidget() is window.safe
    assert texts.STANDING_HERE not in window.rail.record.accessibleName()
    opened.click("rail_record")
    opened.session.go_to(Stage.INTAKE)
    assert window.stages.currentWidget() is window.intake


def test_a_new_job_and_one_taken_up_begin_at_a_stage(opened: Desk) -> None:
    opened.session.open_job(1)
    assert opened.window.stages.currentWidget() is opened.window.safe
    opened.click("rail_record")
    opened.session.new_job()
    assert opened.window.stages.currentWidget() is opened.window.intake
    assert opened.window.record.timeline.lines == []


def test_a_run_that_ends_leaves_the_page_and_shows_the_run(desk: Desk) -> None:
    desk.begin_probe()
    desk.click("rail_record")
    desk.until_over()
    window = desk.window
    assert window.stages.currentWidget() is window.record
    desk.bot.waitUntil(lambda: any(line.kind == texts.LINE_RUN for line in window.record.timeline.lines), timeout=5_000)
    assert next(line for line in window.record.timeline.lines if line.kind == texts.LINE_RUN).text.startswith("probe: ")


def test_a_question_of_a_run_is_told_on_the_page_and_a_press_leads_to_it(desk: Desk) -> None:
    desk.begin_probe()
    desk.until_over()
    desk.session.go_to(Stage.FREE)
    desk.click("recovery_start")
    desk.click("rail_record")
    back = desk.window.record.back_button
    turn = texts.RECORD_YOUR_TURN.format(stage="Free")
    desk.bot.waitUntil(lambda: back.text() == turn, timeout=20_000)
    desk.click("record_back")
    assert desk.window.free.question.isVisible()
    desk.until_over()
    assert back.text() == texts.RECORD_BACK.format(stage="Free")


# by hand


@pytest.mark.parametrize("kind", ["turned", "tapped", "soaked", "warmed", "oiled"])
def test_a_hand_step_is_one_press_and_an_entry_of_its_kind(opened: Desk, kind: str) -> None:
    type_into(opened.window.record.words, "ten minutes")
    opened.click(f"record_{kind}")

    def kept() -> bool:
        return opened.ledger.entries(1)[-1].kind == EntryKind(kind)

    opened.bot.waitUntil(kept, timeout=5_000)
    entry = opened.ledger.entries(1)[-1]
    assert (entry.stage, entry.who, entry.text) == (Stage.FREE, "Mira", f"by hand: {kind}; ten minutes")
    opened.bot.waitUntil(lambda: opened.window.record.words.text() == "", timeout=5_000)
    assert opened.window.record.timeline.lines[0].text == f"{kind}; ten minutes"


def test_presses_in_a_row_are_all_kept(opened: Desk) -> None:
    before = len(opened.ledger.entries(1))
    for _ in range(5):
        opened.click("record_tapped")
    opened.bot.waitUntil(lambda: len(opened.ledger.entries(1)) == before + 5, timeout=5_000)


def test_while_a_run_is_on_a_hand_step_and_a_note_go_into_its_record(desk: Desk) -> None:
    link = desk.begin_probe()
    desk.click("rail_record")
    before = len(desk.ledger.entries(1))
    desk.click("record_turned")
    type_into(desk.window.record.words, "a click once a turn")
    desk.click("record_note")
    assert desk.window.record.why.text() == texts.RECORD_IN_RUN.format(text="a click once a turn")
    desk.until_over()
    events = [event.text for run in desk.ledger.runs(1) for event in desk.ledger.events(run.id)]
    assert link.request.job == 1
    assert any("turned" in text for text in events)
    assert any("a click once a turn" in text for text in events)
    assert [event.kind for run in desk.ledger.runs(1) for event in desk.ledger.events(run.id)].count(
        EventKind.HAND
    ) >= 1
    assert len(desk.ledger.entries(1)) == before


def test_of_a_closed_job_only_a_correction_is_kept_and_it_needs_who(opened: Desk) -> None:
    page = opened.window.record
    opened.ledger.close_job(1, Closing(cause="seal"))
    opened.session.open_job(1)
    opened.click("rail_record")
    opened.bot.waitUntil(lambda: page.note.text() == texts.RECORD_CORRECTION, timeout=5_000)
    assert not any(pill.isEnabled() for pill in page.pills)
    assert not page.findings.isEnabled()
    page.who.clear()
    type_into(page.words, "it was the bearing")
    opened.click("record_note")
    assert opened.window.notice.words.text() == texts.NEEDS_WHO
    assert page.words.text() == "it was the bearing"
    type_into(page.who, "Mira")
    opened.click("record_note")
    opened.bot.waitUntil(lambda: opened.ledger.entries(1)[-1].kind == EntryKind.CORRECTION, timeout=5_000)
    assert opened.ledger.entries(1)[-1].who == "Mira"


# findings


def test_a_marking_is_read_as_it_is_typed_and_a_press_fills_the_value(opened: Desk) -> None:
    card = opened.window.record.findings
    type_into(card.part, "R7")
    type_into(card.marking, "4K7")
    opened.click("reading_0")
    assert card.value.text() == "4.7 kΩ"  # IEC 60062: the letter in place of the point
    opened.click("finding_keep")
    opened.bot.waitUntil(lambda: card.part.text() == "", timeout=5_000)
    finding = findings_of(opened.ledger, 1)[0]
    assert (finding.part, finding.marking, finding.value, finding.who) == ("R7", "4K7", "4.7 kΩ", "Mira")


def test_a_marking_in_no_code_says_so_and_offers_nothing(opened: Desk) -> None:
    card = opened.window.record.findings
    type_into(card.marking, "?!")
    assert card.unread.isVisible()
    assert not any(made.isVisible() for made in card.readings)


def test_a_capacitor_is_read_as_one(opened: Desk) -> None:
    card = opened.window.record.findings
    type_into(card.marking, "104")
    card.capacitor.click()
    opened.click("reading_0")
    assert card.value.text() == "100 nF"  # IEC 60062 from memory: 10 and four zeros, in pF


def test_a_finding_without_its_part_is_not_kept(opened: Desk) -> None:
    type_into(opened.window.record.findings.value, "cracked")
    opened.click("finding_keep")
    assert opened.window.record.findings.problem.text() == texts.NEEDS_PART
    assert findings_of(opened.ledger, 1) == []


def test_a_finding_is_replaced_by_a_corrected_one(opened: Desk) -> None:
    card = opened.window.record.findings
    type_into(card.part, "R7")
    opened.click("finding_keep")
    opened.bot.waitUntil(lambda: card.rows.count() == 1, timeout=5_000)
    opened.bot.waitUntil(lambda: shown(opened, "finding_correct_1"), timeout=5_000)
    opened.click("finding_correct_1")
    assert card.part.text() == "R7"
    type_into(card.value, "open")
    opened.click("finding_keep")
    opened.bot.waitUntil(lambda: [one.value for one in findings_of(opened.ledger, 1)] == ["open"], timeout=5_000)
    assert findings_of(opened.ledger, 1)[0].corrects == 1
    opened.bot.waitUntil(lambda: card.title.text() == texts.FINDING_NEW, timeout=5_000)


def test_a_small_calculation_goes_into_the_value(opened: Desk) -> None:
    card = opened.window.record.findings
    opened.click("finding_calculate")
    box = card.calculator
    type_into(box.inputs["supply"], "12")
    assert "upper is missing" in box.words.text()
    assert not box.take.isEnabled()
    type_into(box.inputs["upper"], "10k")
    type_into(box.inputs["lower"], "10k")
    assert box.words.text().startswith("output 6 V")  # equal resistors halve it: Ohm's law
    opened.click("calculator_take")
    assert card.value.text().startswith("Divider: output 6 V")


def test_a_calculation_about_a_cell_shows_its_cautions(opened: Desk) -> None:
    box = opened.window.record.findings.calculator
    opened.click("finding_calculate")
    box.which.setCurrentIndex(box.which.findData("charge-current"))
    assert box.cautions.isVisible()
    assert "swollen" in box.cautions.text()


# costs


def test_minutes_cost_what_the_shop_says_and_stand_against_the_limit(opened: Desk) -> None:
    page = opened.window.record
    page.pick(COSTS)
    type_into(page.costs.minutes, "25")
    type_into(page.costs.done, "cleaned")
    opened.click("charge_minutes")
    until_charged(opened, 1)
    charge = charges_of(opened.ledger, 1)[0]
    assert (charge.kind, charge.count, charge.cents, charge.who) == (ChargeKind.MINUTES, 25, 2500, "Mira")
    assert page.costs.bar.words.text() == "25.00 EUR of at most 60.00 EUR; 35.00 EUR left"
    assert page.costs.minutes.text() == ""


def test_the_clock_of_the_bench_is_only_a_proposal(opened: Desk) -> None:
    page, clock = opened.window.record, opened.session.recording.clock
    page.pick(COSTS)
    clock._since_s -= 23 * 60 + 5
    opened.session.recording._show_minutes()
    assert page.costs.proposal.text() == texts.MINUTES_PROPOSED.format(count=23)
    assert charges_of(opened.ledger, 1) == []
    opened.click("cost_proposal")
    assert page.costs.minutes.text() == "23"
    opened.click("charge_minutes")
    until_charged(opened, 1)
    assert clock.minutes() == 0


def test_a_part_is_taken_from_the_stock(opened: Desk) -> None:
    seal = keep_part(opened.ledger, "shaft seal", "8 mm", each_cents=450, stock=3)
    page = opened.window.record
    opened.session.refresh()
    page.pick(COSTS)
    opened.bot.waitUntil(lambda: page.costs.part.count() == 1, timeout=5_000)
    assert page.costs.part.itemText(0) == "shaft seal 8 mm · 4.50 EUR · 3 there"
    page.costs.part.setCurrentIndex(0)
    type_into(page.costs.count, "2")
    opened.click("charge_part")
    until_charged(opened, 1)
    assert standing(opened.ledger, 1).cents == 900
    assert [(part.id, part.stock) for part in parts(opened.ledger)] == [(seal.id, 1)]


def test_a_part_is_put_into_the_stock(opened: Desk) -> None:
    page = opened.window.record
    page.pick(COSTS)
    opened.click("stock_open")
    for field, text in (
        (page.costs.stock.name, "carbon brush"),
        (page.costs.stock.price, "3,20"),
        (page.costs.stock.there, "4"),
    ):
        type_into(field, text)
    opened.click("stock_keep")
    opened.bot.waitUntil(lambda: page.costs.part.count() == 1, timeout=5_000)
    assert [(part.name, part.each_cents, part.stock) for part in parts(opened.ledger)] == [("carbon brush", 320, 4)]


def test_a_line_that_would_pass_the_limit_stops_or_asks(opened: Desk) -> None:
    costs = opened.window.record.costs
    opened.window.record.pick(COSTS)
    charge_other(opened, "new impeller", "72")
    opened.bot.waitUntil(costs.over.isVisible, timeout=5_000)
    assert "72.00 EUR" in costs.over.words.text()
    assert charges_of(opened.ledger, 1) == []
    opened.click("over_limit_yes")  # nobody said who agreed
    assert costs.over.isVisible()
    opened.click("over_limit_no")
    assert (costs.over.isVisible(), costs.other.text()) == (False, "new impeller")
    opened.click("charge_other")
    opened.bot.waitUntil(costs.over.isVisible, timeout=5_000)
    type_into(costs.over.field, "owner, by telephone")
    opened.click("over_limit_yes")
    until_charged(opened, 1)
    assert charges_of(opened.ledger, 1)[0].text == "new impeller (above the limit, agreed by owner, by telephone)"
    assert "12.00 EUR above" in costs.bar.words.text()


def test_what_was_asked_is_not_agreed_to_once_it_is_changed(opened: Desk) -> None:
    costs = opened.window.record.costs
    opened.window.record.pick(COSTS)
    charge_other(opened, "new impeller", "72")
    opened.bot.waitUntil(costs.over.isVisible, timeout=5_000)
    type_into(costs.price, "0")
    assert not costs.over.isVisible()


def test_a_price_that_is_none_is_said_and_nothing_is_charged(opened: Desk) -> None:
    opened.window.record.pick(COSTS)
    charge_other(opened, "post", "4.505")
    assert "two decimals" in opened.window.record.costs.problem.text()
    assert charges_of(opened.ledger, 1) == []


def test_a_line_is_taken_back_by_somebody_for_a_reason(opened: Desk) -> None:
    costs = opened.window.record.costs
    opened.window.record.pick(COSTS)
    charge_other(opened, "post", "4.50")
    until_charged(opened, 1)
    opened.bot.waitUntil(lambda: shown(opened, "take_back_1"), timeout=5_000)
    opened.click("take_back_1")
    opened.click("take_back_yes")
    assert len(charges_of(opened.ledger, 1)) == 1
    type_into(costs.back.field, "sent with another")
    opened.click("take_back_yes")
    until_charged(opened, 2)
    assert standing(opened.ledger, 1).cents == 0
    assert not costs.back.isVisible()
    assert not shown(opened, "take_back_1")


# waiting, files


def test_waiting_is_kept_shown_in_the_header_and_ends(opened: Desk) -> None:
    page = opened.window.record
    page.pick(WAITING)
    type_into(page.waiting.what, "shaft seal")
    opened.click("waiting_part")
    opened.bot.waitUntil(lambda: "waits for a part: shaft seal" in opened.window.header.about.text(), timeout=5_000)
    assert opened.ledger.job(1).state is JobState.FOR_PART
    assert "shaft seal" in opened.window.rail.record.accessibleName()
    opened.click("waiting_open")
    opened.bot.waitUntil(lambda: "waits" not in opened.window.header.about.text(), timeout=5_000)
    assert opened.ledger.job(1).state is JobState.OPEN


def test_a_photo_is_kept_with_the_job_and_who(opened: Desk, tmp_path: Path) -> None:
    page = opened.window.record
    (tmp_path / "hub.png").write_bytes(making.png())
    page.pictures.caption.setText("rust on the hub")
    page.pictures.add_files([tmp_path / "hub.png"])
    opened.bot.waitUntil(lambda: any(one.kind == texts.LINE_FILE for one in page.timeline.lines), timeout=10_000)
    assert [(one.name, one.caption, one.who) for one in files_of(opened.ledger, 1)] == [
        ("hub.png", "rust on the hub", "Mira")
    ]


def test_no_file_is_chosen_while_the_output_may_be_on(desk: Desk) -> None:
    desk.begin_probe()
    assert not desk.window.record.pictures.add_button.isEnabled()
    desk.until_over()
    assert desk.window.record.pictures.add_button.isEnabled()


# drafts


def test_half_typed_forms_come_back_after_the_program_was_killed(opened: Desk, qtbot: QtBot) -> None:
    page = opened.window.record
    type_into(page.findings.part, "R7")
    page.findings.calculate.click()
    page.findings.calculator.which.setCurrentIndex(1)
    type_into(page.findings.calculator.inputs["supply"], "12")
    type_into(page.costs.other, "post")
    type_into(page.words, "half a")
    qtbot.waitUntil(lambda: (draft(opened.ledger, "record 1") or {}).get("record_words") == "half a", timeout=5_000)

    window = MainWindow(theme.LIGHT, resource=RESOURCE)
    again = Session(window, opened.ledger, opened.make_link, resource=RESOURCE, settings=lambda: opened.owner)
    again.open_job(1)
    fields = window.record
    assert (fields.findings.part.text(), fields.costs.other.text(), fields.words.text()) == ("R7", "post", "half a")
    assert fields.findings.calculator.which.currentData() == "led"
    assert fields.findings.calculator.inputs["supply"].text() == "12"
    assert window.notice.words.text() == texts.RECORD_DRAFT_FOUND
    gone(window)


def test_what_was_kept_leaves_no_draft_and_what_was_not_does(opened: Desk, qtbot: QtBot) -> None:
    page = opened.window.record
    type_into(page.findings.part, "R7")
    type_into(page.words, "half a")
    qtbot.waitUntil(lambda: "finding_part" in (draft(opened.ledger, "record 1") or {}), timeout=5_000)
    opened.click("finding_keep")
    qtbot.waitUntil(lambda: draft(opened.ledger, "record 1") == {"record_words": "half a"}, timeout=5_000)
    page.words.setFocus()
    for _ in range(6):
        QTest.keyClick(page.words, Qt.Key.Key_Backspace)
    qtbot.waitUntil(lambda: draft(opened.ledger, "record 1") is None, timeout=5_000)


def test_what_is_typed_stays_with_its_own_job(opened: Desk) -> None:
    page = opened.window.record
    page.pick(FINDINGS)
    type_into(page.findings.part, "R7")
    opened.session.new_job()
    opened.take_in()
    assert page.findings.part.text() == ""
    opened.session.open_job(1)
    assert page.findings.part.text() == "R7"


# trouble


def test_what_the_ledger_refuses_is_said_and_stays_typed(opened: Desk) -> None:
    page = opened.window.record
    opened.ledger.close_job(1, Closing(cause="seal"))  # elsewhere, while the page still shows it open
    page.pick(COSTS)
    charge_other(opened, "post", "4.50")
    opened.bot.waitUntil(lambda: "closed" in opened.window.notice.words.text(), timeout=5_000)
    assert page.costs.other.text() == "post"
    assert charges_of(opened.ledger, 1) == []


def test_everything_on_it_has_a_name_and_is_high_enough(opened: Desk) -> None:
    page = opened.window.record
    for made in page.findChildren(QAbstractButton):
        assert made.accessibleName() or made.objectName().startswith("qt_"), made.objectName()
    for name in ("record_turned", "record_note", "record_back", "finding_keep", "charge_minutes", "waiting_part"):
        found = page.findChild(QAbstractButton, name)
        assert isinstance(found, QAbstractButton)
        assert found.minimumHeight() >= theme.TOUCH_PX


def test_amounts_say_that_no_currency_is_set_where_none_is(desk: Desk) -> None:
    type_into(desk.window.intake.owner.limit, "80")
    desk.take_in()
    desk.click("rail_record")
    costs, rail = desk.window.record.costs, desk.window.rail.record
    desk.bot.waitUntil(lambda: texts.CURRENCY_UNKNOWN in costs.hour.text(), timeout=5_000)
    assert "costs 0.00 of 80.00" in rail.accessibleName()
    desk.owner = Settings(shop=Shop(currency="EUR", hour=60.0))
    desk.click("record_back")
    desk.click("rail_record")
    desk.bot.waitUntil(lambda: texts.CURRENCY_UNKNOWN not in costs.hour.text(), timeout=5_000)
    assert "0.00 of 80.00 EUR" in rail.accessibleName()
    assert "costs 0.00" not in rail.accessibleName()
