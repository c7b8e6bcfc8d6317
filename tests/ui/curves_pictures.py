"""Pictures of the curves room in its states: `python -m tests.ui.curves_pictures DIR`."""

import logging
import os
import sys
import tempfile
from datetime import UTC, datetime
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import numpy as np
from PySide6.QtCore import QSize
from PySide6.QtWidgets import QApplication, QPushButton

from benchlog.bench.frames import Request
from benchlog.clock import VirtualClock
from benchlog.ledger.captured import captured
from benchlog.ledger.lots import lots, units
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor, RunKind
from tests.ui import fake_starts  # noqa: F401  its script is found by the kind of run
from tests.ui.fake_link import FakeLink
from tests.ui.views import Taking, into
from ui import theme
from ui.curves.room import JOB
from ui.main_window import CURVES_ROOM, MainWindow
from ui.session import Session
from ui.theme import Tokens

UNITS = 12


class Bench:
    """Hands out links by what is measured next."""

    def __init__(self, clock: VirtualClock) -> None:
        self.clock = clock
        self.scenario, self.per_poll_s = "good:1", 60.0
        self.links: list[FakeLink] = []

    def make(self, request: Request) -> FakeLink:
        scenario = "freed" if request.kind is not RunKind.START_UP else self.scenario
        link = FakeLink(request, scenario=scenario, per_poll_s=self.per_poll_s)
        self.clock.wait(self.clock.now() + 60.0)
        link.started_utc = self.clock.utc()
        self.links.append(link)
        return link


