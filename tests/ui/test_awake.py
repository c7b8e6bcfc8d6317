"""The computer stays awake while an output may be on, and off goes before a sleep."""

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import IO

import pytest
from PySide6.QtCore import QObject, Signal, SignalInstance

from tests.ui.conftest import Desk
from ui import texts
from ui.awake import Awake, ExecutionState, HeldByChildren, Nothing
from ui.off_state import OffState

ROOT = Path(__file__).parents[2]


class FakeSystem(QObject):
    _sleeps = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.asked: list[str] = []

    @property
    def sleeps(self) -> SignalInstance:
        return self._sleeps

    def hold(self) -> None:
        self.asked.append("hold")

    def let_sleep(self) -> None:
        self.asked.append("let sleep")

    def release(self) -> None:
        self.asked.append("release")


def test_it_is_held_for_as_long_as_a_run_is_on(desk: Desk) -> None:
    system = FakeSystem()
    Awake(desk.session.running, system)
    desk.begin_probe()
    assert system.asked == ["hold"]
    desk.until_over()
    assert system.asked == ["hold", "release"]


def test_before_a_sleep_off_goes_first_and_the_system_waits_for_its_confirmation(desk: Desk) -> None:
    system = FakeSystem()
    Awake(desk.session.running, system)
    link = desk.begin_probe()
    link.hold_back_end = True
    system.sleeps.emit()
    assert link.stops == [texts.STOP_SLEEPS]
    assert system.asked == ["hold"]
    link.hold_back_end = False
    desk.until_over()
    assert "let sleep" in system.asked


def test_an_output_that_is_not_confirmed_off_keeps_it_awake_but_bars_no_sleep(desk: Desk) -> None:
    system = FakeSystem()
    Awake(desk.session.running, system)
    desk.confirms = False
    desk.begin_probe()
    system.sleeps.emit()
    desk.until_over()
    assert system.asked == ["hold", "let sleep"]
    desk.click("off_acknowledge")
    assert system.asked == ["hold", "let sleep", "release"]


def test_with_no_run_on_a_sleep_waits_for_nothing(desk: Desk) -> None:
    system = FakeSystem()
    Awake(desk.session.running, system)
    system.sleeps.emit()
    assert system.asked == ["let sleep"]


def test_where_the_system_has_nothing_a_run_goes_on(desk: Desk) -> None:
    Awake(desk.session.running, Nothing())
    desk.begin_probe()
    desk.until_over()
    assert desk.session.off.state is OffState.CONFIRMED


def test_a_program_that_is_not_there_breaks_nothing() -> None:
    system = HeldByChildren(["benchlog-no-such-program"])
    system.hold()
    system.release()


def test_a_program_that_holds_runs_once_and_ends_with_the_run() -> None:
    system = HeldByChildren([sys.executable, "-c", "import sys; sys.stdin.read()"])
    system.hold()
    system.hold()
    (child,) = system._children
    assert child.poll() is None
    system.release()
    assert child.poll() is not None


def test_windows_is_told_that_the_system_is_needed_and_then_that_it_is_not() -> None:
    """Source: SetThreadExecutionState in Microsoft's documentation, ES_CONTINUOUS and ES_SYSTEM_REQUIRED."""
    told: list[int] = []
    system = ExecutionState(told.append)
    system.hold()
    system.release()
    assert told == [0x80000001, 0x80000000]


# on a bus of its own

INHIBIT = """#!/bin/sh
# stands for systemd-inhibit: it runs what comes last, and tells a pipe what is held and let go
echo "held $1 $2" > "$HELD_PIPE"
cat > /dev/null
echo "let go $1 $2" > "$HELD_PIPE"
"""
IDLE, SLEEP = "--what=idle --mode=block", "--what=sleep --mode=delay"


def started(*command: str, **environment: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        command,
        cwd=ROOT,
        env={**os.environ, **environment},
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    )


def line_of(process: subprocess.Popen[str]) -> str:
    assert process.stdout is not None
    return process.stdout.readline().strip()


def tell(process: subprocess.Popen[str], line: str) -> None:
    assert process.stdin is not None
    process.stdin.write(line + "\n")
    process.stdin.flush()


@dataclass
class Three:
    """A login manager on a bus, a program that holds awake, and what is held and let go."""

    manager: subprocess.Popen[str]
    holder: subprocess.Popen[str]
    pipe: IO[str]

    def told(self, lines: int = 1) -> set[str]:
        return {self.pipe.readline().strip() for _ in range(lines)}


@pytest.fixture
def three(tmp_path: Path) -> Iterator[Three]:
    if not sys.platform.startswith("linux") or shutil.which("dbus-daemon") is None:
        pytest.skip("there is no dbus-daemon")
    program, held = tmp_path / "systemd-inhibit", tmp_path / "held"
    program.write_text(INHIBIT, encoding="ascii")
    program.chmod(0o755)
    os.mkfifo(held)
    running: list[subprocess.Popen[str]] = []
    with open(os.open(held, os.O_RDWR), encoding="ascii") as pipe:
        try:
            running.append(started("dbus-daemon", "--session", "--nofork", "--print-address"))
            address = line_of(running[0])
            running.append(started(sys.executable, "-m", "tests.ui.login_on_a_bus", address))
            assert line_of(running[1]) == "ready"
            path = f"{tmp_path}{os.pathsep}{os.environ['PATH']}"
            running.append(
                started(
                    *(sys.executable, "-m", "tests.ui.on_the_bus"),
                    DBUS_SYSTEM_BUS_ADDRESS=address,
                    HELD_PIPE=str(held),
                    PATH=path,
                )
            )
            assert line_of(running[2]) == "listens"
            yield Three(running[1], running[2], pipe)
        finally:
            for process in reversed(running):
                process.kill()
                process.communicate()


def test_under_linux_idle_is_blocked_and_sleep_put_off_until_off_went_first(three: Three) -> None:
    tell(three.holder, "hold")
    assert three.told(2) == {f"held {IDLE}", f"held {SLEEP}"}
    tell(three.manager, "sleep")
    assert line_of(three.holder) == "sleeps"
    tell(three.holder, "let sleep")
    assert three.told() == {f"let go {SLEEP}"}
    tell(three.manager, "awake")
    assert three.told() == {f"held {SLEEP}"}
    three.holder.kill()
    assert three.told(2) == {f"let go {IDLE}", f"let go {SLEEP}"}
