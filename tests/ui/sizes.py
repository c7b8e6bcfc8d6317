"""Every page in its fullest state, and what of it is cut, overlaps or sticks out at a size.

`python -m tests.ui.sizes DIR [WIDTHxHEIGHT ...] [--look NAME] [--language de] [--only WORD]` pictures them and says
what is wrong.
"""

import logging
import os
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractScrollArea,
    QAbstractSlider,
    QApplication,
    QComboBox,
    QLabel,
    QPushButton,
    QScrollArea,
    QWidget,
)

from benchlog.bench.frames import Question, Request
from benchlog.clock import VirtualClock
from benchlog.ledger.costs import charge_minutes, charge_other, keep_part
from benchlog.ledger.findings import add_finding
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Job, Motor, RunKind, Stage, TakenIn
from benchlog.recovery.ceilings import Limits
from benchlog.settings import Settings
from tests.ui import fake_starts  # noqa: F401  its script is found by the kind of run
from tests.ui.fake_link import FakeLink
from tests.ui.fake_supplies import FakeSupplies
from ui import theme
from ui.alarms import What
from ui.charts.chart_corner import ChartCorner
from ui.curves.room import CAPTURE_PAGE, CHART_PAGE, EMPTY_PAGE, JOB, LOT_PAGE, RUN_IN_PAGE, TESTS_PAGE, UNITS_PAGE
from ui.main_window import BENCH_ROOM, CURVES_ROOM, HISTORY_ROOM, SETTINGS_ROOM, MainWindow
from ui.off_state import OffState
from ui.pieces import Elided, FewLines
from ui.record.page import COSTS, FINDINGS, PICTURES, WAITING
from ui.session import Session
from ui.translating import speak_language

ADDRESS = "TCPIP::192.0.2.7::5025::SOCKET"
SIZES = (QSize(683, 384), QSize(911, 512), QSize(1366, 768))
COMPLAINT = "hums when it is switched on, does not turn, and smells when it is left so for longer than a moment"
ASKED = (
    "Turn the shaft by hand both ways, tap the housing, let a drop soak in. Has the shaft moved since the last kick?"
)
LOOKS = {one.name: one for one in theme.PALETTES}
LONGER = 0.35
"""How much longer than in English words may be in another language. Common practice, no source."""


