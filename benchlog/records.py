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
    START_UP = "start-up"
    RUN_IN = "run-in"
    CHECK = "check"


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
    START = "start"  # one start was captured: number, trigger_s, its figures and the reading interval achieved
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
    """Where a job stands. All but `CLOSED` are open, and work on them may go on."""

    OPEN = "open"
    FOR_APPROVAL = "waiting-for-approval"
    FOR_PART = "waiting-for-part"
    FOR_OWNER = "waiting-for-owner"
    CLOSED = "closed"


class Result(StrEnum):
    """What a job came to, as said when it was closed."""

    UNSAID = ""
    WORKS = "works"
    PARTLY = "partly"
    NOT_REPAIRED = "not-repaired"


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
    RunKind.START_UP: Stage.PROVE,
    RunKind.RUN_IN: Stage.PROVE,
    RunKind.CHECK: Stage.PROBE,
}
"""The stage of the job that a run belongs to."""


class EntryKind(StrEnum):
    """What a line in a job's record is. Hand steps are told apart because the history counts what they do."""

    NOTE = "note"
    CHECK = "check"
    TURNED = "turned"
    TAPPED = "tapped"
    SOAKED = "soaked"
    WARMED = "warmed"
    OILED = "oiled"
    STATE = "state"
    CORRECTION = "correction"


HAND_STEPS = (EntryKind.TURNED, EntryKind.TAPPED, EntryKind.SOAKED, EntryKind.WARMED, EntryKind.OILED)


class Entry(msgspec.Struct, frozen=True, kw_only=True):
    """A dated line in a job's own record: a check made, a hand step, a closing remark. Never edited."""

    utc: str
    stage: Stage
    text: str
    who: str = ""
    kind: EntryKind = EntryKind.NOTE


class ChargeKind(StrEnum):
    PART = "part"
    MINUTES = "minutes"
    OTHER = "other"


class Charge(msgspec.Struct, frozen=True, kw_only=True):
    """A line of what a job costs. `count` pieces or minutes; `each_cents` a piece, or an hour; `cents` for all of it.

    Never edited: `corrects` is the line that this one takes back.
    """

    id: int
    utc: str
    kind: ChargeKind
    text: str
    count: int
    each_cents: int
    cents: int
    who: str = ""
    part_id: int | None = None
    corrects: int | None = None


class Part(msgspec.Struct, frozen=True, kw_only=True):
    """A spare part that the shop keeps: its price and how many are there."""

    id: int
    name: str
    number: str
    each_cents: int
    stock: int


class Finding(msgspec.Struct, frozen=True, kw_only=True):
    """A part seen while an item is taken apart: what, its marking, where, what it is thought to do, its value.

    Never edited: `corrects` is the finding in whose place it stands.
    """

    id: int
    utc: str
    part: str
    marking: str = ""
    place: str = ""
    purpose: str = ""
    value: str = ""
    who: str = ""
    corrects: int | None = None


class Attached(msgspec.Struct, frozen=True, kw_only=True):
    """A photo or another file of a job. `size` bytes of the original; `width`, `height` px as seen, of a picture."""

    id: int
    utc: str
    sha256: str
    name: str
    media_type: str
    size: int
    width: int | None = None
    height: int | None = None
    caption: str = ""
    who: str = ""
    thumbnail: bytes | None = None


class Edit(msgspec.Struct, frozen=True, kw_only=True):
    """A field of a job as it was and as it became; with `run` it is about a run, which itself stays as it is."""

    id: int
    utc: str
    field: str
    old: str
    new: str
    who: str = ""
    why: str = ""
    run: int | None = None
    undone_utc: str | None = None


class Purpose(StrEnum):
    """What a job is for. The history counts repairs alone."""

    REPAIR = "repair"
    MEASURING = "measuring"


class TakenIn(msgspec.Struct, frozen=True, kw_only=True):
    """What is asked about a job when it is taken in, beside the thing itself. See Job."""

    owner: str = ""
    contact: str = ""
    who: str = ""
    consent: bool = False
    spending_limit_cents: int | None = None
    opened_before: str = ""
    pumped: str = ""
    comeback_of: int | None = None


