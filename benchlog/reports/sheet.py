"""What a job sheet tells, as a plain value: gathered once from the ledger, then said on paper, in HTML or in text."""

from collections.abc import Iterable, Sequence

import msgspec
import numpy as np
import numpy.typing as npt

from benchlog.errors import LedgerDamaged
from benchlog.ledger.captured import Captured, captured
from benchlog.ledger.costs import charges_of
from benchlog.ledger.edits import edits_of
from benchlog.ledger.findings import findings_of
from benchlog.ledger.measured import measured_start
from benchlog.ledger.store import Ledger
from benchlog.ledger.unlocks import Unlock, unlocks
from benchlog.motor.compare import Measured
from benchlog.outcome import Outcome
from benchlog.records import Attached, Charge, Edit, Entry, Event, EventKind, Finding, Job, Run, RunKind, Trace

SIMULATED = ",Simulated bench supply,"
"""What the simulated bench says of itself when it is asked: a run on it is a demonstration."""
DEMO_LEDGER = "demo-ledger.db"
"""Name of the ledger that `benchlog demo` works in."""

COLUMNS = 600
"""Buckets that a curve is drawn in: some three to a millimetre of paper."""

_MARKED = (EventKind.KICK, EventKind.TURNING, EventKind.MOVED, EventKind.TRIP, EventKind.HAND, EventKind.RESCUE)
_BEFORE = (RunKind.PROBE, RunKind.RECOVERY, RunKind.HAND)
Floats = npt.NDArray[np.float64]


class Outline(msgspec.Struct, frozen=True, kw_only=True):
    """A curve in fewer points that draw the same picture. t_s: s since the run began; values: V or A; float64[n]."""

    t_s: Floats
    values: Floats


class Curve(msgspec.Struct, frozen=True, kw_only=True):
    """What was read back in a run, for drawing: V and A over time, marks at their seconds, ceilings as they held."""

    run: Run
    volts: Outline
    amps: Outline
    marks: tuple[Event, ...] = ()
    ceiling_volts: float | None = None
    ceiling_amps: float | None = None
    measured: Measured | None = None


class Sheet(msgspec.Struct, frozen=True, kw_only=True):
    """All of a job that goes on its sheet. `as_of_utc`: when it was gathered; `earlier`: the job it came back from.

    `before`: the first probe or recovery; `after`: the last proof, or the last other run where nothing was proven;
    `freed`: the last run before that which freed it, where it is not the first.
    `starts`: the first and the last run of captured starts. `damaged`: what could not be read, in words.
    """

    job: Job
    as_of_utc: str
    demo: bool = False
    earlier: Job | None = None
    entries: tuple[Entry, ...] = ()
    findings: tuple[Finding, ...] = ()
    charges: tuple[Charge, ...] = ()
    runs: tuple[Run, ...] = ()
    edits: tuple[Edit, ...] = ()
    unlocks: tuple[Unlock, ...] = ()
    photos: tuple[Attached, ...] = ()
    before: Curve | None = None
    freed: Curve | None = None
    after: Curve | None = None
    starts: tuple[Captured, ...] = ()
    damaged: tuple[str, ...] = ()

    @property
    def cents(self) -> int:
        """What the job has cost so far, lines that were taken back included with their negatives."""
        return sum(charge.cents for charge in self.charges)


def gather(ledger: Ledger, job: Job, *, photos: Iterable[Attached] = ()) -> Sheet:
    """The sheet of a job as the ledger has it now. Raises LedgerError; a trace that can't be read is only told."""
    runs = ledger.runs(job.id)
    damaged: list[str] = []
    first, last = before_and_after(runs)
    until = len(runs) if last is None else runs.index(last)
    freed = next((run for run in reversed(runs[:until]) if run.samples and _freed(run)), None)
    return Sheet(
        job=job,
        as_of_utc=ledger.clock.utc(),
        demo=is_demo(ledger, runs),
        earlier=None if job.comeback_of is None else ledger.job(job.comeback_of),
        entries=tuple(ledger.entries(job.id)),
        findings=tuple(findings_of(ledger, job.id, replaced=True)),
        charges=tuple(charges_of(ledger, job.id)),
        runs=tuple(runs),
        edits=tuple(edits_of(ledger, job.id)),
        unlocks=tuple(unlocks(ledger, job.id)),
        photos=tuple(photos),
        before=None if first is None else _curve(ledger, first, damaged),
        freed=None if freed is None or freed in (first, last) else _curve(ledger, freed, damaged),
        after=None if last is None else _curve(ledger, last, damaged),
        starts=tuple(_starts(ledger, runs, damaged)),
        damaged=tuple(dict.fromkeys(damaged)),
    )


