"""A working day in the window in virtual time: resident memory every half hour, goal flat within 5 % after the first.

Every half hour a job is taken in, made safe, probed, kicked, sometimes freed by hand, proven and closed; a unit of a
lot is measured in the curves room; every two hours there is a run-in. Between them the rooms are switched, runs in the
history are looked at, and the chart is zoomed. Runs are replayed (tests/ui/fake_link.py) and filed in a ledger on disk.

    python -m tests.benchmarks.window_day [--hours 8] [--trace]
"""

import argparse
import gc
import logging
import os
import resource
import sys
import tempfile
import time
import tracemalloc
from datetime import UTC, datetime
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtWidgets import QApplication

from benchlog.bench.frames import Request
from benchlog.clock import VirtualClock
from benchlog.ledger.store import Ledger
from benchlog.records import RunKind
from tests.ui.fake_link import FakeLink
from tests.ui.lot_desk import LotDesk
from ui import theme
from ui.main_window import BENCH_ROOM, CURVES_ROOM, HISTORY_ROOM, MainWindow

HALF_HOUR_S, WARM_UP = 1800.0, 2
GOAL = 0.05
"""Of what is resident after the warm-up of two half hours: by so much it may have grown at the end."""
PER_POLL_S = 1.0


class Day(LotDesk):
    """A person at work."""

    def make_link(self, request: Request) -> FakeLink:
        link = super().make_link(request)
        self.links.clear()  # a bench keeps no past runs; the window must not either
        if request.kind not in (RunKind.START_UP, RunKind.RUN_IN):
            link.per_poll_s = PER_POLL_S
        return link

    runs = 0

    def play(self) -> None:
        """A run to its end, the chart looked at closer and back on the way; questions get their first answer."""
        self.runs += 1
        polls = 0
        while self.session.run.on:
            self.session.run.poll()
            question = self.window.free.question
            if question.isVisible():
                question.buttons[0].click()
            polls += 1
            if polls % 3 == 0:
                QCoreApplication.processEvents()
        for view in self.window.views():
            if view.plot.isVisible():
                view.plot.look((1.0, 3.0))
                view.plot.redraw()
                view.plot.look(None)
        self.settle()

    def job(self, number: int) -> None:
        session, window = self.session, self.window
        session.new_job()
        window.intake.kind.setCurrentText("Bilge pump")
        window.intake.serial.setText(f"BP-{number % 5}")
        window.intake.complaint.setPlainText("hums, does not turn")
        window.intake.rated.setText("12 V")
        self.click("intake_open")
        for index in range(6):
            self.click(f"safe_{index}_done")
        self.click("safe_go_on")
        self.begin("probe_start")
        self.click("probe_go_on")
        if number % 3 == 0:
            self.begin("free_hand")
        self.begin("recovery_start")
        self.click("recovery_go_on")
        self.begin("proof_start")
        self.click("proof_go_on")
        window.close_stage.cause.setText("dried residue at the seal")
        window.close_stage.result.setCurrentIndex(window.close_stage.result.count() - 1)
        self.click("close_job")

    def begin(self, name: str) -> None:
        self.click(name)
        self.play()

    def look_back(self) -> None:
        """The last ten jobs, each with its runs; what they came to; the window in the other colours and back."""
        session, history = self.session, self.window.history
        session.show_room(HISTORY_ROOM)
        session.browsing.settle()
        for row in range(min(10, history.table.rowCount())):
            history.table.selectRow(row)
            session.browsing.settle()
            for index in range(history.runs.count()):
                history.runs.setCurrentIndex(index)
                history.card.run_picked.emit(history.runs.itemData(index))
                session.browsing.settle()
                QCoreApplication.processEvents()
        self.click("history_numbers")
        session.browsing.settle()
        self.click("history_jobs")
        self.window.wear(theme.DARK)
        QCoreApplication.processEvents()
        self.window.wear(theme.LIGHT)
        for room in (BENCH_ROOM, CURVES_ROOM, BENCH_ROOM):
            session.show_room(room)
            self.settle()

    def measure_one(self, number: int) -> None:
        self.to_the_room()
        self.click("curves_page_0")
        self.measure(f"F-{number}", f"good:{number}")
        self.runs += 1


def resident_mb() -> float:
    """MB of this process now. Linux."""
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return pages * resource.getpagesize() / 1e6


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--hours", type=float, default=8.0)
    parser.add_argument("--trace", action="store_true", help="what Python holds more at the end, by line; slow")
    asked = parser.parse_args()
    logging.basicConfig(level=logging.WARNING)
    application = QApplication(sys.argv[:1])
    application.setStyle("Fusion")
    clock = VirtualClock(utc_start=datetime(2026, 11, 25, 8, tzinfo=UTC))
    began, held = time.perf_counter(), []
    with tempfile.TemporaryDirectory() as folder, Ledger.open(Path(folder) / "harbour.db", clock=clock) as ledger:
        window = MainWindow(theme.LIGHT, resource="TCPIP::192.0.2.7::5025::SOCKET")
        window.wear(theme.LIGHT)
        day = Day(window, ledger, clock)
        day.ready()
        print(f"{'hour':>5} {'runs':>5} {'resident MB':>12} {'of the first':>13} {'Python objects':>15} {'widgets':>8}")
        before = None
        for half in range(1, round(asked.hours * 2) + 1):
            day.job(half)
            day.measure_one(half)
            day.look_back()
            if asked.trace and half == WARM_UP:
                tracemalloc.start(12)
                gc.collect()
                before = tracemalloc.take_snapshot()
            clock.wait(half * HALF_HOUR_S)
            QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
            if half >= WARM_UP:
                held.append(resident_mb())
                print(
                    f"{half / 2:>5.1f} {day.runs:>5} {held[-1]:>12.1f} {held[-1] / held[0]:>13.1%}"
                    f" {len(gc.get_objects()):>15,} {len(application.allWidgets()):>8}",
                    flush=True,
                )
        if before is not None:
            gc.collect()
            for line in tracemalloc.take_snapshot().compare_to(before, "lineno")[:25]:
                print(line)
        day.curving.errands.stop()
        day.session.browsing.stop()
        window.may_close = lambda: True
        window.close()
    growth = held[-1] / held[0] - 1
    print(
        f"{growth:+.1%} in {asked.hours - 1:g} h after the first, goal {GOAL:.0%}; {time.perf_counter() - began:.0f} s"
    )
    return 0 if growth <= GOAL else 1


if __name__ == "__main__":
    sys.exit(main())
