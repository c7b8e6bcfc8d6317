"""A supply that ignores OFF: said as the last line, acknowledged by a person, and said again until then."""

import json
import os
import select
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from functools import partial
from pathlib import Path

import pytest

from benchlog.cli.words import NOT_OFF, OFF_BY_HAND
from benchlog.ledger.off_by_hand import not_confirmed
from benchlog.ledger.store import Ledger
from tests.processes import BenchProcess, TerminalProcess

pytestmark = pytest.mark.skipif(os.name != "posix", reason="a terminal with a person at it is made with a pty")

WAIT_S = 30.0
READY = "motor connected?"
ASKED = OFF_BY_HAND


class Person:
    """`benchlog recover` on a terminal of its own, somebody at its keyboard."""

    def __init__(self, resource: str, ledger: Path, *options: str) -> None:
        import pty

        self._keyboard, screen = pty.openpty()
        self.process = subprocess.Popen(
            [
                *(sys.executable, "-P", "-m", "benchlog.cli", "recover", "--supply", resource),
                *("--rated-voltage", "12", "--ledger", str(ledger), *options),
            ],
            stdin=screen,
            stdout=screen,
            stderr=screen,
            cwd="/",
            start_new_session=True,
            # Else it ignores Ctrl-C wherever the tests were started in the background, or something before them did.
            preexec_fn=partial(signal.signal, signal.SIGINT, signal.SIG_DFL),
        )
        os.close(screen)
        self.seen = ""

    def until(self, text: str) -> None:
        """Reads on until it was said since the last key."""
        until_s = time.perf_counter() + WAIT_S
        while text not in self.seen:
            assert time.perf_counter() < until_s, self.seen
            if not self._read():
                raise AssertionError(f"ended without {text!r}: {self.seen}")

    def types(self, text: str) -> None:
        self.seen = ""
        os.write(self._keyboard, text.encode())

    def ended(self) -> int:
        until_s = time.perf_counter() + WAIT_S
        while self._read():
            assert time.perf_counter() < until_s, self.seen
        return self.process.wait(timeout=WAIT_S)

    def interrupts(self) -> int:
        """Presses Ctrl-C as people do, again where nothing came of it; the exit status.

        Once is not enough for a test: the interpreter looks for a signal before it begins to wait for a line and not
        after, so one that comes between the two is only seen with the next key (bare `input()`, loaded: 8 in 150).
        """
        until_s, pressed_s = time.perf_counter() + WAIT_S, 0.0
        while self._read():
            now_s = time.perf_counter()
            assert now_s < until_s, self.seen
            if now_s - pressed_s >= 1.0:
                self.process.send_signal(signal.SIGINT)
                pressed_s = now_s
        return self.process.wait(timeout=WAIT_S)

    def _read(self) -> bool:
        if not select.select([self._keyboard], [], [], 0.1)[0]:
            return True
        try:
            data = os.read(self._keyboard, 65536)
        except OSError:  # Linux: nobody holds the other end any more
            return False
        self.seen += data.decode("utf-8", errors="replace")
        return bool(data)

    def close(self) -> None:
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait()
        os.close(self._keyboard)


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[BenchProcess]:
    """One that takes no OFF at all."""
    bench = BenchProcess(tmp_path, "open", "--ignore-off", "1000000")
    yield bench
    bench.close()


def left_open(bench: BenchProcess, ledger: Path) -> None:
    """A run with nobody there, filed as not confirmed off."""
    terminal = TerminalProcess(bench.resource, ledger)
    try:
        _, said, err = terminal.ended(60.0)
    finally:
        terminal.close()
    assert said[-1]["output_confirmed_off"] is False
    assert err.splitlines()[-1] == f"benchlog: {NOT_OFF}"


def test_the_last_line_says_so_and_waits_until_a_person_has_switched_it_off(
    bench: BenchProcess, tmp_path: Path
) -> None:
    ledger = tmp_path / "ledger.db"
    person = Person(bench.resource, ledger)
    try:
        person.until(READY)
        assert "Ceilings: 12 V (from the job)" in person.seen
        person.types("y\n")
        person.until(ASKED)
        said = [line for line in person.seen.replace("\r", "").split("\n") if line.strip()]
        assert said[-1].startswith(ASKED)
        assert f"*** {NOT_OFF} ***" in said[-2]
        person.types("yes\n")  # anything else is not it
        person.until(ASKED)
        assert NOT_OFF in person.seen
        assert person.process.poll() is None
        person.types("off\n")
        assert person.ended() == 3
    finally:
        person.close()
    with Ledger.open(ledger) as book:
        assert not_confirmed(book) == []
        (entry,) = book.entries(1)
        assert entry.text.endswith("the supply was switched off by hand")


def test_who_leaves_instead_is_asked_before_the_next_run_on_this_supply(bench: BenchProcess, tmp_path: Path) -> None:
    ledger = tmp_path / "ledger.db"
    left_open(bench, ledger)
    before = len(bench.truth())
    person = Person(bench.resource, ledger)
    try:
        person.until(ASKED)
        assert "NOT CONFIRMED: run 1 of job 0001" in person.seen
        person.types("\x04")
        assert person.ended() == 2
        assert "nobody has said" in person.seen
    finally:
        person.close()
    assert len(bench.truth()) == before
    with Ledger.open(ledger) as book:
        assert len(not_confirmed(book)) == 1

    person = Person(bench.resource, ledger)
    try:
        person.until(ASKED)
        person.types("off\n")
        person.until(READY)
        person.types("n\n")
        assert person.ended() == 2
    finally:
        person.close()
    with Ledger.open(ledger) as book:
        assert not_confirmed(book) == []


def test_with_yes_it_is_said_before_anything_is_done_and_goes_on(bench: BenchProcess, tmp_path: Path) -> None:
    ledger = tmp_path / "ledger.db"
    left_open(bench, ledger)
    terminal = TerminalProcess(bench.resource, ledger)
    try:
        _, said, err = terminal.ended(60.0)
    finally:
        terminal.close()
    assert err.splitlines()[0].startswith("NOT CONFIRMED: run 1 of job 0001")
    assert said[-1]["run"] == 2
    elsewhere = subprocess.run(
        [
            *(sys.executable, "-P", "-m", "benchlog.cli", "recover", "--supply", "TCPIP::127.0.0.1::9::SOCKET"),
            *("--rated-voltage", "12", "--yes", "--json", "--ledger", str(ledger)),
        ],
        capture_output=True,
        text=True,
        timeout=60.0,
        stdin=subprocess.DEVNULL,
    )
    assert "NOT CONFIRMED" not in elsewhere.stderr
    assert json.loads(elsewhere.stdout.splitlines()[-1])["outcome"] == "refused"


def test_ctrl_c_at_the_question_leaves_it_open(bench: BenchProcess, tmp_path: Path) -> None:
    ledger = tmp_path / "ledger.db"
    person = Person(bench.resource, ledger)
    try:
        person.until(READY)
        person.types("y\n")
        person.until(ASKED)
        assert person.interrupts() == 3
        assert "asked again" in person.seen
    finally:
        person.close()
    with Ledger.open(ledger) as book:
        assert len(not_confirmed(book)) == 1
