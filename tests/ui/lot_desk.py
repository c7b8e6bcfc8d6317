"""A window on the curves room with replayed captures, and a person who presses what can be seen."""

from dataclasses import dataclass, field

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QWidget

from benchlog.bench.frames import Request
from benchlog.clock import VirtualClock
from benchlog.ledger.lots import lots, units
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Job, Lot, Motor, RunKind, Unit
from benchlog.settings import Settings
from tests.ui import fake_starts  # noqa: F401  its script is found by the kind of run
from tests.ui.fake_link import FakeLink
from ui.curves.curving import Curving
from ui.main_window import CURVES_ROOM, MainWindow
from ui.session import Session

RESOURCE = "TCPIP::192.0.2.7::5025::SOCKET"
BETWEEN_S = 60.0


@dataclass
class LotDesk:
    """`beeps`: how often it sounded. A run lasts no time: `run_until_over` plays it."""

    window: MainWindow
    ledger: Ledger
    clock: VirtualClock
    session: Session = field(init=False)
    scenario: str = "good:1"
    per_poll_s: float = 60.0
    beeps: int = 0
    links: list[FakeLink] = field(default_factory=list)
    owner: Settings = field(default_factory=Settings)

    def __post_init__(self) -> None:
        self.session = Session(
            self.window, self.ledger, self.make_link, resource=RESOURCE, settings=lambda: self.owner, beep=self._beep
        )
        self.window.curves.side.next.now_s = self.clock.now
        self.window.show()

    def _beep(self) -> None:
        self.beeps += 1

    @property
    def curving(self) -> Curving:
        return self.session.curving

    def make_link(self, request: Request) -> FakeLink:
        scenario = self.scenario if request.kind is RunKind.START_UP else "freed"
        per_poll_s = 900.0 if request.kind is RunKind.RUN_IN else self.per_poll_s
        link = FakeLink(request, scenario=scenario, per_poll_s=per_poll_s)
        self.clock.wait(self.clock.now() + BETWEEN_S)
        link.started_utc = self.clock.utc()
        self.links.append(link)
        return link

    def click(self, name: str) -> None:
        found = self.window.findChild(QAbstractButton, name)
        assert isinstance(found, QAbstractButton), name
        assert found.isVisible(), f"{name} can't be seen"
        assert found.isEnabled(), f"{name} can't be pressed: {found.toolTip()}"
        QTest.mouseClick(found, Qt.MouseButton.LeftButton)

    def to_the_room(self) -> None:
        self.session.show_room(CURVES_ROOM)
        self.settle()

    def settle(self) -> None:
        self.curving.settle()
        QCoreApplication.processEvents()

    def scan(self, serial: str) -> None:
        """As a scanner types: at once, with Enter, into whatever has the focus."""
        for character in serial:
            QTest.keyClicks(self._focus(), character)
        QTest.keyClick(self._focus(), Qt.Key.Key_Return)

    def space(self) -> None:
        """The space bar, by a person who has looked."""
        self.clock.wait(self.clock.now() + 1.0)
        QTest.keyClick(self._focus(), Qt.Key.Key_Space)

    def _focus(self) -> QWidget:
        return self.window.focusWidget() or self.window

    def run_until_over(self) -> None:
        while self.session.run.on:
            self.session.run.poll()
        self.settle()

    def lock_test(self, volts: str = "3 V", starts: str = "2") -> None:
        self.click("curves_page_2")
        form = self.window.curves.tests
        for edit, text in (
            (form.name, "cold start"),
            (form.quantities["volts"], volts),
            (form.quantities["on_s"], "0,9"),
            (form.starts, starts),
        ):
            edit.clear()
            QTest.keyClicks(edit, text)
        form.who.setText("Mira")
        self.click("test_lock")
        self.settle()

    def open_lot(self, rated: str = "6 V") -> None:
        self.click("curves_new_lot")
        self.settle()
        form = self.window.curves.lot_form
        QTest.keyClicks(form.name, "2026-11")
        form.kind.setCurrentText("Cabin fan")
        QTest.keyClicks(form.rated, rated)
        self.click("lot_open")
        self.settle()

    def take_job(self, rated_volts: float = 6.0) -> Job:
        """One taken in and on the bench, and the room in front."""
        made = self.ledger.new_job(
            item=Item(kind="Cabin fan", serial="CF-1"),
            motor=Motor(rated_volts=rated_volts),
            complaint="slow",
            load_state="dry, uncoupled",
        )
        self.session.open_job(made.id)
        self.to_the_room()
        return made

    def ready(self, *, checked: bool = True) -> None:
        """A lot, the tick, and the shift's checks."""
        self.to_the_room()
        self.lock_test()
        self.open_lot()
        self.click("curves_clear")
        if checked:
            self.click("curves_check")
            self.click("curves_check_begin")
            self.run_until_over()

    def measure(self, serial: str, scenario: str) -> None:
        self.scenario = scenario
        field_of = self.window.curves.side.next.serial
        field_of.setFocus()
        QTest.keyClicks(field_of, serial)
        QTest.keyClick(field_of, Qt.Key.Key_Return)
        self.click("curves_start")
        self.run_until_over()

    def with_limits(self) -> None:
        """Five known good units, and limits from them."""
        self.ready()
        for number in range(1, 6):
            self.measure(f"F-{number}", f"good:{number}")
        self.click("curves_to_limits")
        QTest.keyClicks(self._focus(), "Mira")
        self.click("curves_make_limits")
        self.settle()
        self.click("curves_page_0")

    def lot(self) -> Lot:
        return lots(self.ledger)[0]

    def units(self) -> list[Unit]:
        return units(self.ledger, self.lot())
