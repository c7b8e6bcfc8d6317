"""What a plan may ask of the shell, and what it sees in return.

A plan is a generator: it yields a command and receives what was then seen. It knows no clock and no supply.
"""

from collections.abc import Generator
from dataclasses import dataclass
from typing import TypeAlias, TypeVar

from benchlog.motor.motion import Motion
from benchlog.records import Event
from drivers.supply import Dense, Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Apply:
    """Set volts and current limit, not before `at_s`, then take a reading. `kick` counts against the kicks allowed.

    `read_later_s`: before that reading is asked for, no more than one takes: nothing is seen meanwhile.
    """

    volts: float
    amps: float
    belief: Motion = Motion.UNKNOWN
    at_s: float = 0.0
    kick: bool = False
    read_later_s: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Watch:
    """Change nothing; take the next reading, not before `at_s`."""

    at_s: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Switch:
    """Output on or off, then a reading. On is admitted only at 0 V set and with no volts on the terminals."""

    on: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """Something for the record and the screen. Takes no reading; `t_s` is filled in by the shell."""

    event: Event


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """A question to the operator, output off. Answers come in `Seen.answer` while the plan watches."""

    text: str
    choices: tuple[str, ...]
    swap: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Acquire:
    """The supply's own measurement array begins now, at 0 V set; then a reading. `interval_s`: of its samples."""

    points: int
    interval_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Fetch:
    """What the array held of start `number`, output off; into the record and `Seen.dense`. Then a reading."""

    number: int


Command: TypeAlias = Apply | Watch | Switch | Mark | Ask | Acquire | Fetch


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """A reading and how it stands to the last setpoint.

    `now_s`: the shell's clock. `since_s`: from the last setpoint to the start of the reading's averaging window;
    `whole`: that window began after the supply had settled, so the reading belongs to this setpoint alone.
    `felt`: the operator said since the last reading that it moved; `held`: the key for the hand on the shaft is down.
    `dense`: what a Fetch brought.
    """

    reading: Reading
    now_s: float
    set_at_s: float
    since_s: float
    whole: bool
    answer: str | None = None
    felt: bool = False
    held: bool = False
    dense: Dense | None = None


Result = TypeVar("Result")
Plan: TypeAlias = Generator[Command, Seen, Result]
