"""Sleep under Linux: the login manager is asked on the system's bus and through its own small program.

`systemd-inhibit` holds what it holds for as long as its child runs, and its child is one that ends with our pipe: so
what is held ends with this program however it ends. A file descriptor over Qt's D-Bus can't be had from Python.
Source: org.freedesktop.login1, "Inhibit" and "PrepareForSleep"; the manager waits InhibitDelayMaxSec, 5 s as it comes.
"""

import shutil
import subprocess

from PySide6.QtCore import SLOT, QObject, Signal, SignalInstance, Slot

from ui import awake, texts

SERVICE, PATH, MANAGER = "org.freedesktop.login1", "/org/freedesktop/login1", "org.freedesktop.login1.Manager"
PROGRAM = "systemd-inhibit"


class Login(QObject):
    """Idle sleep is blocked and any other is put off while held. `listens`: whether the bus would tell of a sleep."""

    _sleeps = Signal()

    def __init__(self, parent: QObject, program: str) -> None:
        super().__init__(parent)
        self._program = program
        self._blocks: subprocess.Popen[bytes] | None = None
        self._delays: subprocess.Popen[bytes] | None = None
        self._held = False
        self.listens = self._listen()

    @property
    def sleeps(self) -> SignalInstance:
        return self._sleeps

    def _listen(self) -> bool:
        from PySide6.QtDBus import QDBusConnection

        bus = QDBusConnection.systemBus()
        return bus.isConnected() and bus.connect(SERVICE, PATH, MANAGER, "PrepareForSleep", self, SLOT("prepare(bool)"))  # type: ignore[call-overload]

    @Slot(bool)
    def prepare(self, begins: bool) -> None:
        if begins:
            self._sleeps.emit()
        elif self._held:
            self.hold()  # awake again, and the output is still not known to be off

    def hold(self) -> None:
        self._held = True
        if self._blocks is None:
            self._blocks = self._inhibit("idle", "block")
        if self._delays is None:
            self._delays = self._inhibit("sleep", "delay")

    def let_sleep(self) -> None:
        delays, self._delays = self._delays, None
        if delays is not None:
            awake.end(delays)

    def release(self) -> None:
        self._held = False
        self.let_sleep()
        blocks, self._blocks = self._blocks, None
        if blocks is not None:
            awake.end(blocks)

    def _inhibit(self, what: str, mode: str) -> subprocess.Popen[bytes] | None:
        return awake.start(
            [self._program, f"--what={what}", f"--mode={mode}", "--who=benchlog", f"--why={texts.AWAKE_WHY}", "cat"]
        )


def login_here(parent: QObject) -> Login | None:
    """None where there is no such manager."""
    program = shutil.which(PROGRAM)
    return Login(parent, program) if program is not None else None
