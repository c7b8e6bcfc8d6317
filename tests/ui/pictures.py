"""Pictures of every page, a job from intake to close and the curves room: `python -m tests.ui.pictures DIR [VIEW…]`."""

import logging
import os
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QApplication, QComboBox, QPushButton, QWidget

from benchlog.bench.frames import Request
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor, Stage
from benchlog.recovery.ceilings import Limits
from benchlog.settings import Settings
from tests.ui.curves_pictures import shoot_curves
from tests.ui.fake_link import FakeLink
from tests.ui.fake_supplies import FakeSupplies
from tests.ui.record_pictures import shoot_record
from tests.ui.room_pictures import shoot_chart, shoot_notices, shoot_rooms
from tests.ui.views import VIEWS, Taking, into
from ui import theme
from ui.main_window import HISTORY_ROOM, MainWindow
from ui.session import Session
from ui.theme import Tokens

OWNER = Settings(ceilings=Limits(volts=24.0, amps=4.0, kicks=40), unlocked=Limits(volts=30.0, kicks=60))


def walk(taking: Taking, *, first: Tokens = theme.LIGHT) -> None:
    """Through every page in its states; `taking` gets each. `first`: how the windows are dressed."""
    application = QApplication.instance() or QApplication([])
    assert isinstance(application, QApplication)
    application.setStyle("Fusion")
    application.setFont(theme.font())
    with tempfile.TemporaryDirectory() as workshop:
        ledger = Ledger.open(Path(workshop) / "harbour.db")
        _older_jobs(ledger)
        window = MainWindow(first, resource="TCPIP::192.0.2.7::5025::SOCKET", demo="bilge pump")
        window.wear(first)
        links: list[FakeLink] = []

        def make(request: Request) -> FakeLink:
            links.append(FakeLink(request, per_poll_s=0.2))
            return links[-1]

        address, told = "TCPIP::192.0.2.7::5025::SOCKET", FakeSupplies(ledger)
        session = Session(window, ledger, make, resource=address, settings=lambda: OWNER, supplies=told)
        window.resize(QSize(1366, 768))
        window.show()
        shoot_supplies(window, session, told, taking)
        Walk(window, session, links, taking).go()
        window.close()
        ledger.close()
    shoot_curves(taking, first=first)


def shoot_supplies(window: MainWindow, session: Session, told: FakeSupplies, taking: Taking) -> None:
    """The intake's address: what a search found, what one told, and what came of one that told nothing."""
    row, supplying = window.intake.supply_row, session.supplying
    before = window.intake.supply.text()

    def shoot(name: str, shown: QWidget) -> None:
        window.resize(QSize(1366, 768))
        for _ in range(5):
            QApplication.processEvents()
        cards = window.intake.cards
        again = cards.verticalScrollBar().rangeChanged.connect(lambda: cards.ensureWidgetVisible(shown))
        cards.ensureWidgetVisible(shown)
        taking(window, f"supply-{name}")
        cards.verticalScrollBar().rangeChanged.disconnect(again)

    window.intake.look_button.click()
    supplying.settle()
    shoot("found", row.places)
    row.places.itemClicked.emit(row.places.item(1))
    told.answer.clear()
    window.intake.ask_button.click()
    shoot("asking", row)
    told.answer.set()
    supplying.settle()
    shoot("told", row.report.button)
    row.open.click()
    shoot("known", row)
    told.report = {"usable": False, "why": "it answers none of the questions for setpoints that supplies answer"}
    window.intake.supply.setText("ASRL/dev/ttyUSB0::INSTR")
    window.intake.ask_button.click()
    supplying.settle()
    shoot("not-usable", row)
    window.intake.supply.setText(before)
    row.looked.hide()
    row.places.hide()
    session.refresh()
    window.intake.cards.verticalScrollBar().setValue(0)


