"""The page "Record and costs" in its states, as part of the pictures of a job."""

import time
from collections.abc import Callable
from typing import Protocol

from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtWidgets import QApplication

from benchlog.ledger.costs import keep_part
from ui.main_window import MainWindow
from ui.session import Session


class Shooting(Protocol):
    """The walk through a job that takes the pictures."""

    window: MainWindow
    session: Session

    def press(self, name: str) -> None: ...
    def shoot(self, name: str) -> None: ...


def shoot_record(walk: Shooting) -> None:
    """Of a job that may cost 60, with nothing charged yet; begins and ends on a stage."""
    window, page = walk.window, walk.window.record
    keep_part(walk.session.ledger, "shaft seal", "8 mm", each_cents=1450, stock=3)
    window.rail.record.click()
    page.who.setText("Mira")
    page.words.setText("a drop at the shaft, ten minutes")
    walk.press("record_soaked")
    _until(lambda: not page.words.text())
    findings, costs = page.findings, page.costs
    findings.part.setText("R7")
    findings.place.setText("at the driver")
    findings.marking.setText("152J")
    walk.shoot("record-marking")
    walk.press("reading_0")
    walk.press("finding_keep")
    _until(lambda: findings.rows.count() == 1)
    findings.calculate.setChecked(True)
    for name, text in (("supply", "12,6"), ("upper", "10k"), ("lower", "3k3")):
        findings.calculator.inputs[name].setText(text)
    walk.shoot("record-calculator")
    findings.blank()
    walk.press("finding_correct_1")
    walk.shoot("record-correcting")
    walk.press("finding_give_up")
    walk.press("record_costs")
    costs.part.setCurrentIndex(0)
    costs.count.setText("3")
    walk.press("charge_part")
    _until(lambda: costs.rows.count() == 1)
    walk.shoot("record-costs")
    walk.press("stock_open")
    walk.shoot("record-stock")
    walk.press("stock_open")
    costs.other.setText("new impeller")
    costs.price.setText("24")
    walk.press("charge_other")
    _until(costs.over.isVisible)
    walk.shoot("record-stop-or-ask")
    walk.press("over_limit_no")
    walk.press("take_back_1")
    walk.shoot("record-take-back")
    walk.press("take_back_no")
    walk.press("record_waiting")
    page.waiting.what.setText("shaft seal 8 mm, ordered")
    walk.press("waiting_part")
    _until(lambda: "waits" in window.header.about.text())
    walk.shoot("record-waiting")
    walk.press("record_pictures")
    walk.shoot("record-files")
    walk.press("record_back")


def _until(reached: Callable[[], bool]) -> None:
    until = time.monotonic() + 5.0
    while not reached():
        if time.monotonic() > until:
            raise RuntimeError("the page did not get there")
        QApplication.processEvents()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        time.sleep(0.005)
