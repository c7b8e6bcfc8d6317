"""A bench behind USBTMC that is made up below pyusb, in a process of its own: what pyvisa-py does with it is real.

No cable, no kernel and no libusb are in it, so it is no trial of an instrument on USB. Source of the messages: USB-IF,
Test and Measurement Class 1.0, from memory.

    python -m tests.drivers.usb_instrument    prints one line of JSON
"""

import errno
import json
import struct
import sys
import time
from collections.abc import Callable
from types import SimpleNamespace
from typing import Any

import usb.backend
import usb.backend.libusb1
import usb.core

from drivers.simulated.bench import Bench
from drivers.simulated.scenario import load
from tests.drivers.link_responders import AtBench, Said, Says

ADDRESS = "USB0::4660::22136::HARBOUR7::0::INSTR"
_PACKET = 64


def _descriptor(**fields: Any) -> SimpleNamespace:
    return SimpleNamespace(bLength=9, bDescriptorType=0, extra_descriptors=[], **fields)


class OnUsb(usb.backend.IBackend):  # type: ignore[misc]
    """One device with one interface of class fe, subclass 03, and two bulk endpoints."""

    def __init__(self, says: Says) -> None:
        self.says = says
        self._message = b""
        self._asked: tuple[int, int] | None = None
        self._reply: bytes | None = None
        self._sent = b""

    def enumerate_devices(self) -> list[int]:
        return [1]

    def get_parent(self, dev: int) -> None:
        return None

    def get_device_descriptor(self, dev: int) -> SimpleNamespace:
        return _descriptor(
            bcdUSB=0x200,
            bDeviceClass=0,
            bDeviceSubClass=0,
            bDeviceProtocol=0,
            bMaxPacketSize0=64,
            idVendor=0x1234,
            idProduct=0x5678,
            bcdDevice=1,
            iManufacturer=0,
            iProduct=0,
            iSerialNumber=1,
            bNumConfigurations=1,
            address=2,
            bus=1,
            port_number=1,
            port_numbers=(1,),
            speed=3,
        )

    def get_configuration_descriptor(self, dev: int, config: int) -> SimpleNamespace:
        if config:
            raise IndexError
        return _descriptor(
            wTotalLength=32, bNumInterfaces=1, bConfigurationValue=1, iConfiguration=0, bmAttributes=0, bMaxPower=0
        )

    def get_interface_descriptor(self, dev: int, intf: int, alt: int, config: int) -> SimpleNamespace:
        if intf or alt:
            raise IndexError
        return _descriptor(
            bInterfaceNumber=0,
            bAlternateSetting=0,
            bNumEndpoints=2,
            iInterface=0,
            bInterfaceClass=0xFE,
            bInterfaceSubClass=3,
            bInterfaceProtocol=1,
        )

    def get_endpoint_descriptor(self, dev: int, ep: int, intf: int, alt: int, config: int) -> SimpleNamespace:
        return _descriptor(
            bEndpointAddress=(0x01, 0x82)[ep],
            bmAttributes=2,
            wMaxPacketSize=_PACKET,
            bInterval=0,
            bRefresh=0,
            bSynchAddress=0,
        )

    def open_device(self, dev: int) -> int:
        return dev

    def close_device(self, dev_handle: int) -> None: ...
    def set_configuration(self, dev_handle: int, config_value: int) -> None: ...
    def claim_interface(self, dev_handle: int, intf: int) -> None: ...
    def release_interface(self, dev_handle: int, intf: int) -> None: ...
    def get_configuration(self, dev_handle: int) -> int:
        return 1

    def is_kernel_driver_active(self, dev_handle: int, intf: int) -> bool:
        return False

    def ctrl_transfer(
        self, dev_handle: int, kind: int, request: int, value: int, index: int, data: Any, timeout: int
    ) -> int:
        if request == 6:  # a string: 0 the languages, 1 the serial number
            text = b"\x09\x04" if value & 0xFF == 0 else "HARBOUR7".encode("utf-16-le")
            answer = bytes([2 + len(text), 3]) + text
        elif request == 7:  # the capabilities: USB488, no remote control
            answer = bytes([1, 0, 0, 1]) + bytes(10) + bytes([4]) + bytes(9)
        else:  # an abort: done
            answer = bytes([1]) + bytes(7)
        left = answer[: len(data)]
        data[: len(left)] = type(data)("B", left)
        return len(left)

    def bulk_write(self, dev_handle: int, ep: int, intf: int, data: Any, timeout: int) -> int:
        sent = bytes(data)
        kind, tag, inverse, size = struct.unpack_from("<BBBxL", sent)
        assert inverse == ~tag & 0xFF
        if kind == 2:
            self._asked = (tag, size)
            return len(sent)
        assert kind == 1
        self._message += sent[12 : 12 + size]
        if sent[8] & 1:
            said: Said = self.says(self._message.decode("ascii").rstrip("\n"))
            self._message = b""
            if said.reply is not None:
                time.sleep(said.late_s)
                self._reply = said.reply
        return len(sent)

    def bulk_read(self, dev_handle: int, ep: int, intf: int, buff: Any, timeout: int) -> int:
        if not self._sent:
            if self._reply is None or self._asked is None:
                time.sleep(timeout / 1000.0)
                raise usb.core.USBTimeoutError("timed out", None, errno.ETIMEDOUT)
            (tag, most), self._asked = self._asked, None
            part, rest = self._reply[:most], self._reply[most:]
            head = struct.pack("<BBBxLBxxx", 2, tag, ~tag & 0xFF, len(part), not rest)
            self._sent = head + part + bytes(-len(part) % 4)
            self._reply = rest or None
        left, self._sent = self._sent[: len(buff)], self._sent[len(buff) :]
        buff[: len(left)] = type(buff)("B", left)
        return len(left)

    def drop(self) -> None:
        self._reply, self._sent = None, b""


