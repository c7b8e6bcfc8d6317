"""The bench over loopback TCP in real time, as a process of its own and as a server in this one."""

import os
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from importlib.resources import files
from pathlib import Path

import msgspec
import pytest

from drivers.dialect import shipped
from drivers.simulated.__main__ import main
from drivers.simulated.bench import Bench
from drivers.simulated.scenario import load
from drivers.simulated.serve import LONGEST_LINE, Server
from drivers.simulated.truth import OutputTruth, ReadingTruth, Truth

READ = ":MEAS:VOLT?;:MEAS:CURR?"
PATIENCE_S = 10.0


class Line:
    """One TCP connection that speaks lines."""

    def __init__(self, port: int) -> None:
        self.link = socket.create_connection(("127.0.0.1", port), timeout=PATIENCE_S)
        self.link.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        self._received = b""

    def say(self, message: str, terminator: str = "\n") -> None:
        self.link.sendall((message + terminator).encode())

    def hear(self) -> str:
        while b"\n" not in self._received:
            data = self.link.recv(4096)
            if not data:
                raise ConnectionResetError("the server hung up")
            self._received += data
        line, _, self._received = self._received.partition(b"\n")
        return line.decode()

    def ask(self, message: str) -> str:
        self.say(message)
        return self.hear()

    def close(self) -> None:
        self.link.close()


def dropped_after(line: Line, *, piece: str, at_most: int) -> bool:
    """Whether the server hangs up on a line that never ends."""
    line.link.settimeout(0.05)
    for _ in range(at_most):
        try:
            line.say(piece, "")
            if line.link.recv(1) == b"":
                return True
        except TimeoutError:
            continue
        except OSError:
            return True
    return False


@contextmanager
def serving(name: str = "free", *, clients: int = 0, reply_s: float | None = None) -> Iterator[tuple[Server, Bench]]:
    """A server in a thread of this process, stopped and joined at the end."""
    bench = Bench(load(name))
    bench.instrument.reply_s = reply_s
    server = Server(bench, clients=clients)
    thread = threading.Thread(target=server.run)
    thread.start()
    try:
        yield server, bench
    finally:
        server.stop()
        thread.join(PATIENCE_S)
        assert not thread.is_alive()


@contextmanager
def process(*arguments: str) -> Iterator[tuple["subprocess.Popen[str]", int]]:
    """The simulator as a process; gives it and its port, and ends it by its own handle."""
    with subprocess.Popen(
        [sys.executable, "-m", "drivers.simulated", *arguments],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    ) as child:
        try:
            assert child.stdout is not None
            words = child.stdout.readline().split()
            assert words[:2] == ["listening", "on"]
            scheme, host, port, kind = words[2].split("::")
            assert (scheme, host, kind) == ("TCPIP", "127.0.0.1", "SOCKET")
            yield child, int(port)
        finally:
            if child.poll() is None:
                child.kill()


def test_messages_end_with_a_newline_and_a_carriage_return_is_tolerated() -> None:
    with serving() as (server, _):
        line = Line(server.port)
        line.say("VOLT 3;CURR 1", "\r\n")
        assert line.ask("VOLT?;CURR?") == "3.000;1.000"
        line.close()


def test_a_message_may_arrive_in_pieces_and_several_in_one() -> None:
    with serving() as (server, _):
        line = Line(server.port)
        line.say("VO", "")
        line.say("LT 4\nVOLT?\nCU", "")
        assert line.hear() == "4.000"
        line.say("RR?")
        assert line.hear() == "0.500"
        line.close()


def test_a_reading_takes_its_latency_and_the_motor_really_runs() -> None:
    with serving() as (server, _):
        line = Line(server.port)
        line.say("VOLT 9;CURR 2;:OUTP ON")
        began_s = time.perf_counter()
        readings = [line.ask(READ).split(";") for _ in range(60)]
        took_s = time.perf_counter() - began_s
        assert 60 * 0.008 <= took_s < 60 * 0.008 + 2.0
        amps = [float(reading[1]) for reading in readings]
        assert max(amps) > 1.0
        assert 0.05 < amps[-1] < 0.5
        line.close()