@dataclass
class Everything:
    """A window with a job that has all a job can have. `scenes` shows one page after the other."""

    folder: Path
    clock: VirtualClock = field(default_factory=lambda: VirtualClock(utc_start=datetime(2026, 11, 25, 8, tzinfo=UTC)))
    links: list[FakeLink] = field(default_factory=list)
    scenario: str = "good:1"

    def __post_init__(self) -> None:
        self.ledger = Ledger.open(self.folder / "harbour.db", clock=self.clock)
        self.window = MainWindow(theme.LIGHT, resource=ADDRESS, demo="bilge pump")
        self.window.wear(theme.LIGHT)
        owner = Settings(ceilings=Limits(volts=24.0, amps=4.0, kicks=40), unlocked=Limits(volts=30.0, kicks=60))
        self.told = FakeSupplies(self.ledger)
        self.session = Session(
            self.window,
            self.ledger,
            self._link,
            resource=ADDRESS,
            settings=lambda: owner,
            beep=lambda: None,
            supplies=self.told,
        )
        self.window.show()
        self._job()

    def _link(self, request: Request) -> FakeLink:
        scenario = self.scenario if request.kind is RunKind.START_UP else "freed"
        self.links.append(FakeLink(request, scenario=scenario, per_poll_s=900.0))
        self.clock.wait(self.clock.now() + 60.0)
        self.links[-1].started_utc = self.clock.utc()
        return self.links[-1]

    def _job(self) -> None:
        self.ledger.new_job(
            item=Item(kind="Fresh-water pump", make="harbour", model="H-35", serial="5521"),
            motor=Motor(rated_volts=12.0),
            complaint=COMPLAINT,
            load_state="dry, uncoupled",
            taken_in=TakenIn(owner="berth 12", spending_limit_cents=6000, pumped="fresh water"),
        )
        job = self.ledger.new_job(
            item=Item(kind="Fresh-water pump", make="harbour", model="H-35", serial="5521"),
            motor=Motor(rated_volts=12.0),
            complaint=COMPLAINT,
            load_state="dry, uncoupled",
            taken_in=TakenIn(owner="berth 12", spending_limit_cents=6000, pumped="fresh water"),
        )
        self._fill(job)
        self.session.open_job(job.id)
        self.session._keep_made_safe(["Supply ready: checked"])
        for kind in (RunKind.PROBE, RunKind.RECOVERY, RunKind.PROOF):
            self.session.running.begin(kind)
            self.until_over()
        self.session.refresh()

    def _fill(self, job: Job) -> None:
        keep_part(self.ledger, "shaft seal", "8 mm", each_cents=1450, stock=3)
        charge_minutes(self.ledger, job.id, minutes=35, hour_cents=4800, text="cleaned, soaked and turned by hand")
        charge_other(self.ledger, job.id, "new impeller from the chandler", 2400)
        add_finding(self.ledger, job.id, part="R7", place="at the driver", marking="152J", value="1.5 kΩ")

    def until_over(self) -> None:
        for _ in range(2000):
            if not self.session.run.on:
                return
            self.session.run.poll()
            for view in self.window.views():
                if view.question.buttons:
                    view.question.buttons[0].click()
        raise RuntimeError("the run did not end")

    def close(self) -> None:
        self.session.curving.errands.stop()
        self.window.may_close = lambda: True
        self.window.close()
        self.ledger.close()

    # pages

    def scenes(self) -> Iterator[str]:
        """Each name when its page is shown."""
        yield from self._bench()
        yield from self._record()
        yield from self._curves()
        yield from self._history()
        yield from self._settings()

    def _stage(self, stage: Stage) -> None:
        self.session.show_room(BENCH_ROOM)
        self.session.go_to(stage)

    def _bench(self) -> Iterator[str]:
        window, intake = self.window, self.window.intake
        self._stage(Stage.INTAKE)
        intake.unlock.offer(Limits(volts=30.0, kicks=60), None)
        yield "intake"
        intake.cards.ensureWidgetVisible(intake.unlock)
        yield "intake-bench"
        self._stage(Stage.MAKE_SAFE)
        yield "safe"
        self._stage(Stage.PROBE)
        yield "probe"
        self._stage(Stage.FREE)
        yield "free"
        window.free.question.ask(Question(id=1, text=ASKED, choices=["it turned freely", "still stuck", "skip"]))
        window.free.show_run(RunKind.HAND)
        window.free.start_button.hide()
        window.panel.show_run()
        window.panel.show_off(OffState.RUNNING, "Output on since 14:03:18. Output off is one press away.")
        yield "free-asking"
        window.free.question.withdraw()
        window.free.show_run(None)
        window.panel.rest()
        window.notice.tell("A run that a crash left behind was filed with job 0005. " * 2, What.LEDGER)
        window.panel.show_off(OffState.NOT_CONFIRMED, self.not_confirmed())
        yield "free-not-confirmed"
        window.notice.dismiss()
        window.panel.show_off(OffState.CONFIRMED, "Off, and read back as off, at 14:03:22.")
        self._stage(Stage.PROVE)
        yield "prove"
        self._stage(Stage.CLOSE)
        yield "close"

    def not_confirmed(self) -> str:
        from ui import texts

        return str(texts.OFF_NOT_CONFIRMED)

    def _record(self) -> Iterator[str]:
        window, page = self.window, self.window.record
        self.session.show_room(BENCH_ROOM)
        window.rail.record.click()
        page.findings.marking.setText("152J")
        page.findings.calculate.setChecked(True)
        for kind, name in ((FINDINGS, "findings"), (COSTS, "costs"), (WAITING, "waiting"), (PICTURES, "pictures")):
            page.pick(kind)
            yield f"record-{name}"
        page.findings.blank()
        window.record.back_button.click()

    def _curves(self) -> Iterator[str]:
        room, curving = self.window.curves, self.session.curving
        self.session.show_room(CURVES_ROOM)
        curving.settle()
        room.show_page(EMPTY_PAGE)
        yield "curves-empty"
        curving.show_chosen(JOB)
        curving.settle()
        self._test_and_starts()
        for page, name in (
            (CHART_PAGE, "chart"),
            (UNITS_PAGE, "units"),
            (TESTS_PAGE, "tests"),
            (LOT_PAGE, "lot"),
            (CAPTURE_PAGE, "capture"),
            (RUN_IN_PAGE, "run-in"),
        ):
            room.show_page(page)
            yield f"curves-{name}"
        room.show_page(CHART_PAGE)

    def _test_and_starts(self) -> None:
        room, curving = self.window.curves, self.session.curving
        if self.links[-1].request.kind is RunKind.START_UP:
            return
        form = room.tests
        room.show_page(TESTS_PAGE)
        form.name.setText("cold start 3.0 V")
        form.quantities["volts"].setText("3 V")
        form.quantities["on_s"].setText("1.6")
        form.starts.setText("2")
        form.lock.click()
        curving.settle()
        self.window.notice.hide()
        curving._use_test(1)
        room.side.next.clear.click()
        room.side.next.start.click()
        self.until_over()
        curving.settle()

    def _history(self) -> Iterator[str]:
        self.session.show_room(HISTORY_ROOM)
        browsing, room = self.session.browsing, self.window.history
        browsing.settle()
        yield "history"
        room.table.selectRow(0)
        browsing.settle()
        yield "history-job"
        room.switch.button(1).click()
        browsing.settle()
        yield "history-numbers"
        room.switch.button(0).click()
        browsing.settle()

    def _settings(self) -> Iterator[str]:
        self.session.show_room(SETTINGS_ROOM)
        bar = self.window.settings.cards.verticalScrollBar()
        bar.setValue(0)
        yield "settings"
        bar.setValue(bar.maximum())
        yield "settings-end"


