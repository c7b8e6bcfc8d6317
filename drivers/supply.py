"""A bench supply as something with volts, amps and an output.

Values that cross from a supply to the rest of the program, the errors a supply can end in, and the protocol
that every supply fulfils. Nothing here knows of motors, jobs or any command set.

Units: volts, amperes, seconds. Times are seconds of whatever monotonic clock was handed to the driver.
"""

from collections.abc import Callable
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

NO_OVER_VOLTS_LATCH = "no over-voltage latch"
NO_OVER_AMPS_LATCH = "no over-current latch"
NO_SETPOINTS = "no read-back of setpoints"
NO_OUTPUT_STATE = "no output state"
NO_MODE = "no mode"
NO_ERROR_QUEUE = "no error queue"
RANGE_NOT_TOLD = "range not told"
ONE_SWITCH = "one switch for all outputs"
CHOSEN_APART = "output chosen by a message of its own"
CHOICE_NOT_TOLD = "choice of output not told"
"""What a supply may be without. Of these `UNUSABLE` stand in the way of any use: a knob that was turned, or an output
that stayed on, would go unseen. With `CHOSEN_APART` a second user of the same supply could get in between."""

UNUSABLE = frozenset({NO_SETPOINTS, NO_OUTPUT_STATE})


@dataclass(frozen=True, slots=True, kw_only=True)
class ArrayLimits:
    """What a supply's own measurement array can do: the shortest interval between its samples, and how many."""

    least_interval_s: float
    most_points: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Dense:
    """What the supply's own array held: one window after the other, each `interval_s` long, volts and amps at once.

    The first window began at `began_s`, give or take `u_began_s` (half of the widest that it can be): between the
    sending of the start and the reply that came after it.
    """

    began_s: float
    u_began_s: float
    interval_s: float
    volts: tuple[float, ...]
    amps: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Capabilities:
    """What identification found out. Steps are the resolution of the readback replies, by their last digit.

    volts_max, amps_max: the supply's own range, None where it does not tell. latches: which of the queries that belong
    to its own protections it answers. array: its measurement array, None until `Supply.find_array` found one. output:
    the one that is held, of so many outputs. gaps: what it is without, in the words above. watchdog: whether it has an
    output timer of its own; sense: whether it can be told to sense with four wires. reply_s: one exchange, the gap that
    the line wants included; reading_s: a whole reading.
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
    array: ArrayLimits | None = None
    output: int = 1
    outputs: int = 1
    gaps: frozenset[str] = frozenset()
    watchdog: bool = False
    sense: bool = False
    reading_s: float = 0.0

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
        """Drains the error queue; nothing where there is none."""
        ...

    def watch(self, silence_s: float | None) -> float | None:
        """Sets its own output timer, which switches the output off when it hears nothing for so long; None: stops it.

        Readings feed it. Returns what the supply says it is now, whole seconds, None where it is off or there is none.
        """
        ...

    def four_wire(self, on: bool) -> bool:
        """Senses with four wires, or at its terminals, and returns what the supply says of it. With the output off.

        Raises ValueError where it has no choice; then nothing was sent.
        """
        ...

    def find_array(self) -> ArrayLimits | None:
        """Whether it has a measurement array, asked by queries only; from then on `capabilities.array` has it too.

        Asked for a capture and not at identification: a supply without one answers with an entry in its error queue,
        which some show or beep at, and some with silence, which takes a timeout and a fresh session. To be asked
        while the output is off. Raises SupplyError.
        """
        ...

    def acquire(self, points: int, interval_s: float, alive: Callable[[], None] = ...) -> float:
        """Starts the array at once, and returns the interval (s) that the supply says it uses. Touches no setpoint.

        What is to be seen before a start is seen by sending the setpoint later. Readings go on meanwhile. A few round
        trips long, so to be called before the start; `alive` is called before each of them. Raises ValueError outside
        the array's limits, then nothing was sent, and SupplyError, then there will be nothing to fetch.
        """
        ...

    def fetch(self, alive: Callable[[], None] = ...) -> Dense:
        """What the array holds, which was started by `acquire`. Raises ValueError before it can be full, or without a
        start, then nothing was sent; SupplyError where the supply has none or gives it in another form.

        Two long replies, of at most 64 kB each: to be called when the output is off. `alive` as of `acquire`.
        """
        ...

    def reopen(self) -> None:
        """A fresh session to the same supply, identity checked. After a timeout nothing else is to be believed."""
        ...

    def close(self) -> None: ...
