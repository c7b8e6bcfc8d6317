"""A bench supply as something with volts, amps and an output.

Values that cross from a supply to the rest of the program, the errors a supply can end in, and the protocol
that every supply fulfils. Nothing here knows of motors, jobs or any command set.

Units: volts, amperes, seconds. Times are seconds of whatever monotonic clock was handed to the driver.
"""

from dataclasses import dataclass
from enum import Enum
from typing import Protocol


class Regulation(Enum):
    """What holds the output: the voltage setpoint, the current limit, or nothing that the supply would tell."""

    CV = "CV"
    CC = "CC"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True, kw_only=True)
class Setpoint:
    """Volts and current limit that are asked of a supply."""

    volts: float
    amps: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Protection:
    """The instrument's own latches; None where a latch is absent or switched off."""

    over_volts: float | None
    over_amps: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One readback: what the terminals did, and what the supply believes it was told.

    `sent_s` and `received_s` bracket the query. What the supply averaged lies inside
    [sent_s - window_s, received_s], whether it starts a new acquisition or hands out the last one.
    """

    sent_s: float
    received_s: float
    volts: float
    amps: float
    set_volts: float
    set_amps: float
    output_on: bool
    regulation: Regulation


OVER_VOLTS, OVER_AMPS = "over-voltage", "over-current"


@dataclass(frozen=True, slots=True, kw_only=True)
class Capabilities:
    """What identification found out. Steps are the resolution of the readback replies, by their last digit.

    volts_max, amps_max: the supply's own range, None where it does not tell. latches: which of the queries that belong
    to its own protections it answers.
    """

    identity: str
    dialect: str
    volts_max: float | None
    amps_max: float | None
    volts_step: float
    amps_step: float
    latches: frozenset[str]
    window_s: float
    settle_s: float
    reply_s: float

    @property
    def over_volts(self) -> bool:
        """Whether it has an over-voltage latch that can be set and read back."""
        return OVER_VOLTS in self.latches

    @property
    def over_amps(self) -> bool:
        """Whether it has an over-current latch that can be set and read back."""
        return OVER_AMPS in self.latches


class SupplyError(Exception):
    """Something between this program and the supply went wrong. `resource` names the supply."""

    def __init__(self, resource: str, what: str) -> None:
        super().__init__(f"{resource}: {what}")
        self.resource = resource
        self.what = what


class SupplyLost(SupplyError):
    """The link is down, or nothing listens at the address."""


class SupplyTimeout(SupplyError):
    """No reply in time. The session is suspect from here on: a late reply would answer the next question."""


class SupplyGarbled(SupplyError):
    """A reply of the wrong form: cut, not a number, out of place."""


class NotASupply(SupplyError):
    """Something answers at the address, but not as a supply that this program can use."""


class Supply(Protocol):
    """A supply with one output under one owner. Not thread-safe: one caller only."""

    @property
    def capabilities(self) -> Capabilities: ...

    def read(self) -> Reading:
        """One readback in one round trip where the dialect allows. Raises SupplyError."""
        ...

    def set(self, setpoint: Setpoint) -> None:
        """Limit first, then volts. Sends; what the supply made of it shows in the next reading."""
        ...

    def switch(self, on: bool) -> None:
        """Output on or off."""
        ...

    def off(self) -> None:
        """0 V and off, at once. Idempotent."""
        ...

    def protect(self, wanted: Protection) -> Protection:
        """Programs the latches and returns what the supply says they are now."""
        ...

    def tripped(self) -> str | None:
        """Which of the instrument's own latches has tripped, in a word; None where none has."""
        ...

    def clear(self) -> None:
        """0 V and off, then the latches cleared: clearing alone would restore what was on before."""
        ...

    def errors(self) -> list[str]:
        """Drains the error queue."""
        ...

    def reopen(self) -> None:
        """A fresh session to the same supply, identity checked. After a timeout nothing else is to be believed."""
        ...

    def close(self) -> None: ...
