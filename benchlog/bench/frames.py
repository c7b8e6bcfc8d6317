"""What passes between the bench process and the window or terminal that holds its lease.

Length-prefixed msgpack, both ways: a 4-byte little-endian length, then the message. The bench process reads orders
and writes frames. Frames may be dropped when the other side is slow; orders never are.
"""

from typing import TypeAlias

import msgspec

from benchlog.outcome import RunResult
from benchlog.records import Event, Item, RunKind
from benchlog.recovery.budget import Pulse
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.start_test import RunIn, StartTest
from benchlog.recovery.steps import Sequence
from benchlog.recovery.supply_check import SupplyCheck

MAX_MESSAGE = 4 * 1024 * 1024
RENEW_EVERY_S = 0.1
LEASE_S = 0.5
HELD_S = 0.25
"""s after which a key that was not said again to be down counts as up: a window too busy to say so, or gone."""


class Request(msgspec.Struct, frozen=True, kw_only=True, tag="request"):
    """Everything a run is to be. First message to a bench process, and kept as it was in the journal.

    `layers`: ceilings by layer, without the program's own and the supply's. `unattended`: confirm everything but a
    swap of leads; hand steps are recorded as skipped. `kicks_today`: already given to this job. `ambient_c`: °C.
    `known_ohm`, `earlier`: the winding and what went into it, by the runs of the last minutes. `starts`: of a proof.
    `item`, `complaint`: for the new job that a run without one gets.
    `unlocked`: a sentence that says under which unlock the owner's layer is what it is; "" under none.
    `start_test`: of a start-up run, as it was locked; `run_in`: of a run-in. `unit`: the key of a lot's unit, which
    must still have `unit_serial` when the run is filed: after a restore the key may be another's.
    `dialect`: of the supply, as JSON, "" for the usual one; `identity`: whom it was found for, "" for anyone.
    `output`: which of its outputs. `check`: of a check of the supply itself; `checked`: what the last one came to.
    """

    uid: str
    kind: RunKind
    resource: str
    rated_volts: float
    layers: dict[Layer, Limits]
    sequence: Sequence
    journal: str
    job: int | None
    item: Item | None = None
    complaint: str = ""
    load_state: str = "dry, uncoupled"
    unattended: bool = False
    kicks_today: int = 0
    ambient_c: float = 25.0
    lead_ohm: float = 0.0
    known_ohm: float | None = None
    earlier: tuple[Pulse, ...] = ()
    starts: int = 5
    unlocked: str = ""
    start_test: StartTest | None = None
    run_in: RunIn | None = None
    unit: int | None = None
    unit_serial: str = ""
    dialect: str = ""
    output: int = 1
    identity: str = ""
    check: SupplyCheck | None = None
    checked: str = ""


class Renew(msgspec.Struct, frozen=True, tag="renew"):
    """The lease is renewed: the other side's event loop is alive and takes "Output off"."""


class Stop(msgspec.Struct, frozen=True, tag="stop"):
    """Output off, now. The run ends as stopped."""

    reason: str = "output off was pressed"


class Answer(msgspec.Struct, frozen=True, tag="answer"):
    """What the operator says to a question."""

    question: int
    choice: str


class Note(msgspec.Struct, frozen=True, tag="note"):
    """A hand step or a remark, stamped into the running trace. `moved`: the operator felt or saw it move."""

    text: str
    hand: bool = True
    moved: bool = False


class Hold(msgspec.Struct, frozen=True, tag="hold"):
    """The key for the hand on the shaft: down, and said again with every renewal while it is; or up."""

    down: bool


Order: TypeAlias = Request | Renew | Stop | Answer | Note | Hold


class Used(msgspec.Struct, frozen=True):
    """How much of one ceiling is used. Units as Limits."""

    name: str
    value: float
    ceiling: float
    layer: str


class Progress(msgspec.Struct, frozen=True, kw_only=True, tag="progress"):
    """The readings since the last frame, and how things stand. Lists are of one length; t_s since the run began."""

    t_s: list[float]
    volts: list[float]
    amps: list[float]
    set_volts: float
    set_amps: float
    regulation: str
    output_on: bool
    motion: str  # resting, locked, creeping, turning, unknown
    used: list[Used]
    kicks: int
    readings_per_s: float


class Happened(msgspec.Struct, frozen=True, kw_only=True, tag="happened"):
    """An event, as it goes into the record."""

    event: Event


class Question(msgspec.Struct, frozen=True, kw_only=True, tag="question"):
    """The run waits, output off, for a person. The first choice goes on; "skip" leaves the step out."""

    id: int
    text: str
    choices: list[str]


class Ended(msgspec.Struct, frozen=True, kw_only=True, tag="ended"):
    """The run is over and its journal is complete on disk. `journal` is None where there is nothing to file."""

    result: RunResult
    journal: str | None


Frame: TypeAlias = Progress | Happened | Question | Ended
