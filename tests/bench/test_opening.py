"""A supply is opened in the dialect that was kept for it, and only where it is the one that it was kept for."""

from pathlib import Path

import msgspec
import pytest

from benchlog.bench.opening import dialect_of, open_supply
from benchlog.bench.rescue import Charge, rescue
from benchlog.clock import SystemClock
from drivers.dialect import DialectError, shipped, to_json
from drivers.supply import NotASupply
from tests.processes import BenchProcess


@pytest.fixture
def suffix(tmp_path: Path) -> BenchProcess:
    return BenchProcess(tmp_path, "free", "--speaks", "scpi-1999-suffix")


def test_another_instrument_at_the_address_is_refused_and_not_switched(tmp_path: Path, suffix: BenchProcess) -> None:
    dialect, now = shipped("scpi-1999-suffix"), SystemClock().now
    try:
        supply = open_supply(suffix.resource, now, dialect=dialect, output=2)
        identity = supply.capabilities.identity
        supply.close()
        open_supply(suffix.resource, now, dialect=dialect, identity=identity).close()
        with pytest.raises(NotASupply, match="answers where"):
            open_supply(suffix.resource, now, dialect=dialect, identity="Harbour,Other,1,1")
        switches = suffix.switches()
    finally:
        suffix.close()
    assert supply.capabilities.output == 2
    assert switches == []


def test_a_rescue_switches_off_in_the_dialect_and_on_the_output_of_its_charge(
    tmp_path: Path, suffix: BenchProcess
) -> None:
    dialect, record = shipped("scpi-1999-suffix"), tmp_path / "record.rescue"
    try:
        supply = open_supply(suffix.resource, SystemClock().now, dialect=dialect, output=2)
        supply.switch(True)
        assert supply.read().output_on
        charge = Charge(
            resource=suffix.resource,
            pid=2**30,  # nobody: there is nothing to be killed
            record=str(record),
            capabilities=supply.capabilities,
            dialect=to_json(dialect),
        )
        rescue(msgspec.json.decode(msgspec.json.encode(charge), type=Charge), "is gone")
        off = not supply.read().output_on
        supply.close()
    finally:
        suffix.close()
    assert off
    assert '"confirmed_off": true' in record.read_text(encoding="utf-8")


def test_a_dialect_that_is_none_is_told_by_its_place() -> None:
    assert dialect_of("") == shipped()
    with pytest.raises(DialectError, match="program"):
        dialect_of(to_json(shipped()).replace('"OUTP OFF"', '"OUTP OFF;OUTP ON"'))