class Closing(msgspec.Struct, frozen=True, kw_only=True):
    """What is said when a job is closed. `method`: what did it; `warranty_days`: on what was done, None for none."""

    cause: str
    work_done: str = ""
    prognosis: str = ""
    result: Result = Result.UNSAID
    method: str = ""
    advice: str = ""
    warranty_days: int | None = None


class Job(msgspec.Struct, frozen=True, kw_only=True):
    """One repair, or one lot of units that are measured. `number` is what people call it; `id` is the ledger's key.

    Closing fields are empty until then. `owner`: whose thing it is, and how to reach them: `contact`. `who`: the
    technician. `consent`: the owner agreed to the attempt. `opened_before`: who else was in it; `pumped`: what it
    moved. `comeback_of`: the key of an earlier job of the same thing.
    """

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
    owner: str = ""
    contact: str = ""
    who: str = ""
    consent: bool = False
    spending_limit_cents: int | None = None
    opened_before: str = ""
    pumped: str = ""
    waiting_for: str = ""
    waiting_since_utc: str | None = None
    result: Result = Result.UNSAID
    method: str = ""
    advice: str = ""
    warranty_days: int | None = None
    comeback_of: int | None = None
    last_outcome: str | None = None
    runs: int = 0
    purpose: Purpose = Purpose.REPAIR


class Lot(msgspec.Struct, frozen=True, kw_only=True):
    """Units of one kind, measured one after the other: a job whose purpose is measuring, and what belongs to it.

    `test_id`: the start test it is measured by; `limits_id`: the known good ones it is judged against, None for none
    yet. `operator`, `leads`, `fixture`: who measures with what; `ambient_c` °C. `units`: how many were measured.
    """

    job: Job
    name: str
    test_id: int
    limits_id: int | None
    operator: str
    leads: str
    fixture: str
    ambient_c: float
    units: int = 0


class Unit(msgspec.Struct, frozen=True, kw_only=True):
    """One of a lot, by its serial. `run`: the last that captured its starts, None where none did.

    `passed`: the last verdict that was one; it stands, whatever was measured and not judged since. `judged_run`: the
    run it is of. `judged`: that judgement as JSON text; without a verdict that of the last run, "" where it has none.
    `failed_before`: a judgement before the one that stands failed it.
    """

    id: int
    job: int
    number: int
    serial: str
    run: int | None = None
    passed: bool | None = None
    judged: str = ""
    judged_run: int | None = None
    failed_before: bool = False

    @property
    def counts(self) -> int | None:
        """The run that its verdict is of; the last one where it has none."""
        return self.run if self.judged_run is None else self.judged_run

    @property
    def ever_failed(self) -> bool:
        """By any judgement of any of its runs."""
        return self.failed_before or self.passed is False


class CheckKind(StrEnum):
    """What of a lot's bench is checked each shift: the readback at no current, and the leads, their clips joined."""

    ZERO = "zero"
    SHORT = "short"


class LotCheck(msgspec.Struct, frozen=True, kw_only=True):
    """That a lot's bench was checked: `value` in `unit`. `run`: which measured it; None where a person says so."""

    id: int
    utc: str
    kind: CheckKind
    value: float
    unit: str
    passed: bool
    who: str = ""
    run: int | None = None


class Run(msgspec.Struct, frozen=True, kw_only=True):
    """One filed run, as it was. `request` and `ceilings` are JSON text of what was asked and what then held.

    `samples`: readings in its trace. `complete` is False where the program ended before the run did. `freed_rung`: the
    rung whose kick freed it. `unit`: the key of the unit of a lot that it is of.
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
    freed_rung: str = ""
    unit: int | None = None


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


@dataclass(frozen=True, slots=True, kw_only=True)
class DenseCurve:
    """What the supply itself measured of start `number`, one window of `interval_s` after the other.

    The first window began `began_s` into the run, give or take `u_began_s`. volts, amps: float64[n], V and A.
    """

    number: int
    began_s: float
    u_began_s: float
    interval_s: float
    volts: npt.NDArray[np.float64]
    amps: npt.NDArray[np.float64]


FLAG_ON, FLAG_CC, FLAG_CV = 1, 2, 4
