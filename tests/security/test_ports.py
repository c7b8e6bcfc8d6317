"""Nothing of the program listens: a real run is looked at while it is on."""

import sys
from pathlib import Path

import pytest

from tests.processes import BenchProcess, TerminalProcess, wait_until

pytestmark = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="reads /proc")

LISTEN = "0A"
"""State of a TCP socket in /proc/net/tcp. Source: Linux, include/net/tcp_states.h, TCP_LISTEN = 10."""
LOOPBACK = "0100007F"  # 127.0.0.1, the four bytes as a number of a little-endian machine


def sockets_of(pid: int) -> set[str]:
    """Inodes of the sockets that a process holds."""
    links = []
    for entry in Path(f"/proc/{pid}/fd").iterdir():
        try:
            links.append(str(entry.readlink()))
        except FileNotFoundError:
            continue  # closed meanwhile
    return {link[len("socket:[") : -1] for link in links if link.startswith("socket:[")}


def lines_of(pid: int, table: str) -> list[list[str]]:
    """Of one table of the process's network: the sockets that are its own."""
    own = sockets_of(pid)
    try:
        lines = Path(f"/proc/{pid}/net/{table}").read_text().splitlines()[1:]
    except FileNotFoundError:
        return []  # a machine without IPv6
    return [words for words in map(str.split, lines) if words[9] in own]


def listening(pid: int) -> list[str]:
    """Local addresses, "address:port" in hex, on which a process waits for TCP."""
    return [words[1] for table in ("tcp", "tcp6") for words in lines_of(pid, table) if words[3] == LISTEN]


def datagrams(pid: int) -> list[str]:
    return [words[1] for table in ("udp", "udp6") for words in lines_of(pid, table)]


@pytest.mark.timeout(120)
def test_no_process_of_a_run_listens_and_the_simulated_bench_only_on_loopback(tmp_path: Path) -> None:
    bench = BenchProcess(tmp_path, "stuck-hard")
    terminal = None
    try:
        terminal = TerminalProcess(bench.resource, tmp_path / "ledger.db")
        pids = (terminal.process.pid, *terminal.pids())
        wait_until(bench.is_driving)
        port = int(bench.resource.split("::")[2])
        assert listening(bench.process.pid) == [f"{LOOPBACK}:{port:04X}"]
        # That the look sees the run's own sockets: the process that holds the supply is connected.
        assert any(words[2] == f"{LOOPBACK}:{port:04X}" for words in lines_of(pids[1], "tcp"))
        for pid in pids:
            assert Path(f"/proc/{pid}").exists()
            assert listening(pid) == []
            assert datagrams(pid) == []
    finally:
        if terminal is not None:
            terminal.close()
        bench.close()
