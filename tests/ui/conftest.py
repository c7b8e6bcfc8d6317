"""The window's tests need no screen. `desk` is a window on a new ledger, with replayed runs in place of the bench."""

import os
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path

import pytest

os.environ["QT_QPA_PLATFORM"] = "offscreen"

from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton
from pytestqt.qtbot import QtBot

from benchlog.bench.frames import Request
from benchlog.clock import VirtualClock
from benchlog.ledger.store import Ledger
from benchlog.settings import Settings
from tests.ui.fake_link import FakeLink
from tests.ui.lot_desk import LotDesk
from ui import theme
from ui.main_window import MainWindow
from ui.session import Session

RESOURCE = "TCPIP::192.0.2.7::5025::SOCKET"


@dataclass
class Desk:
    """What a person has in front of them, and what the fake bench was told."""

    window: MainWindow
    session: Session
    ledger: Ledger
    bot: QtBot
    scenario: str = "freed"
    confirms: bool = True
    owner: Settings = field(default_factory=Settings)
    links: list[FakeLink] = field(default_factory=list)

    def make_link(self, request: Request) -> FakeLink:
        self.links.append(FakeLink(request, scenario=self.scenario, per_poll_s=0.5, confirms=self.confirms))
        return self.links[-1]

    def click(self, name: str) -> None:
        """With the mouse, on something that can be seen."""
        found = self.window.findChild(QAbstractButton, name)
        assert isinstance(found, QAbstractButton), name
        assert found.isVisible(), f"{name} can't be seen"
        assert found.isEnabled(), f"{name} can't be pressed"
        QTest.mouseClick(found, Qt.MouseButton.LeftButton)

    def take_in(self, rated: str = "12 V") -> None:
        intake = self.window.intake
        line = intake.kind.lineEdit()
        assert line is not None
        QTest.keyClicks(line, "Bilge pump")
        QTest.keyClicks(intake.rated, rated)
        QTest.keyClicks(intake.complaint, "hums, does not turn")
        self.click("intake_open")

    def make_safe(self) -> None:
        for index in range(6):
            self.click(f"safe_{index}_done")
        self.click("safe_go_on")

    def begin_probe(self) -> FakeLink:
        self.take_in()
        self.make_safe()
        self.click("probe_start")
        return self.links[-1]

    def until_over(self) -> None:
        """The run's end; questions are answered by their first button."""

        def over() -> bool:
            card = self.window.free.question
            if card.isVisible():
                QTest.mouseClick(card.buttons[0], Qt.MouseButton.LeftButton)
            return not self.session.run.on

        self.bot.waitUntil(over, timeout=20_000)


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with Ledger.open(tmp_path / "harbour.db") as opened:
        yield opened


@pytest.fixture
def desk(request: pytest.FixtureRequest, qtbot: QtBot, ledger: Ledger) -> Iterator[Desk]:
    """`request.param`, where there is one: what the demonstration is of."""
    window = MainWindow(theme.LIGHT, resource=RESOURCE, demo=getattr(request, "param", ""))
    window.wear(theme.LIGHT)
    made: Desk

    def make_link(request: Request) -> FakeLink:
        return made.make_link(request)

    session = Session(window, ledger, make_link, resource=RESOURCE, settings=lambda: made.owner)
    made = Desk(window, session, ledger, qtbot)
    window.show()
    yield made
    gone(window)


def gone(window: MainWindow) -> None:
    """Closes a window for good: one that is left would be dressed anew with every later one."""
    window.may_close = lambda: True
    window.close()
    window.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


@pytest.fixture
def lot_desk(qtbot: QtBot, tmp_path: Path) -> Iterator[LotDesk]:
    """A window whose ledger's time passes only with each run."""
    clock = VirtualClock(utc_start=datetime(2026, 11, 25, 8, tzinfo=UTC))
    with Ledger.open(tmp_path / "harbour.db", clock=clock) as opened:
        window = MainWindow(theme.LIGHT, resource=RESOURCE)
        window.wear(theme.LIGHT)
        made = LotDesk(window, opened, clock)
        yield made
        made.curving.errands.stop()
        gone(window)