def test_latency_can_be_nothing() -> None:
    with serving(reply_s=0.0) as (server, _):
        line = Line(server.port)
        times = []
        for _ in range(50):
            began_s = time.perf_counter()
            line.ask(READ)
            times.append(time.perf_counter() - began_s)
        assert sorted(times)[25] < 0.006  # the usual latency of a reading is 8 ms
        line.close()


def test_the_model_keeps_up_with_the_clock_without_being_asked() -> None:
    with serving() as (server, bench):
        line = Line(server.port)
        line.say("VOLT 9;CURR 2;:OUTP ON")
        assert line.ask("OUTP?") == "1"
        lags = []
        for _ in range(40):
            threading.Event().wait(0.01)
            assert bench.now_s is not None
            lags.append(time.perf_counter() - bench.now_s)
        assert sorted(lags)[20] < 0.02
        line.close()


def test_a_single_client_supply_leaves_the_second_unanswered_until_the_first_has_gone() -> None:
    with serving(clients=1) as (server, _):
        first = Line(server.port)
        assert first.ask("*OPC?") == "1"
        second = Line(server.port)
        second.link.settimeout(0.2)
        second.say("*IDN?")
        with pytest.raises(TimeoutError):
            second.hear()
        first.close()
        second.link.settimeout(PATIENCE_S)
        assert second.hear().startswith("Harbour Workshop")
        second.close()


def test_two_clients_each_get_their_own_replies() -> None:
    with serving() as (server, _):
        one, other = Line(server.port), Line(server.port)
        for index in range(20):
            one.say(f"VOLT {index / 10};VOLT?")
            other.say("*IDN?")
            assert one.hear() == f"{index / 10:.3f}"
            assert other.hear().startswith("Harbour")
        one.close()
        other.close()