def _starts(ledger: Ledger, runs: Sequence[Run], damaged: list[str]) -> Iterable[Captured]:
    taken = [run.id for run in runs if run.kind is RunKind.START_UP and run.samples]
    for run in dict.fromkeys(taken[:1] + taken[-1:]):
        try:
            found = captured(ledger, run)
        except LedgerDamaged as error:
            damaged.append(error.what)
            continue
        if found.starts:
            yield found


def is_demo(ledger: Ledger, runs: Sequence[Run]) -> bool:
    """Whether it was on the simulated bench. A job without a run is as its ledger's last one, or as its name says."""
    looked_at = list(runs) or ledger.recent_runs(limit=1)
    return ledger.path.name == DEMO_LEDGER or any(SIMULATED in run.identity for run in looked_at)


def _freed(run: Run) -> bool:
    return run.kind in (RunKind.RECOVERY, RunKind.HAND) and run.result.outcome is Outcome.FREED


def before_and_after(runs: Sequence[Run]) -> tuple[Run | None, Run | None]:
    """The first probe or recovery with readings, else the first captured starts; the last proof, or where there is none
    since it was freed the last other run of them."""
    read = [run for run in runs if run.samples and run.kind is not RunKind.LEADS]
    starts = (run for run in read if run.kind is RunKind.START_UP)
    first = next((run for run in read if run.kind in _BEFORE), next(starts, None))
    proofs = [run for run in read if run.kind is RunKind.PROOF]
    freed = [run for run in read if _freed(run)]
    if proofs and freed and read.index(freed[-1]) > read.index(proofs[-1]):
        proofs = []  # it was freed once more, and not proven since
    last = next(reversed(proofs or read), None)
    return first, None if last is first else last


def outline(t_s: Floats, values: Floats, columns: int = COLUMNS) -> Outline:
    """First, lowest, highest and last of each of `columns` equal buckets of time, in the order they came.

    So a kick of one reading stays. Readings that are no numbers are left out. Few readings are kept as they are.
    """
    finite = np.isfinite(values) & np.isfinite(t_s)
    t_s, values = t_s[finite], values[finite]
    if len(t_s) <= 4 * columns:
        return Outline(t_s=t_s, values=values)
    edges = np.searchsorted(t_s, np.linspace(t_s[0], t_s[-1], columns + 1)[:-1])
    kept = []
    for begin, end in zip(edges, [*edges[1:], len(t_s)], strict=True):
        if end > begin:
            part = values[begin:end]
            kept += sorted({begin, begin + int(part.argmin()), begin + int(part.argmax()), end - 1})
    places = np.array(kept, dtype=np.int64)
    return Outline(t_s=t_s[places], values=values[places])


def _curve(ledger: Ledger, run: Run, damaged: list[str]) -> Curve | None:
    try:
        return curve_of(run, ledger.trace(run.id), ledger.events(run.id), measured_start(ledger, run))
    except LedgerDamaged as error:
        damaged.append(error.what)
        return None


def curve_of(run: Run, trace: Trace, events: Iterable[Event], measured: Measured | None = None) -> Curve:
    """A run's trace and events as they are drawn."""
    t_s = trace.t_s
    return Curve(
        run=run,
        volts=outline(t_s, trace.volts),
        amps=outline(t_s, trace.amps),
        marks=tuple(event for event in events if event.kind in _MARKED),
        ceiling_volts=_ceiling(run, "volts"),
        ceiling_amps=_ceiling(run, "amps"),
        measured=measured,
    )


class _Ceiling(msgspec.Struct):
    value: float


def _ceiling(run: Run, name: str) -> float | None:
    try:
        held = msgspec.json.decode(run.ceilings, type=dict[str, _Ceiling | None]).get(name)
    except msgspec.MsgspecError:  # a run of another time may say it otherwise; the curve is drawn without
        return None
    return None if held is None else held.value


_LEFT_OUT = ("before", "freed", "after", "starts", "photos")


def plain(sheet: Sheet) -> dict[str, object]:
    """For whoever computes with it: SI units, cents, UTC; without the curves, which `benchlog export` writes whole."""
    told = {name: getattr(sheet, name) for name in Sheet.__struct_fields__ if name not in _LEFT_OUT}
    built = msgspec.to_builtins(told)
    assert isinstance(built, dict)
    for run in built["runs"]:
        # What was asked and what then held are JSON text in the ledger.
        run["request"], run["ceilings"] = (msgspec.json.decode(run[name] or "null") for name in ("request", "ceilings"))
    curves = {"before": sheet.before, "freed": sheet.freed, "after": sheet.after}
    built["starts"] = [one.run.id for one in sheet.starts]
    return built | {"cents": sheet.cents} | {name: curve and curve.run.id for name, curve in curves.items()}