class Walk:
    """A job by its buttons, with a picture at every turn."""

    def __init__(self, window: MainWindow, session: Session, links: list[FakeLink], taking: Taking) -> None:
        self.window, self.session, self.links, self.taking = window, session, links, taking
        self.count = 0

    def press(self, name: str) -> None:
        found = self.window.findChild(QPushButton, name)
        assert found is not None, name
        found.click()

    def shoot(self, name: str) -> None:
        self.count += 1
        self.taking(self.window, f"{self.count:02d}-{name}")

    def run_until(self, reached: Callable[[], bool]) -> None:
        for _ in range(20000):
            if reached():
                return
            self.session.run.poll()
            QApplication.processEvents()
        raise RuntimeError("the run did not get there")

    def at_the_next_start(self) -> None:
        """What another window on the same ledger begins with."""
        window = MainWindow(self.window.tokens, demo="bilge pump")
        window.show()
        Session(window, self.session.ledger, lambda request: self.links[-1], settings=lambda: OWNER)
        self.taking(window, f"{self.count:02d}-at-the-next-start")
        window.may_close = lambda: True
        window.close()
        window.deleteLater()

    def go(self) -> None:
        window, intake = self.window, self.window.intake
        self.shoot("intake-empty")
        window.findChild(QComboBox, "intake_kind").setCurrentText("Bilge pump")  # type: ignore[union-attr]
        intake.model.setText("H-500")
        intake.serial.setText("BP-17")
        intake.owner.owner.setText("berth 12")
        intake.owner.limit.setText("60")
        intake.owner.consent.setChecked(True)
        self.session.taking_in.look_for_earlier()
        intake.complaint.setPlainText("hums, does not turn")
        intake.rated.setText("12 V")
        intake.max_amps.setText("1,83")
        self.shoot("intake-filled")
        self.press("intake_open")
        self.session.go_to(Stage.INTAKE)
        self.shoot("unlock-offered")
        intake.unlock.who.setText("dock foreman")
        intake.unlock.why.setText("24 V thing from a larger boat, needs more for a moment")
        self.press("unlock")
        self.shoot("unlocked")
        self.window.notice.tell("A run that a crash left behind was filed with job 0005. " * 3)
        self.shoot("unlocked-with-a-notice")
        self.window.notice.hide()
        self.session.go_to(Stage.MAKE_SAFE)
        self.press("safe_0_done")
        self.press("safe_1_not_fitting")
        self.shoot("safe")
        for index in range(2, 6):
            self.press(f"safe_{index}_done")
        self.press("safe_go_on")
        self.shoot("probe-ready")
        self.press("probe_leads_start")
        self.run_until(lambda: not self.session.run.on)
        self.shoot("leads-done")
        self.press("probe_start")
        self.run_until(lambda: not self.session.run.on)
        self.shoot("probe-done")
        self.press("probe_go_on")
        self.shoot("free-ready")
        self.press("free_hand")
        self.run_until(lambda: window.free.question.isVisible())
        self.shoot("free-by-hand")
        window.free.question.buttons[1].click()
        self.run_until(lambda: not self.session.run.on)
        self.shoot("free-by-hand-done")
        self.press("recovery_start")
        self.run_until(lambda: self.links[-1]._now_s > 12)
        self.shoot("free-kicking")
        self.run_until(lambda: window.free.question.isVisible())
        self.shoot("free-question")
        window.free.question.buttons[0].click()
        self.run_until(lambda: window.panel.numerals.word.text() == "TURNING")
        self.run_until(lambda: self.links[-1]._now_s > 21.5)
        self.shoot("free-turning")
        self.run_until(lambda: not self.session.run.on)
        self.shoot("free-done")
        shoot_chart(window, self.taking)
        shoot_notices(window, self.taking)
        shoot_record(self)
        self.press("recovery_go_on")
        self.press("proof_start")
        self.run_until(lambda: self.links[-1]._now_s > 6)
        self.links[-1].hold_back_end = True
        window.panel.button.click()
        self.shoot("prove-commanded")
        self.links[-1].hold_back_end = False
        self.links[-1].confirms = False
        self.run_until(lambda: not self.session.run.on)
        self.shoot("prove-not-confirmed")
        self.at_the_next_start()
        self.press("off_acknowledge")
        self.press("proof_start")
        self.run_until(lambda: not self.session.run.on)
        self.shoot("prove-done")
        self.press("proof_go_on")
        self.shoot("close")
        window.close_stage.cause.setText("dried residue at the seal")
        window.close_stage.work.setText("soaked, cleaned, seal oiled")
        window.close_stage.prognosis.setText("should last the season")
        self.press("close_job")
        self.taking(window, "close-lacks-something")
        window.close_stage.result.setCurrentIndex(0)
        self.press("close_job")
        self.shoot("closed")
        self.session.show_room(HISTORY_ROOM)
        self.session.browsing.settle()
        window.history.table.selectRow(0)
        self.session.browsing.settle()
        self.shoot("history")
        window.history.switch.button(1).click()
        self.session.browsing.settle()
        self.shoot("history-numbers")
        window.history.search.setText("zinc")
        window.history.switch.button(0).click()
        self.session.browsing.settle()
        self.shoot("history-nothing-found")
        window.history.list.empty_all.click()
        self.session.browsing.settle()
        shoot_rooms(window, self.session, OWNER, self.taking)
        self.session.show_room(HISTORY_ROOM)
        self.session.browsing.settle()
        self.session.fault("ZeroDivisionError: division by zero")
        self.shoot("fault")


def _older_jobs(ledger: Ledger) -> None:
    for kind, model, serial, complaint in (
        ("Hatch actuator", "H-2", "0071", "stops half way"),
        ("Fresh-water pump", "H-35", "5521", "trips the fuse"),
        ("Anchor-light dimmer fan", "", "", "dead"),
        ("Cabin fan", "", "", "dead since the winter, hums sometimes when the battery is full"),
        ("Bilge pump", "H-500", "BP-17", "seized over winter"),
    ):
        ledger.new_job(
            item=Item(kind=kind, model=model, serial=serial),
            motor=Motor(rated_volts=12.0),
            complaint=complaint,
            load_state="dry, uncoupled",
        )


if __name__ == "__main__":
    logging.basicConfig(level=logging.WARNING)
    walk(into(Path(sys.argv[1]), [view for view in VIEWS if not sys.argv[2:] or view.name in sys.argv[2:]]))
