"""Supplies without any: what a search finds and what one answers are given, and it is noted what was asked for."""

from threading import Event
from typing import Any

import msgspec

from benchlog.bench.looking_around import LastLook, Place
from benchlog.ledger.store import Ledger
from benchlog.ledger.supplies import FOUND as KEPT
from benchlog.ledger.supplies import keep_supply
from ui.asking_supplies import Question, Told

NETWORK, USB, SERIAL = "TCPIP::192.0.2.7::INSTR", "USB0::0x1234::0x5678::A1::INSTR", "ASRL/dev/ttyUSB0::INSTR"
FOUND = LastLook(
    utc="2026-11-29T13:05:00Z",
    places=(
        Place(address=SERIAL, kind="serial", words="USB serial adapter"),
        Place(address=USB, kind="usb", words="USBTMC"),
        Place(address=NETWORK, kind="network", words="VXI-11"),
    ),
    missed=("visa: not finished in time",),
)
REPORT: dict[str, Any] = {
    "event": "supply",
    "usable": True,
    "identity": "HARBOUR,BENCH SUPPLY 2,0071,1.4",
    "dialect": {"name": "scpi-1999", "outputs": {"count": 2, "select": ""}},
    "speaks": "scpi-1999: 2 outputs, each named in its units; several units in one message",
    "missing": {
        "no mode": "Whether volts or current hold is reckoned.",
        "range not told": "Give it with --most-volts.",
    },
    "questions": ["How many volts and amps can each output give at most? No question to it tells."],
    "latency_s": 0.0021,
    "reading_s": 0.0165,
    "readings_per_s": 60.4,
    "least_kick_s": 0.12,
}


class FakeSupplies:
    """Each answer is held back until `answer` is set, and it starts out set. What is usable is kept in `ledger`."""

    def __init__(self, ledger: Ledger, report: dict[str, Any] | None = None) -> None:
        self.ledger = ledger
        self.report = REPORT if report is None else report
        self.found: LastLook | None = FOUND
        self.before: LastLook | None = None
        self.looks, self.stops = 0, 0
        self.asked: list[Question] = []
        self.answer = Event()
        self.answer.set()

    def last(self) -> LastLook | None:
        return self.before

    def look(self) -> LastLook:
        self.looks += 1
        self.answer.wait(10.0)
        if self.found is None:
            raise OSError("no process can be started")
        return self.found

    def ask(self, question: Question) -> Told:
        self.asked.append(question)
        self.answer.wait(10.0)
        plain = self.report | {"resource": question.resource, "output": question.output}
        if question.most is not None:
            volts, amps = question.most
            plain |= {"questions": [], "missing": {}, "volts_max": volts, "amps_max": amps}
        if plain["usable"]:
            keep_supply(
                self.ledger,
                resource=question.resource,
                identity=plain["identity"],
                output=question.output,
                kind=KEPT,
                dialect="",
                content=plain,
            )
        return msgspec.convert(plain, Told)

    def stop(self) -> None:
        self.stops += 1
        self.answer.set()
