"""Faults in virtual time, at the supply, the clock and the disk: the run ends, off, and the record is kept."""

import errno
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from benchlog.bench.conduct import Conductor
from benchlog.bench.journal import Block, Journal, read_journal
from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.ledger.warmth import warmth_of
from benchlog.outcome import Outcome
from demo_db.virtual import VirtualBench
from drivers.dialect import shipped
from drivers.scpi_supply import ScpiSupply, Session
from drivers.simulated.scenario import load
from drivers.supply import Supply, SupplyTimeout
from tests.conftest import BEGAN
from tests.drivers.in_lines import InLines


class FaultySession(InLines):
    """A session that spoils what `spoil` picks, from the reading `at` on."""

    def __init__(self, inner: Session, at: int, spoil: Callable[[str], str | None]) -> None:
        self.resource = inner.resource
        self._inner, self._at, self._spoil = inner, at, spoil
        self._readings = 0

    def write(self, message: str) -> None:
        self._inner.write(message)

    def query(self, message: str) -> str:
        reply = self._inner.query(message)
        if "MEAS:VOLT?;" not in message:
            return reply
        self._readings += 1
        if self._readings != self._at:
            return reply
        spoiled = self._spoil(reply)
        if spoiled is None:
            raise SupplyTimeout(self.resource, "no reply in time")
        return spoiled

    def set_timeout(self, timeout_s: float) -> None:
        self._inner.set_timeout(timeout_s)

    def close(self) -> None:
        self._inner.close()


class FaultyBench(VirtualBench):
    """Whose first session has a fault."""

    def __init__(self, at: int, spoil: Callable[[str], str | None]) -> None:
        super().__init__(load("hopeless"), seed=1, began=BEGAN)
        self._at, self._spoil, self._opened = at, spoil, 0

    def open_supply(self) -> Supply:
        return ScpiSupply(self._open, shipped(), self.clock.now)

    def _open(self, timeout_s: float) -> Session:
        self._opened += 1
        session = self.open_session(timeout_s)
        return FaultySession(session, self._at, self._spoil) if self._opened == 1 else session


def with_field(index: int, text: str) -> Callable[[str], str]:
    def spoil(reply: str) -> str:
        parts = reply.split(";")
        parts[index] = text
        return ";".join(parts)

    return spoil


@pytest.mark.parametrize(
    ("spoil", "outcome"),
    [
        (with_field(0, "9.91E37"), Outcome.SUPPLY_LOST),
        (with_field(1, "9.9E37"), Outcome.SUPPLY_LOST),
        (with_field(0, "NAN"), Outcome.SUPPLY_LOST),
        (with_field(1, ""), Outcome.SUPPLY_LOST),
        (with_field(0, "13.000"), Outcome.CEILING),
        (with_field(1, "9.000"), Outcome.CEILING),
        (with_field(2, "3.5000"), Outcome.STOPPED),
        (with_field(3, "4.9000"), Outcome.STOPPED),
        (with_field(4, "0"), Outcome.STOPPED),
        (lambda reply: reply[:4], Outcome.SUPPLY_LOST),
        (lambda reply: reply + ";1", Outcome.SUPPLY_LOST),
        (lambda reply: "<html>", Outcome.SUPPLY_LOST),
        (lambda reply: None, Outcome.SUPPLY_LOST),
    ],
    ids=[
        *("NaN volts", "infinite amps", "no number", "empty", "above the volts ceiling", "above the amps ceiling"),
        *("volts turned at the panel", "limit turned at the panel", "switched off at the panel"),
        *("cut", "too long", "another protocol", "lost"),
    ],
)
@pytest.mark.parametrize("at", [9, 40, 300])
def test_a_spoiled_reading_ends_the_run_with_the_output_off(
    spoil: Callable[[str], str | None], outcome: Outcome, at: int, tmp_path: Path
) -> None:
    bench = FaultyBench(at, spoil)
    run = bench.run(bench.request(tmp_path / "fault.journal"))
    # before the output is on, a panel that says "off" says what was sent
    if not (at == 9 and spoil(";".join("000000")) == ";".join("000000")):
        assert run.result.outcome is outcome, run.result.reason
    assert run.result.output_confirmed_off
    assert not bench.bench.output.on
    contents = read_journal(run.journal)
    assert contents.ending is not None
    assert contents.ending.result == run.result


def test_a_computer_that_slept_ends_the_run(tmp_path: Path) -> None:
    bench = VirtualBench(load("hopeless"), seed=1, began=BEGAN)
    wait = bench.clock.wait

    def nod_off(until_s: float, wake: object = None) -> None:
        wait(until_s)
        if bench.clock.now() > 9.0:
            bench.clock.wait = wait  # type: ignore[method-assign]
            bench.clock.sleep(60.0)

    bench.clock.wait = nod_off  # type: ignore[method-assign]
    run = bench.run(bench.request(tmp_path / "sleep.journal"))
    assert run.result.outcome is Outcome.STOPPED
    assert "slept" in run.result.reason
    assert run.result.output_confirmed_off


class FullDisk(Journal):
    """A journal whose disk is full after so many blocks."""

    left = 300

    def write(self, block: Block) -> None:
        self.left -= 1
        if self.left < 0:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        super().write(block)


def test_a_full_disk_ends_the_run_and_keeps_what_was_written(tmp_path: Path) -> None:
    bench = VirtualBench(load("hopeless"), seed=1, began=BEGAN)
    request = bench.request(tmp_path / "full.journal")
    conductor = Conductor(
        request,
        clock=bench.clock,
        lease=bench.lease,
        emit=bench.frames.append,
        beat=lambda: None,
        going_off=lambda: None,
        journal=FullDisk(Path(request.journal), sync_thread=False),
    )
    result = conductor.run(bench.open_supply, lambda capabilities: None)
    assert result.outcome is Outcome.STOPPED
    assert "record can't be kept" in result.reason
    assert result.output_confirmed_off
    with Ledger.open(tmp_path / "ledger.db") as ledger:
        filed = file_journal(ledger, Path(request.journal))
        run = ledger.run(filed.run)
        assert not run.complete
        assert run.samples > 200


def test_runs_in_a_row_share_one_budget(tmp_path: Path) -> None:
    bench = VirtualBench(load("hopeless"), seed=1, began=BEGAN)
    hottest = 0.0
    with Ledger.open(tmp_path / "ledger.db", clock=bench.clock) as ledger:
        job: int | None = None
        for number in range(4):
            warmth = warmth_of(ledger, job=job, resource="TCPIP::127.0.0.1::5025::SOCKET")
            assert bool(warmth.pulses) == (number > 0)
            request = bench.request(
                tmp_path / f"{number}.journal", earlier=warmth.pulses, known_ohm=warmth.known_ohm, job=job
            )
            run = bench.run(request)
            assert run.result.outcome is Outcome.STILL_STUCK, run.result.reason
            assert run.result.winding_bound_c is not None
            hottest = max(hottest, bench.bench.extremes.max_winding_c or 0.0)
            job = file_journal(ledger, run.journal).job_id
    assert hottest < 90.0
