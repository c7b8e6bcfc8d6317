"""How a run ends, as data. The same words are on the screen, in the ledger, in the JSON and here."""

from enum import StrEnum

import msgspec


class Outcome(StrEnum):
    """The one word a run is filed under."""

    FREED = "freed"
    RUNS = "runs"
    STILL_STUCK = "still-stuck"
    UNDETERMINED = "undetermined"
    OPEN = "open"
    SHORT = "short"
    DIODE = "diode"
    ELECTRONIC = "electronic"
    CEILING = "ceiling"
    STOPPED = "stopped"
    SUPPLY_LOST = "supply-lost"
    REFUSED = "refused"


EXIT_STATUS: dict[Outcome, int] = {
    Outcome.FREED: 0,
    Outcome.RUNS: 0,
    Outcome.STILL_STUCK: 1,
    Outcome.UNDETERMINED: 1,
    Outcome.REFUSED: 2,
    Outcome.OPEN: 3,
    Outcome.SHORT: 3,
    Outcome.DIODE: 3,
    Outcome.ELECTRONIC: 3,
    Outcome.CEILING: 4,
    Outcome.STOPPED: 4,
    Outcome.SUPPLY_LOST: 5,
}


class WindingVerdict(StrEnum):
    """What the probe found between the leads."""

    WINDING = "winding"
    OPEN = "open"
    SHORT = "short"
    DIODE = "diode"
    ELECTRONIC = "electronic"
    UNDECIDED = "undecided"
    NOT_PROBED = "not-probed"


class RunResult(msgspec.Struct, frozen=True, kw_only=True):
    """What a run came to. Volts and amps are the largest readbacks; None where nothing was measured.

    `moved` is progress filed apart from freed: it turned once and stopped again.
    """

    outcome: Outcome
    reason: str
    winding_verdict: WindingVerdict = WindingVerdict.NOT_PROBED
    resistance_ohm: float | None = None
    resistance_low_ohm: float | None = None
    resistance_high_ohm: float | None = None
    kicks: int = 0
    moved: bool = False
    max_volts: float | None = None
    max_amps: float | None = None
    winding_bound_c: float | None = None
    locked_s: float = 0.0
    output_confirmed_off: bool = False