# what is looked for


def settle(window: MainWindow, size: QSize | None = None) -> None:
    if size is not None:
        window.resize(size)
    for _ in range(4):
        QApplication.processEvents()


def wrong(window: MainWindow) -> list[str]:
    """What is cut, overlaps or sticks out of what is shown, one line each."""
    found = []
    shown = [part for part in window.findChildren(QWidget) if part.isVisible() and not _inner(part)]
    for part in shown:
        if need := _cut(part):
            found.append(f"{_name(part)} is cut: {need}")
        if isinstance(part, QScrollArea):
            inside = part.widget()
            if inside is not None and inside.width() > part.viewport().width():
                found.append(f"{_name(part)}: {inside.width()} wide in {part.viewport().width()}")
        if not _in_sight(part, window):
            found.append(f"{_name(part)} sticks out of what holds it")
    found += _overlaps(shown)
    button = window.panel.button
    at = QRect(button.mapTo(window, QPoint(0, 0)), button.size())
    if not window.rect().contains(at):
        found.append(f"Output off is at {at.getRect()}")
    return found


def _inner(part: QWidget) -> bool:
    """Parts of Qt's own widgets."""
    parent = part.parentWidget()
    return (
        part.objectName().startswith("qt_")
        or isinstance(part, QAbstractSlider)
        or isinstance(parent, QComboBox | QAbstractItemView)
        or (isinstance(parent, QAbstractScrollArea) and not isinstance(parent, QScrollArea))
    )


