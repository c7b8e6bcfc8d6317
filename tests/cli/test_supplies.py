"""`benchlog supplies` as a user runs it. What looking itself finds: tests/drivers/test_discovery.py."""

import json
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchlog.bench.looking_around import keep, last_look
from benchlog.cli.supplies import command
from benchlog.clock import VirtualClock
from drivers.discovery import Found, Looked

LOOKED = Looked(
    (
        Found("TCPIP::192.168.0.5::INSTR", "network", "VXI-11"),
        Found("ASRL/dev/ttyUSB0::INSTR", "serial", "USB \x1b[2J"),
    ),
    ("usb: libusb is not there",),
)


def supplies(folder: Path, *arguments: str) -> Result:
    return CliRunner(env={"XDG_CACHE_HOME": str(folder)}).invoke(command, list(arguments))


def kept(folder: Path) -> Path:
    path = folder / "benchlog" / "supplies.json"
    keep(LOOKED, path=path, clock=VirtualClock())
    return path


def test_before_anybody_looked_it_says_so_and_how_an_address_is_written(tmp_path: Path) -> None:
    told = supplies(tmp_path)
    assert told.exit_code == 0
    assert "Nobody has looked yet" in told.output
    assert "TCPIP::192.168.0.5::hislip0::INSTR" in told.output
    assert supplies(tmp_path, "--json").output == ""
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="other systems keep caches elsewhere")
def test_what_was_found_last_is_listed_without_looking_again_and_shown_inert(tmp_path: Path) -> None:
    kept(tmp_path)
    told = supplies(tmp_path).output
    assert "  TCPIP::192.168.0.5::INSTR                   network      VXI-11\n" in told
    assert "  ASRL/dev/ttyUSB0::INSTR                     serial port  USB ?[2J\n" in told
    assert "Not looked at: USB: libusb is not there\n" in told
    lines = [json.loads(one) for one in supplies(tmp_path, "--json").output.splitlines()]
    assert [(one.get("address"), one.get("not_looked_at")) for one in lines] == [
        ("TCPIP::192.168.0.5::INSTR", None),
        ("ASRL/dev/ttyUSB0::INSTR", None),
        (None, "usb"),
    ]


def test_the_rule_for_linux_goes_by_the_class_of_instruments_and_by_no_maker(tmp_path: Path) -> None:
    told = supplies(tmp_path, "--udev-rule").output
    rules = [one for one in told.splitlines() if one and not one.startswith("#")]
    # Source: USB-IF, Test and Measurement Class 1.0: application specific class fe, subclass 03.
    assert [":fe03??:" in rule and 'TAG+="uaccess"' in rule for rule in rules] == [True]
    assert "idVendor" not in told


def test_a_cache_that_can_not_be_read_is_none_and_one_that_can_not_be_written_costs_nothing(tmp_path: Path) -> None:
    path = kept(tmp_path)
    found = last_look(path)
    assert found is not None
    assert [place.kind for place in found.places] == ["network", "serial"]
    path.write_bytes(b'{"utc": 7')
    assert last_look(path) is None
    assert last_look(tmp_path) is None
    assert keep(LOOKED, path=path / "below a file", clock=VirtualClock()).places == found.places
    assert sorted(one.name for one in path.parent.iterdir()) == ["supplies.json"]