def test_a_client_that_never_ends_its_line_is_dropped_and_the_others_are_served() -> None:
    with serving() as (server, _):
        good, endless = Line(server.port), Line(server.port)
        assert dropped_after(endless, piece="V" * (LONGEST_LINE // 4), at_most=100)
        assert good.ask("*OPC?") == "1"
        good.close()
        endless.close()


def test_bytes_that_are_no_text_are_refused_and_the_line_lives_on() -> None:
    with serving() as (server, _):
        line = Line(server.port)
        line.link.sendall(b"\xff\xfe\x00VOLT 3\n")
        assert line.ask("SYST:ERR?").startswith("-102,")
        assert line.ask("VOLT?") == "0.000"
        line.close()


def test_a_client_that_leaves_in_the_middle_of_a_reply_disturbs_nobody() -> None:
    with serving() as (server, _):
        for _ in range(10):
            rude = Line(server.port)
            rude.say(READ)
            rude.close()
        polite = Line(server.port)
        assert polite.ask("*OPC?") == "1"
        polite.close()


def test_only_loopback_listens() -> None:
    with serving() as (server, _):
        assert server.resource == f"TCPIP::127.0.0.1::{server.port}::SOCKET"
        with pytest.raises(OSError, match=r".*"):
            # Another address of the same loopback net: it would answer if the server listened everywhere.
            socket.create_connection(("127.0.0.2", server.port), timeout=0.5)


def test_as_a_process_it_writes_the_truth_as_it_happens_in_the_callers_clock(tmp_path: Path) -> None:
    file = tmp_path / "truth.jsonl"
    with process("--scenario", "stuck-soft", "--truth", str(file), "--seed", "3", "--until-stdin-closes") as (
        child,
        port,
    ):
        line = Line(port)
        before_s = time.perf_counter()
        line.say("VOLT 6;CURR 1.5;:OUTP ON")
        volts, amps = (float(part) for part in line.ask(READ).split(";"))
        line.say("OUTP OFF")
        assert line.ask("OUTP?") == "0"
        after_s = time.perf_counter()
        records = [msgspec.json.decode(text, type=Truth) for text in file.read_bytes().splitlines()]
        line.close()
        assert child.stdin is not None
        child.stdin.close()
        assert child.wait(PATIENCE_S) == 0
    on, reading, off = records
    assert isinstance(on, OutputTruth)
    assert isinstance(off, OutputTruth)
    assert isinstance(reading, ReadingTruth)
    assert (on.on, off.on) == (True, False)
    assert (reading.reported_volts, reading.reported_amps) == (volts, amps)
    assert reading.holding
    if sys.platform == "linux":  # elsewhere each process may count from its own beginning
        assert before_s <= on.at_s <= reading.at_s <= off.at_s <= after_s


@pytest.mark.skipif(sys.platform == "win32", reason="there is no SIGTERM to catch")
@pytest.mark.parametrize("more", [(), ("--until-stdin-closes",)])
def test_a_request_to_terminate_ends_it_cleanly(more: tuple[str, ...]) -> None:
    with process("--scenario", "open", "--reply-ms", "0", *more) as (child, port):
        line = Line(port)
        assert line.ask("*IDN?") == "Harbour Workshop,Simulated bench supply,open,1.0"
        child.terminate()
        assert child.wait(PATIENCE_S) == 0
        line.close()
        assert child.stderr is not None
        assert child.stderr.read() == ""


def test_quirks_are_taken_from_the_command_line() -> None:
    with process("--scenario", "open", "--clients", "1", "--ignore-off", "1", "--volts-on-terminals", "3.7") as (
        _,
        port,
    ):
        line = Line(port)
        threading.Event().wait(0.05)
        assert float(line.ask("MEAS:VOLT?")) == pytest.approx(3.7, abs=0.1)
        line.say("OUTP ON")
        line.say("OUTP OFF")
        assert line.ask("OUTP?") == "1"
        line.say("OUTP OFF")
        assert line.ask("OUTP?") == "0"
        line.close()


def test_a_measurement_array_is_there_where_the_command_line_asks_for_it() -> None:
    with process("--scenario", "open", "--array") as (_, port):
        line = Line(port)
        line.say("SENS:SWE:TINT 0.0002;POIN 50;:INIT")
        threading.Event().wait(0.05)
        assert line.ask("FETC:ARR:VOLT?").count(",") == 49
        assert line.ask("SYST:ERR?") == '0,"No error"'
        line.close()


def test_what_hangs_on_the_clips_is_told_on_standard_input() -> None:
    with process("--scenario", "short", "--until-stdin-closes") as (child, port):
        assert child.stdin is not None
        assert child.stderr is not None
        line = Line(port)
        line.say(":VOLT 2;:CURR 1;:OUTP ON")

        def amps_after(told: str) -> float:
            assert child.stdin is not None
            assert child.stderr is not None
            child.stdin.write(told)
            child.stdin.flush()
            assert child.stderr.readline().rstrip() == f"on the terminals: {told.rstrip()}"
            time.sleep(0.2)
            return float(line.ask(":MEAS:CURR?"))

        assert amps_after("open\n") == pytest.approx(0.0, abs=0.01)
        assert amps_after("short\n") == pytest.approx(1.0, rel=0.02)
        assert 0.1 < amps_after("free 2\n") < 0.5
        for wrong in ("no-such", "free two", ""):
            child.stdin.write(f"{wrong}\n")
            child.stdin.flush()
            assert child.stderr.readline() != ""
        assert line.ask("SYST:ERR?") == '0,"No error"'
        line.close()
        child.stdin.close()
        assert child.wait(PATIENCE_S) == 0


@pytest.mark.parametrize("nobody", ["closed", "gone"])
def test_what_is_told_is_obeyed_and_its_end_heeded_where_nobody_reads_what_is_said(nobody: str) -> None:
    reads, writes = os.pipe()
    begun = "import os, sys; from drivers.simulated.__main__ import main; "
    begun += "os.close(2); sys.stderr = None; " if nobody == "closed" else ""
    with subprocess.Popen(
        [sys.executable, "-c", f"{begun}sys.exit(main(['--scenario', 'open', '--until-stdin-closes']))"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=writes,
        text=True,
    ) as child:
        os.close(writes)
        os.close(reads)
        assert child.stdin is not None
        assert child.stdout is not None
        line = Line(int(child.stdout.readline().split("::")[2]))
        for told in ("no-such\n", "short\n"):
            child.stdin.write(told)
            child.stdin.flush()
        time.sleep(0.3)
        line.say(":VOLT 2;:CURR 1;:OUTP ON")
        time.sleep(0.2)
        assert float(line.ask(":MEAS:CURR?")) == pytest.approx(1.0, rel=0.02)
        line.close()
        child.stdin.close()
        assert child.wait(PATIENCE_S) == 0


@pytest.mark.skipif(not hasattr(os, "openpty"), reason="needs a terminal")
def test_in_the_background_of_a_terminal_nothing_is_taken_and_in_the_foreground_it_is_again() -> None:
    ours, theirs = os.openpty()
    command = [sys.executable, "-c", IN_A_TERMINAL, str(theirs)]
    child = subprocess.Popen(command, stderr=subprocess.PIPE, pass_fds=[theirs])
    try:
        assert child.stderr is not None
        os.write(ours, b"short\n")
        assert child.stderr.readline() == b"in the background\n"
        assert child.stderr.readline() == b"on the terminals: short\n"
    finally:
        child.terminate()
        child.wait(PATIENCE_S)
        os.close(ours)
        os.close(theirs)
        assert child.stderr is not None
        child.stderr.close()


IN_A_TERMINAL = """
import fcntl, os, signal, subprocess, sys, termios, time
theirs = int(sys.argv[1])
os.setsid()
fcntl.ioctl(theirs, termios.TIOCSCTTY, 0)
signal.signal(signal.SIGTTOU, signal.SIG_IGN)
command = [sys.executable, "-m", "drivers.simulated", "--scenario", "open"]
bench = subprocess.Popen(command, stdin=theirs, stdout=subprocess.PIPE, process_group=0)
signal.signal(signal.SIGTERM, lambda *_: bench.kill())
bench.stdout.readline()
time.sleep(0.3)
sys.stderr.write("in the background\\n")
sys.stderr.flush()
os.tcsetpgrp(theirs, bench.pid)
bench.wait()
"""


def test_an_unknown_scenario_is_said_so_and_nothing_is_served(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["--scenario", "no-such"])
    assert ended.value.code == 2
    assert 'no scenario called "no-such"' in capsys.readouterr().err


def test_the_scenarios_can_be_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--list"]) == 0
    listed = capsys.readouterr().out.splitlines()
    assert any(entry.startswith("stuck-soft: ") for entry in listed)
    assert not any(entry.startswith("locked-hot") for entry in listed)


def test_a_dialect_and_habits_are_taken_from_the_command_line_by_name_or_file(tmp_path: Path) -> None:
    path = tmp_path / "own.toml"
    path.write_text((files("drivers.dialects") / "scpi-1999-suffix.toml").read_text(encoding="utf-8"), encoding="utf-8")
    asked = ("--scenario", "open", "--quirk", "units", "--quirk", "slow", "--second", "short")
    with process("--speaks", str(path), *asked) as (_, port):
        line = Line(port)
        began_s = time.perf_counter()
        assert line.ask("SOUR2:VOLT 2;:SOUR2:CURR 0.5;:OUTP2 ON;:SOUR2:VOLT?;:SOUR1:VOLT?") == "2.000V;0.000V"
        assert time.perf_counter() - began_s >= 0.09
        threading.Event().wait(0.1)
        assert float(line.ask("MEAS2:CURR?").removesuffix("A")) == pytest.approx(0.5, abs=0.02)
        line.close()


def test_over_tcp_as_well_a_message_that_nothing_ends_is_over_when_the_line_is_quiet() -> None:
    bench = Bench(load("open"), speaks=shipped("terse-serial"))
    server = Server(bench)
    thread = threading.Thread(target=server.run)
    thread.start()
    try:
        line = Line(server.port)
        line.say("VSET1:", "")
        line.say("05.00", "")
        threading.Event().wait(0.15)
        line.say("VSET1?", "")
        assert line.link.recv(64) == b"05.00"
        threading.Event().wait(0.15)
        line.say("STATUS?", "")
        assert line.link.recv(64) == b"\x00"
        line.close()
    finally:
        server.stop()
        thread.join(PATIENCE_S)
    assert not thread.is_alive()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--speaks", "drawer"], 'no dialect is called "drawer"'),
        (["--speaks", "nowhere.toml"], "nowhere.toml"),
        (["--quirk", "echo"], "--quirk needs --speaks"),
        (["--speaks", "scpi-1999", "--quirk", "singing"], "invalid choice: 'singing'"),
    ],
)
def test_a_dialect_or_habit_that_there_is_not_is_said_so(
    arguments: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["--scenario", "free", *arguments])
    assert ended.value.code == 2
    assert said in capsys.readouterr().err