def main() -> None:
    """A supply on it from its identification to OFF; what silence takes; what looking finds."""
    bench = Bench(load("free"))
    at_bench = AtBench(bench)
    device = OnUsb(at_bench)
    usb.backend.libusb1.get_backend = lambda find_library=None: device

    from drivers.dialect import shipped
    from drivers.discovery import _usb_listed
    from drivers.scpi_supply import ScpiSupply
    from drivers.supply import Setpoint, SupplyError
    from drivers.visa import VisaSession

    def session(timeout_s: float) -> VisaSession:
        return VisaSession(ADDRESS, termination="\n", timeout_s=timeout_s)

    def took(act: Callable[[], object]) -> tuple[str, float]:
        began_s = time.monotonic()
        try:
            act()
        except SupplyError as error:
            return f"{type(error).__name__}: {error.what}", time.monotonic() - began_s
        return "nothing", time.monotonic() - began_s

    supply = ScpiSupply(session, shipped(), time.perf_counter)
    supply.set(Setpoint(volts=5.0, amps=0.4))
    supply.switch(True)
    on = supply.read()
    supply.off()
    off = supply.read()
    supply.close()
    device.says = lambda message: Said(b"1" * 50_000 + b"\n")
    long = session(1.0)
    length = len(long.query("FETC:ARR:VOLT?"))
    long.close()
    device.says = lambda message: Said(b"1" * 80_000 + b"\n")
    flood = session(1.0)
    too_long = took(lambda: flood.query("FETC:ARR:VOLT?"))
    flood.close()
    device.drop()
    device.says = lambda message: Said(None)
    silent = session(0.3)
    silence = took(lambda: silent.query("VOLT?"))
    silent.close()
    sys.stdout.write(
        json.dumps(
            {
                "listed": _usb_listed(),
                "identity": supply.capabilities.identity,
                "on": [on.set_volts, on.set_amps, on.output_on],
                "off": [off.set_volts, off.output_on, bench.output.on],
                "length": length,
                "too_long": too_long[0],
                "silence": silence,
            }
        )
        + "\n"
    )


if __name__ == "__main__":
    main()