class CurvesWalk:
    """A lot from its test to its report, with a picture at every turn."""

    def __init__(self, window: MainWindow, session: Session, bench: Bench, workshop: Path, taking: Taking) -> None:
        self.window, self.session, self.bench, self.taking = window, session, bench, taking
        self.workshop = workshop
        self.room, self.curving = window.curves, session.curving
        self.count = 0

    def press(self, name: str) -> None:
        found = self.window.findChild(QPushButton, name)
        assert found is not None, name
        assert found.isEnabled(), f"{name}: {found.toolTip()}"
        found.click()

    def shoot(self, name: str) -> None:
        self.count += 1
        self.taking(self.window, f"curves-{self.count:02d}-{name}")

    def settle(self) -> None:
        self.curving.settle()
        QApplication.processEvents()

    def run_until_over(self) -> None:
        while self.session.run.on:
            self.session.run.poll()
        self.settle()

    def measure(self, serial: str, scenario: str) -> None:
        self.bench.scenario = scenario
        card = self.room.side.next
        card.serial.setText(serial)
        card.serial.returnPressed.emit()
        self.press("curves_start")
        self.run_until_over()

    def go(self) -> None:
        self.session.show_room(CURVES_ROOM)
        self.settle()
        self.shoot("empty")
        self.press("curves_define_test")
        self.shoot("test-new")
        form = self.room.tests
        form.name.setText("cold start 3.0 V")
        form.quantities["volts"].setText("3 V")
        form.quantities["on_s"].setText("1,6")
        form.starts.setText("3")
        form.who.setText("Mira")
        self.press("test_lock")
        self.settle()
        self.shoot("test-locked")
        self.window.notice.hide()
        self.press("curves_new_lot")
        self.settle()
        lot = self.room.lot_form
        lot.name.setText("2026-11")
        lot.kind.setCurrentText("Cabin fan")
        lot.model.setText("CF-180")
        lot.rated.setText("6 V")
        lot.operator.setText("Mira")
        lot.leads.setText("1 m, 1.5 mm²")
        lot.fixture.setText("clamped, shaft free")
        self.shoot("lot-new")
        self.press("lot_open")
        self.settle()
        self.shoot("lot-open")
        self.room.side.next.clear.click()
        self.press("curves_check")
        self.press("curves_check_begin")
        self.run_until_over()
        for number in range(1, 6):
            self.measure(f"F-22{number:02d}", f"good:{number}")
        self.shoot("five-without-limits")
        self.press("curves_page_1")
        self.room.units.who.setText("Mira")
        self.shoot("units-before-limits")
        self.press("curves_make_limits")
        self.settle()
        self.shoot("limits-made")
        self.window.notice.hide()
        for number in range(6, UNITS):
            self.measure(f"F-22{number:02d}", f"good:{number}")
        self.shoot("pass")
        self.measure(f"F-22{UNITS}", "slow:3")
        self.shoot("fail")
        self.press("curves_before")
        self.settle()
        self.measure(f"F-22{UNITS}", "good:77")
        self.shoot("before-and-after")
        self.press("curves_before")
        self.press("curves_cursors")
        self.press("curves_volts")
        self.shoot("cursors-and-volts")
        self.press("curves_cursors")
        self.press("curves_volts")
        self.press("curves_page_1")
        self.press("curves_order_1")
        self.shoot("units")
        self.press("curves_page_0")
        self.capture_over()
        self.measure_part("F-2213")
        self.window.notice.tell("A run that a crash left behind was filed with job 0005. Its output was off when seen.")
        self.shoot("with-a-notice")
        self.window.notice.hide()
        self.of_a_job()

    def measure_part(self, serial: str) -> None:
        """Pictures while a unit is measured."""
        card = self.room.side.next
        self.bench.scenario, self.bench.per_poll_s = "good:5", 0.15
        card.serial.setText(serial)
        card.serial.returnPressed.emit()
        self.shoot("scanned")
        self.press("curves_start")
        link = self.bench.links[-1]
        while self.room.chart.plot.shown.live is None or link._now_s < 6.4:
            self.session.run.poll()
            QApplication.processEvents()
        self.shoot("capturing")
        self.bench.per_poll_s = link.per_poll_s = 60.0
        self.run_until_over()

    def capture_over(self) -> None:
        """An oscilloscope's view of what is picked out: the same start, with the inrush that no readback shows."""
        run = units(self.session.ledger, lots(self.session.ledger)[0])[-1].run
        assert run is not None
        curve = captured(self.session.ledger, run).curves[0]
        t_s = np.arange(-0.05, 1.4, 0.0002)
        amps = np.interp(t_s, curve.t_s, curve.amps)
        amps[(t_s > 0.0005) & (t_s < 0.0012)] = 2.6
        path = self.workshop / "scope.csv"
        lines = ["Time (ms),CH1 (V),CH2 (A)"]
        lines += [f"{1000 * at_s:.2f},3.0,{value:.4f}" for at_s, value in zip(t_s, amps, strict=True)]
        path.write_text("\n".join(lines) + "\n")
        self.curving.files.look_into(path)
        self.settle()
        self.shoot("capture-columns")
        self.press("capture_lay")
        self.settle()
        self.shoot("capture-over")
        self.press("curves_over")

    def of_a_job(self) -> None:
        """The job on the bench."""
        job = self.session.ledger.new_job(
            item=Item(kind="Cabin fan", model="CF-180", serial="CF-0441"),
            motor=Motor(rated_volts=6.0),
            complaint="starts slowly",
            load_state="dry, uncoupled",
        )
        self.session.open_job(job.id)
        self.session.show_room(CURVES_ROOM)
        self.settle()
        self.curving.show_chosen(JOB)
        self.settle()
        self.shoot("job-nothing-yet")
        self.curving._use_test(1)
        self.room.side.next.clear.click()
        self.bench.scenario = "slow:9"
        self.press("curves_start")
        self.run_until_over()
        self.bench.scenario = "good:9"
        self.press("curves_start")
        self.run_until_over()
        self.press("curves_before")
        self.settle()
        self.shoot("job-before-and-after")
        self.press("curves_page_6")
        self.settle()
        self.shoot("run-in-ready")
        self.room.run_in.clear.click()
        self.bench.per_poll_s = 300.0
        self.press("run_in_start")
        for _ in range(5):
            self.session.run.poll()
        self.shoot("run-in")
        self.run_until_over()
        self.shoot("run-in-done")


def shoot_curves(taking: Taking, *, first: Tokens = theme.LIGHT) -> None:
    """In a window and on a ledger of its own."""
    with tempfile.TemporaryDirectory() as workshop:
        clock = VirtualClock(utc_start=datetime(2026, 11, 25, 8, tzinfo=UTC))
        ledger = Ledger.open(Path(workshop) / "harbour.db", clock=clock)
        window = MainWindow(first, resource="TCPIP::192.0.2.7::5025::SOCKET", demo="bilge pump")
        window.wear(first)
        bench = Bench(clock)
        session = Session(window, ledger, bench.make, resource="TCPIP::192.0.2.7::5025::SOCKET")
        window.resize(QSize(1366, 768))
        window.show()
        CurvesWalk(window, session, bench, Path(workshop), taking).go()
        window.close()
        ledger.close()


def main(folder: Path) -> None:
    application = QApplication([])
    application.setStyle("Fusion")
    application.setFont(theme.font())
    shoot_curves(into(folder))


if __name__ == "__main__":
    logging.basicConfig(level=logging.WARNING)
    main(Path(sys.argv[1]))