def _cut(part: QWidget) -> str:
    """Words that need more than the part has; "" where they fit or are shortened with "…" on purpose."""
    if isinstance(part, Elided | FewLines) or part.objectName() == "job_title":
        return ""
    if isinstance(part, QLabel) and part.text():
        if part.wordWrap():
            need = part.heightForWidth(part.width())
            return "" if need <= part.height() + 1 else f"{need} high in {part.height()}: {part.text()[:40]!r}"
        plain = part.textFormat() is Qt.TextFormat.PlainText
        need = part.fontMetrics().size(0, part.text()).width() if plain else part.sizeHint().width()
        have = part.contentsRect().width()
        return "" if need <= have + 1 else f"{need} wide in {have}: {part.text()[:40]!r}"
    if isinstance(part, QPushButton) and part.text():
        need = part.fontMetrics().size(Qt.TextFlag.TextShowMnemonic, part.text()).width()
        have = part.width() - 4
        return "" if need <= have else f"{need} wide in {have}: {part.text()!r}"
    return ""


def _in_sight(part: QWidget, window: MainWindow) -> bool:
    """Whether it lies inside its parent, unless that is scrolled."""
    parent = part.parentWidget()
    if parent is None or isinstance(parent.parentWidget(), QAbstractScrollArea) or isinstance(part, QScrollArea):
        return True
    if parent is window:
        return window.rect().contains(part.geometry())
    return parent.rect().adjusted(-1, -1, 1, 1).contains(part.geometry())


def _overlaps(shown: list[QWidget]) -> list[str]:
    by_parent: dict[int, list[QWidget]] = {}
    for part in shown:
        parent = part.parentWidget()
        if parent is not None and parent.layout() is not None:
            by_parent.setdefault(id(parent), []).append(part)
    found = []
    for parts in by_parent.values():
        for number, one in enumerate(parts):
            for other in parts[number + 1 :]:
                both = one.geometry().intersected(other.geometry())
                over = both.width() > 1 and both.height() > 1
                if over and not isinstance(other, ChartCorner):  # which lies there on purpose
                    found.append(f"{_name(one)} lies over {_name(other)} by {both.width()} x {both.height()}")
    return found


def _name(part: QWidget) -> str:
    words = part.objectName() or type(part).__name__
    parent = part.parentWidget()
    while parent is not None and not parent.objectName():
        parent = parent.parentWidget()
    return words if parent is None else f"{words} in {parent.objectName()}"


def lengthen(window: MainWindow) -> None:
    """Each fixed word longer, as another language may have it."""
    for part in window.findChildren(QWidget):
        if isinstance(part, QAbstractButton | QLabel) and not isinstance(part, Elided | FewLines):
            text = part.text()
            if text and not part.property("longer") and text[0] not in "<0123456789":
                part.setText(longer(text))
                part.setProperty("longer", True)


def longer(text: str) -> str:
    """A third more, in words of no language."""
    more = round(len(text) * LONGER)
    return text + (" " if " " in text else "") + ("ellimor " * (more // 8 + 1))[:more].rstrip()


def main(arguments: list[str]) -> None:
    application = QApplication([])
    application.setStyle("Fusion")
    application.setFont(theme.font())
    folder = Path(arguments.pop(0))
    look = arguments.pop(arguments.index("--look") + 1) if "--look" in arguments else "light"
    if "--language" in arguments:
        speak_language(arguments.pop(arguments.index("--language") + 1), application)
    only = arguments.pop(arguments.index("--only") + 1) if "--only" in arguments else ""
    sizes = [QSize(*map(int, one.split("x"))) for one in arguments if "x" in one and not one.startswith("--")] or SIZES
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as workshop:
        made = Everything(Path(workshop))
        made.window.wear(LOOKS[look])
        if "--longer" in arguments:
            lengthen(made.window)
        for name in made.scenes():
            for size in sizes if only in name else ():
                settle(made.window, size)
                made.window.grab().save(str(folder / f"{name}-{look}-{size.width()}x{size.height()}.png"))
                for line in wrong(made.window):
                    sys.stdout.write(f"{name} {size.width()}x{size.height()}: {line}\n")
        made.close()


if __name__ == "__main__":
    logging.basicConfig(level=logging.WARNING)
    main(sys.argv[1:])
