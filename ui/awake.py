"""The computer stays awake while an output may be on, and where it goes to sleep all the same, output off goes first.

Where the system has nothing for that, nothing is held and nothing breaks: the bench process notices a sleep when it is
over, and ends the run then.
"""

import contextlib
import subprocess
import sys
from collections.abc import Callable
from typing import Protocol

from PySide6.QtCore import QObject, SignalInstance

from ui import texts
from ui.off_state import OffState
from ui.running import Running

END_WITHIN_S = 0.3
"""What waits for the end of its input ends in a few ms."""


class Wakeful(Protocol):
    """The seam to the system. Nothing of it blocks or raises; each call may come twice."""

    @property
    def sleeps(self) -> SignalInstance | None:
        """Comes before the computer sleeps; it waits for `let_sleep` for as long as the system allows."""

    def hold(self) -> None: ...
    def let_sleep(self) -> None: ...
    def release(self) -> None: ...


class Awake(QObject):
    """Follows a run: held from its beginning until the output is known to be off."""

    def __init__(self, running: Running, system: Wakeful) -> None:
        super().__init__(running)
        self._running, self._system = running, system
        running.off.changed.connect(self._follow)
        running.live.ended.connect(lambda _: self._let_sleep_where_off())
        self._before = running.off.state
        self._asked = False
        if system.sleeps is not None:
            system.sleeps.connect(self._go_off_first)

    def _follow(self, state: OffState) -> None:
        before, self._before = self._before, state
        if state is before:
            return
        if state is OffState.RUNNING:
            self._system.hold()
        elif self._running.off.may_begin:
            self._system.release()

    def _go_off_first(self) -> None:
        self._asked = True
        self._running.output_off(texts.STOP_SLEEPS)
        self._let_sleep_where_off()

    def _let_sleep_where_off(self) -> None:
        """The run is over: whether it confirmed "off" or not, more than that can't be done in the time."""
        if self._asked and not self._running.live.on:
            self._asked = False
            self._system.let_sleep()


class Nothing:
    """A system that lets us do nothing."""

    sleeps: SignalInstance | None = None

    def hold(self) -> None: ...
    def let_sleep(self) -> None: ...
    def release(self) -> None: ...


class HeldByChildren:
    """Idle sleep is held off for as long as a program of the system's runs, which ends with its input or with us.

    For macOS: `caffeinate -i -w PID`. Nobody tells us there before another sleep.
    """

    sleeps: SignalInstance | None = None

    def __init__(self, *commands: list[str]) -> None:
        self._commands = commands
        self._children: list[subprocess.Popen[bytes]] = []

    def hold(self) -> None:
        if not self._children:
            self._children = [child for child in map(start, self._commands) if child is not None]

    def let_sleep(self) -> None: ...

    def release(self) -> None:
        children, self._children = self._children, []
        for child in children:
            end(child)


def start(command: list[str]) -> subprocess.Popen[bytes] | None:
    """A program that holds something while its input is open; in a group of its own, so that Ctrl-C passes it by.

    None where there is no such program.
    """
    try:
        return subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True
        )
    except OSError:
        return None


def end(child: subprocess.Popen[bytes]) -> None:
    with contextlib.suppress(OSError):
        if child.stdin is not None:
            child.stdin.close()
    try:
        child.wait(timeout=END_WITHIN_S)
    except subprocess.TimeoutExpired:
        child.kill()
        child.wait()


class ExecutionState:
    """Windows: the thread says that the system is needed. `tell` takes the flags; it is asked from the window's thread
    each time, since what is said holds for the thread. Source: SetThreadExecutionState, winbase.h."""

    CONTINUOUS, SYSTEM_REQUIRED = 0x80000000, 0x00000001
    sleeps: SignalInstance | None = None

    def __init__(self, tell: Callable[[int], object]) -> None:
        self._tell = tell

    def hold(self) -> None:
        self._tell(self.CONTINUOUS | self.SYSTEM_REQUIRED)

    def let_sleep(self) -> None: ...

    def release(self) -> None:
        self._tell(self.CONTINUOUS)


def system_here(parent: QObject, pid: int, platform: str = sys.platform) -> Wakeful:
    """What this computer has. Imported late: the window begins without it."""
    if platform.startswith("linux"):
        from ui.awake_login import login_here

        return login_here(parent) or Nothing()
    if platform == "darwin":
        return HeldByChildren(["caffeinate", "-i", "-w", str(pid)])
    if platform == "win32":
        import ctypes

        windll = getattr(ctypes, "windll")  # noqa: B009  only there
        return ExecutionState(windll.kernel32.SetThreadExecutionState)
    return Nothing()
