"""What the instrument remembers of errors and conditions: error queue, standard event register, status groups.

Source: IEEE 488.2-1992 and SCPI-1999, as published: error classes and their event bits, queue rules, texts; the texts
of -104, -114, -131, -213, -221, -224 and -230, the power-on bit and the bits of the status byte are from memory.
Bits 9 and 10 of the questionable group are this instrument's own choice.
"""

from collections import deque
from dataclasses import dataclass, field

QUEUE_DEPTH = 20
SHOWN = 60
"""Characters of what was refused that an error entry repeats."""
TEXTS = {
    0: "No error",
    -102: "Syntax error",
    -104: "Data type error",
    -108: "Parameter not allowed",
    -109: "Missing parameter",
    -113: "Undefined header",
    -114: "Header suffix out of range",
    -131: "Invalid suffix",
    -213: "Init ignored",
    -221: "Settings conflict",
    -222: "Data out of range",
    -224: "Illegal parameter value",
    -230: "Data corrupt or stale",
    -350: "Queue overflow",
    -410: "Query INTERRUPTED",
    -420: "Query UNTERMINATED",
}

OPERATION_COMPLETE = 0x01
POWER_ON = 0x80

QUES_VOLT = 0x001
"""Questionable: the voltage is not regulated, which means the current limit holds (CC)."""
QUES_CURR = 0x002
"""Questionable: the current is not regulated, which means the voltage setpoint holds (CV)."""
QUES_OVER_VOLTS = 0x200
QUES_OVER_AMPS = 0x400


class Refusal(Exception):
    """A program message unit that is refused. `code` is negative; `about` is what it was about."""

    def __init__(self, code: int, about: str = "") -> None:
        super().__init__(f"{code} {TEXTS[code]}: {about}")
        self.code = code
        self.about = about


def event_bit(code: int) -> int:
    """Bit of the standard event register that an error of this class sets."""
    match code:
        case _ if -200 < code <= -100:
            return 0x20
        case _ if -300 < code <= -200:
            return 0x10
        case _ if -500 < code <= -400:
            return 0x04
        case _:
            return 0x08


@dataclass(slots=True)
class Group:
    """A status group: `condition` is now, `event` latches every bit that came up since it was last read."""

    condition: int = 0
    event: int = 0
    enable: int = 0

    def follow(self, condition: int) -> None:
        self.event |= condition & ~self.condition
        self.condition = condition

    def take_event(self) -> int:
        event, self.event = self.event, 0
        return event


@dataclass(slots=True)
class Status:
    """All that *CLS clears and *STB? sums up."""

    standard_event: int = POWER_ON
    standard_enable: int = 0
    service_enable: int = 0
    operation: Group = field(default_factory=Group)
    questionable: Group = field(default_factory=Group)
    _queue: deque[str] = field(default_factory=deque)

    def record(self, code: int, about: str = "") -> None:
        """Puts an error in the queue and sets its event bit. In a full queue the last entry gives way."""
        self.standard_event |= event_bit(code)
        # What was sent comes back only as far as it can stand in a quoted ASCII string.
        shown = "".join(letter if " " <= letter <= "~" and letter != '"' else "?" for letter in about[:SHOWN])
        entry = f'{code},"{TEXTS[code]}{";" + shown if shown else ""}"'
        if len(self._queue) < QUEUE_DEPTH:
            self._queue.append(entry)
        else:
            self._queue[-1] = f'-350,"{TEXTS[-350]}"'
            self.standard_event |= event_bit(-350)

    def next_error(self) -> str:
        return self._queue.popleft() if self._queue else f'0,"{TEXTS[0]}"'

    def clear(self) -> None:
        """*CLS: events and queue go, enables stay."""
        self.standard_event = 0
        self.operation.event = self.questionable.event = 0
        self._queue.clear()

    def preset(self) -> None:
        """STAT:PRES: the enables of the two groups only."""
        self.operation.enable = self.questionable.enable = 0

    def take_standard_event(self) -> int:
        event, self.standard_event = self.standard_event, 0
        return event

    def byte(self, message_available: bool) -> int:
        """The status byte as *STB? gives it."""
        byte = 0x04 if self._queue else 0
        byte |= 0x08 if self.questionable.event & self.questionable.enable else 0
        byte |= 0x10 if message_available else 0
        byte |= 0x20 if self.standard_event & self.standard_enable else 0
        byte |= 0x80 if self.operation.event & self.operation.enable else 0
        return byte | (0x40 if byte & self.service_enable & ~0x40 else 0)
