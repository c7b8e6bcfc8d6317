"""The driver, and the main job over it, against an SCPI responder that this project did not write."""

import math
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import msgspec
import pytest
import pyvisa
from pyvisa.errors import VisaIOError

from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import Frame, Request
from benchlog.bench.journal import read_journal
from benchlog.bench.lease import Lease
from benchlog.clock import SystemClock
from benchlog.outcome import Outcome, WindingVerdict
from benchlog.records import FLAG_ON, RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.steps import built_in
from drivers.dialect import Dialect, shipped
from drivers.scpi_supply import ScpiSupply
from drivers.supply import Protection, Regulation, Setpoint, Supply, SupplyTimeout
from tests.drivers.in_lines import InLines

ADDRESS = "TCPIP::responder.invalid::5025::SOCKET"
DEVICES = Path(__file__).with_name("responder.yaml")


class RespondedSession(InLines):
    """A session to the responder; pyvisa hands messages over as it would to a wire."""

    resource = ADDRESS

    def __init__(self, manager: Any, timeout_s: float) -> None:
        self._visa = manager.open_resource(ADDRESS, read_termination="\n", write_termination="\n")
        self.set_timeout(timeout_s)

    def set_timeout(self, timeout_s: float) -> None:
        self._visa.timeout = round(timeout_s * 1000)

    def write(self, message: str) -> None:
        self._visa.write(message)

    def query(self, message: str) -> str:
        try:
            return str(self._visa.query(message))
        except VisaIOError as error:
            raise SupplyTimeout(ADDRESS, "no reply in time") from error

    def close(self) -> None:
        self._visa.close()


class AlwaysRenewed(Lease):
    """A lease whose other side never tires."""

    @property
    def expires_s(self) -> float:
        return math.inf

    def ended(self, now_s: float) -> str | None:
        return self._stop


def unit_by_unit() -> Dialect:
    """The shipped dialect for a responder that takes one unit a message and has no meter for its volts."""
    dialect = shipped()
    return msgspec.structs.replace(
        dialect,
        link=msgspec.structs.replace(dialect.link, compound=False),
        readback=msgspec.structs.replace(dialect.readback, volts="VOLT?"),
    )


@pytest.fixture
def responder() -> Iterator[Any]:
    manager = pyvisa.ResourceManager(f"{DEVICES}@sim")
    yield manager
    manager.close()


def supply_on(responder: Any) -> ScpiSupply:
    return ScpiSupply(lambda timeout_s: RespondedSession(responder, timeout_s), unit_by_unit(), SystemClock().now)


def test_it_is_identified_with_the_one_latch_that_it_has(responder: Any) -> None:
    can = supply_on(responder).capabilities
    assert can.identity == "Harbour Workshop,Responder,1,1.0"
    assert (can.volts_max, can.amps_max) == (32.0, 3.0)
    assert can.over_volts
    assert not can.over_amps


def test_what_is_set_is_read_back(responder: Any) -> None:
    supply = supply_on(responder)
    supply.set(Setpoint(volts=7.25, amps=0.5))
    supply.switch(True)
    reading = supply.read()
    assert (reading.set_volts, reading.set_amps, reading.output_on) == (7.25, 0.5, True)
    assert (reading.volts, reading.amps, reading.regulation) == (7.25, 0.0, Regulation.CV)
    supply.off()
    reading = supply.read()
    assert (reading.set_volts, reading.output_on) == (0.0, False)
    assert supply.errors() == []


def test_its_latch_is_set_switched_on_and_read_back(responder: Any) -> None:
    supply = supply_on(responder)
    assert supply.protect(Protection(over_volts=13.2, over_amps=2.2)) == Protection(over_volts=13.2, over_amps=None)
    assert supply.tripped() is None


def test_what_it_does_not_know_is_in_its_error_queue(responder: Any) -> None:
    supply = supply_on(responder)
    supply.set(Setpoint(volts=99.0, amps=0.5))
    assert supply.errors() == ["-113, Undefined header"]
    assert supply.read().set_volts == 0.0


def test_the_main_job_on_open_leads_ends_as_open_with_the_output_confirmed_off(responder: Any, tmp_path: Path) -> None:
    clock = SystemClock()
    frames: list[Frame] = []
    request = Request(
        uid="responder",
        kind=RunKind.RECOVERY,
        resource=ADDRESS,
        rated_volts=12.0,
        layers={Layer.JOB: Limits(volts=12.0, amps=1.0)},
        sequence=built_in("starting-ladder"),
        journal=str(tmp_path / "responder.journal"),
        job=None,
        unattended=True,
    )
    conductor = Conductor(
        request,
        clock=clock,
        lease=AlwaysRenewed(clock),
        emit=frames.append,
        beat=lambda: None,
        going_off=lambda: None,
    )

    def open_supply() -> Supply:
        return supply_on(responder)

    result = conductor.run(open_supply, lambda capabilities: None)
    assert result.outcome is Outcome.OPEN, result.reason
    assert result.winding_verdict is WindingVerdict.OPEN
    assert result.output_confirmed_off
    assert frames
    contents = read_journal(tmp_path / "responder.journal")
    assert contents.ending is not None
    assert contents.ending.result == result
    assert contents.armed is not None
    assert contents.armed.identity == "Harbour Workshop,Responder,1,1.0"
    assert (contents.trace.flags & FLAG_ON).any()
    assert not contents.trace.flags[-1] & FLAG_ON
    assert contents.trace.set_volts[-1] == 0.0
