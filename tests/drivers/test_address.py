"""Spellings of one address are one instrument, other addresses are others. The grammar is VISA's (VPP-4.3, 4.3.1)."""

import os
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drivers.address import same_instrument


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("TCPIP::127.0.0.1::5025::SOCKET", " tcpip0::127.0.0.1::5025::socket "),
        ("TCPIP::127.0.0.1::5025::SOCKET", "TCPIP1::localhost::05025::SOCKET"),
        ("TCPIP::127.0.0.1::INSTR", "TCPIP0::127.0.0.1::inst0::INSTR"),
        ("TCPIP::127.0.0.1", "TCPIP::127.0.0.1::hislip0::INSTR"),
        ("TCPIP::127.0.0.1::hislip0::INSTR", "TCPIP::127.0.0.1::hislip0,4880::INSTR"),
        ("ASRL/dev/null::INSTR", "asrl/dev/null,19200::INSTR"),
        ("ASRL3::INSTR", "ASRL3"),
        ("USB0::0x1AB::0x2::SN7::INSTR", "USB::427::2::SN7::0::INSTR"),
        ("GPIB::5::INSTR", "gpib::5"),
    ],
)
def test_spellings_of_one_address_are_one_instrument(one: str, other: str) -> None:
    assert same_instrument(one) == same_instrument(other)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("TCPIP::127.0.0.1::5025::SOCKET", "TCPIP::127.0.0.1::5026::SOCKET"),
        ("TCPIP::127.0.0.1::5025::SOCKET", "TCPIP::127.0.0.2::5025::SOCKET"),
        ("TCPIP::127.0.0.1::inst0::INSTR", "TCPIP::127.0.0.1::inst1::INSTR"),
        ("ASRL3::INSTR", "ASRL4::INSTR"),
        ("USB::1::2::SN7::INSTR", "USB::1::2::SN8::INSTR"),
    ],
)
def test_other_addresses_are_other_instruments(one: str, other: str) -> None:
    assert same_instrument(one) != same_instrument(other)


def test_a_link_to_a_device_is_that_device(tmp_path: Path) -> None:
    device, link = tmp_path / "tty", tmp_path / "by-id"
    device.touch()
    os.symlink(device, link)
    assert same_instrument(f"ASRL{link}::INSTR") == same_instrument(f"ASRL{device},9600::INSTR")


@given(st.lists(st.sampled_from(["TCPIP", "USB", "ASRL", "::", "SOCKET", "INSTR", "5", ",", " "]), max_size=8))
def test_what_is_no_address_has_a_name_as_well(parts: list[str]) -> None:
    assert isinstance(same_instrument("".join(parts)), str)


def test_what_is_no_path_stays_as_it_is() -> None:
    assert same_instrument("ASRL/dev/\0harbour::INSTR") == "serial /dev/\0harbour"
