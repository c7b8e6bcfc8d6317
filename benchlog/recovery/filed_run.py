"""A run as it was filed, and what today's code makes of it: plain values."""

from dataclasses import dataclass, field

from benchlog.outcome import RunResult
from benchlog.records import Event, RunKind, Trace
from benchlog.recovery.budget import Pulse
from benchlog.recovery.ceilings import Ceilings
from benchlog.recovery.start_test import RunIn, StartTest
from benchlog.recovery.steps import Sequence


@dataclass(frozen=True, slots=True, kw_only=True)
class Filed:
    """A run as it was filed: what was asked, what held, what was read, and what it came to. Units as in records."""

    kind: RunKind
    resource: str
    rated_volts: float
    ceilings: Ceilings
    sequence: Sequence
    trace: Trace
    events: tuple[Event, ...]
    result: RunResult
    complete: bool
    duration_s: float
    unattended: bool = True
    kicks_today: int = 0
    ambient_c: float = 25.0
    lead_ohm: float = 0.0
    known_ohm: float | None = None
    earlier: tuple[Pulse, ...] = ()
    starts: int = 5
    start_test: StartTest | None = None
    run_in: RunIn | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """Where today's code concludes otherwise. `t_s`: s into the run; None where it is about the whole of it."""

    t_s: float | None
    what: str
    filed: str
    today: str
    why: str = ""


@dataclass(slots=True, kw_only=True)
class Replayed:
    """What came of it. `stepped_over`, `repeated`: readings; `remarks`: what the comparison rests on, in sentences.

    `undecided`: readings of which the record's 0.1 ms do not tell whether the supply had settled by then.
    """

    differences: list[Difference] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)
    readings: int = 0
    stepped_over: int = 0
    repeated: int = 0
    undecided: int = 0
    diverged_s: float | None = None

    @property
    def inexact(self) -> bool:
        """Whether today's plan may have counted a reading more or less than the filed one: figures vary a little."""
        return bool(self.stepped_over or self.repeated or self.undecided)
