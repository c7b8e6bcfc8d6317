"""Plain values of the ledger, so that history, advice and the window know no database.

SI units throughout. UTC instants are ISO 8601 text with a trailing Z.
"""

from dataclasses import dataclass
from enum import StrEnum

import msgspec
import numpy as np
import numpy.typing as npt

from benchlog.outcome import RunResult

TICK_S = 1e-4
"""Resolution of recorded time: 0.1 ms, small against any readback window."""


class RunKind(StrEnum):
    """What a run was for."""

    PROBE = "probe"
    RECOVERY = "recovery"
    PROOF = "proof"
    HAND = "hand"
    LEADS = "leads"


class EventKind(StrEnum):
    """What can happen during a run. The window, the terminal, the journal and the ledger use these words."""

    SUPPLY = "supply"  # identified: identity, dialect, ranges
    STEP = "step"  # a band begins: name, rung, volts, amps
    KICK = "kick"  # number, rung, volts, amps, seconds
    LOOK = "look"  # evidence after a kick: state, emf_ratio
    FINDING = "finding"  # the probe's verdict
    TURNING = "turning"  # motion seen
    MOVED = "moved"  # it moved and stands again; by: seen or operator
    REST = "rest"  # waiting, and why
    HAND = "hand"  # a hand step done, or skipped
    QUESTION = "question"
    ANSWER = "answer"
    NOTE = "note"  # the operator's own
    ADVICE = "advice"  # what the figures so far say about what to do, and why
    OUTPUT = "output"  # on, off, confirmed
    TRIP = "trip"  # a ceiling or a doubt ended it
    RESCUE = "rescue"  # the waiting process switched off


class Event(msgspec.Struct, frozen=True, kw_only=True):
    """Something that happened `t_s` seconds into a run."""

    t_s: float
    kind: EventKind
    text: str
    values: dict[str, float | int | str | bool | None] = {}


class Item(msgspec.Struct, frozen=True, kw_only=True):
    """The thing on the bench, as its label says. Empty text where there is no label."""

    kind: str
    make: str = ""
    model: str = ""
    serial: str = ""


class Motor(msgspec.Struct, frozen=True, kw_only=True):
    """The motor inside. `rated_volts` V, as the label or the customer says."""

    rated_volts: float
    note: str = ""


class JobState(StrEnum):
    OPEN = "open"
    CLOSED = "closed"


class Stage(StrEnum):
    """The way of a job."""

    INTAKE = "intake"
    MAKE_SAFE = "make-safe"
    PROBE = "probe"
    FREE = "free"
    PROVE = "prove"
    CLOSE = "close"


STAGE_OF: dict[RunKind, Stage] = {
    RunKind.PROBE: Stage.PROBE,
    RunKind.LEADS: Stage.PROBE,
    RunKind.RECOVERY: Stage.FREE,
    RunKind.HAND: Stage.FREE,
    RunKind.PROOF: Stage.PROVE,
}
"""The stage of the job that a run belongs to."""


class Entry(msgspec.Struct, frozen=True, kw_only=True):
    """A dated line in a job's own record: a check made, a hand step, a finding, a closing remark. Never edited."""

    utc: str
    stage: Stage
    text: str
    who: str = ""


class Job(msgspec.Struct, frozen=True, kw_only=True):
    """One repair. `number` is what people call it; `id` is the ledger's key. Closing fields are empty until then."""

    id: int
    number: int
    tag: str
    opened_utc: str
    closed_utc: str | None
    state: JobState
    item: Item
    motor: Motor
    complaint: str
    load_state: str
    cause: str = ""
    work_done: str = ""
    prognosis: str = ""
    last_outcome: str | None = None
    runs: int = 0


class Run(msgspec.Struct, frozen=True, kw_only=True):
    """One filed run, as it was. `request` and `ceilings` are JSON text of what was asked and what then held.

    `samples`: readings in its trace. `complete` is False where the program ended before the run did.
    """

    id: int
    job: int
    kind: RunKind
    started_utc: str
    duration_s: float
    resource: str
    identity: str
    rated_volts: float
    load_state: str
    sequence_name: str
    request: str
    ceilings: str
    program: str
    result: RunResult
    complete: bool
    samples: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Trace:
    """Readbacks of a run, n samples each.

    sent, received: int64[n], ticks of TICK_S since the run began, bracketing each query.
    volts, amps, set_volts, set_amps: float64[n], V and A.
    flags: uint8[n]; bit 0 output on, bit 1 CC, bit 2 CV.
    """

    sent: npt.NDArray[np.int64]
    received: npt.NDArray[np.int64]
    volts: npt.NDArray[np.float64]
    amps: npt.NDArray[np.float64]
    set_volts: npt.NDArray[np.float64]
    set_amps: npt.NDArray[np.float64]
    flags: npt.NDArray[np.uint8]

    @property
    def t_s(self) -> npt.NDArray[np.float64]:
        """float64[n], s since the run began: the middle of each query."""
        return np.asarray((self.sent + self.received) * (TICK_S / 2), dtype=np.float64)


FLAG_ON, FLAG_CC, FLAG_CV = 1, 2, 4
