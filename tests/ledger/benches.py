"""Journals and traces as a bench would leave them, for one invented harbour workshop."""

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import msgspec
import numpy as np

from benchlog.bench.frames import Request
from benchlog.bench.journal import Armed, Begun, Block, Dense, Ending, Happening, Journal, Sample
from benchlog.clock import Clock
from benchlog.ledger.filing import file_journal
from benchlog.ledger.lots import open_lot
from benchlog.ledger.start_tests import lock
from benchlog.ledger.store import Ledger
from benchlog.motor.fit import Fitted
from benchlog.motor.limits import Band, Judged, StartLimits
from benchlog.motor.start_figures import StartFigures, event_values
from benchlog.outcome import Outcome, RunResult, WindingVerdict
from benchlog.records import FLAG_CC, FLAG_CV, FLAG_ON, Event, EventKind, Item, Lot, Motor, RunKind, Trace
from benchlog.recovery.ceilings import intersect
from benchlog.recovery.start_test import StartTest
from benchlog.recovery.steps import Kicks, Sequence

BILGE_PUMP = Item(kind="bilge pump", make="", model="12 V", serial="BP-17")
CABIN_FAN = Item(kind="cabin fan")
MOTOR = Motor(rated_volts=12.0)
BEGAN = "2026-11-25T10:00:00.000Z"
SEQUENCE = Sequence(name="short", steps=(Kicks(name="first", voltage=12.0, current=1.0, on_s=0.1, off_s=1.0, tries=3),))
FREED = RunResult(
    outcome=Outcome.FREED,
    reason="it turned for 2 s",
    winding_verdict=WindingVerdict.WINDING,
    resistance_ohm=2.05,
    resistance_low_ohm=2.0,
    resistance_high_ohm=2.1,
    kicks=2,
    max_volts=12.004,
    max_amps=1.002,
    winding_bound_c=31.5,
    locked_s=0.4,
    output_confirmed_off=True,
)


def request(uid: str = "run-1", *, job: int | None = None, journal: str = "") -> Request:
    return Request(
        uid=uid,
        kind=RunKind.RECOVERY,
        resource="TCPIP::127.0.0.1::5025::SOCKET",
        rated_volts=12.0,
        layers={},
        sequence=SEQUENCE,
        journal=journal,
        job=job,
    )


def kick(t_s: float, number: int = 1) -> Event:
    return Event(t_s=t_s, kind=EventKind.KICK, text=f"kick {number}", values={"number": number, "volts": 12.0})


def blocks(
    asked: Request,
    *,
    utc: str = BEGAN,
    trace: Trace | None = None,
    events: tuple[Event, ...] = (kick(1.0, 1), kick(2.5, 2)),
    result: RunResult | None = FREED,
    duration_s: float = 4.0,
) -> list[Block]:
    """A whole journal's blocks; without an ending where `result` is None."""
    trace = small_trace() if trace is None else trace
    said: list[Block] = [
        Begun(asked, utc, "benchlog 0.1.0"),
        Armed("Bench,Supply,1,1.0", "plain", intersect({})),
        *(Happening(event) for event in events),
        *samples_of(trace),
    ]
    return said if result is None else [*said, Ending(result, duration_s)]


def samples_of(trace: Trace) -> list[Sample]:
    columns = (trace.sent, trace.received, trace.volts, trace.amps, trace.set_volts, trace.set_amps, trace.flags)
    return [Sample(*row) for row in zip(*(column.tolist() for column in columns), strict=True)]


def write_journal(path: Path, said: list[Block]) -> Path:
    with Journal(path, sync_thread=False) as journal:
        for block in said:
            journal.write(block)
    return path


def leave_journal(folder: Path, uid: str, *, job: int | None = None, result: RunResult | None = FREED) -> Path:
    """A finished journal in `folder`, or one cut short where `result` is None."""
    return write_journal(folder / f"{uid}.journal", blocks(request(uid, job=job), result=result))


def small_trace(samples: int = 40) -> Trace:
    return bench_trace(samples, seed=7)


def bench_trace(samples: int, *, seed: int = 1, per_s: float = 96.0, on_share: float = 0.1) -> Trace:
    """What a recovery looks like on a 1 mV / 1 mA supply: a kick each 3 s, noise of one or two steps while on,
    queries 0.1 to 0.3 ms late of their schedule, replies that take as much longer or shorter."""
    noise = np.random.default_rng(seed)
    sent = np.rint(np.arange(samples) * (1e4 / per_s) + noise.uniform(1.0, 3.0, samples)).astype(np.int64)
    received = sent + 8 + np.rint(noise.uniform(1.0, 3.0, samples)).astype(np.int64)
    on = (sent / 1e4) % 3.0 < 3.0 * on_share
    rung = np.minimum(sent // 300_000, 4)
    set_volts = np.where(on, 6.0 + 1.5 * rung, 0.0)
    set_amps = np.where(on, 0.5 + 0.25 * rung, 0.1)
    amps = np.where(on, np.rint(set_amps * 1e3) + noise.integers(-2, 3, samples), 0)
    volts = np.where(on, np.rint(amps * 2.05) + noise.integers(-2, 3, samples), 0)
    return Trace(
        sent=sent,
        received=received,
        volts=volts / 1e3,
        amps=amps / 1e3,
        set_volts=set_volts,
        set_amps=set_amps,
        flags=np.where(on, FLAG_ON | FLAG_CC, FLAG_CV).astype(np.uint8),
    )


FANS = Item(kind="cabin fan", model="12 V, 150 mm")
QUICK_LOOK = StartTest(name="quick look", volts=12.0, starts=2, on_s=1.0)
RAN = msgspec.structs.replace(FREED, outcome=Outcome.RUNS, reason="all starts turned", kicks=0)
PACE_S, START_EVERY_S, ZERO_S = 0.02, 2.0, 0.5


@cache
def _empty_ledger() -> bytes:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "empty.ledger"
        Ledger.open(path).close()
        return path.read_bytes()


def fresh_ledger(folder: Path, clock: Clock) -> Ledger:
    """A new one, as a copy of an empty one: to make all tables anew for every test takes longer than most tests."""
    path = folder / "workshop.ledger"
    path.write_bytes(_empty_ledger())
    return Ledger.open(path, clock=clock)


def a_lot(ledger: Ledger, *, name: str = "fans of spring", item: Item = FANS) -> Lot:
    return open_lot(
        ledger,
        name=name,
        item=item,
        motor=MOTOR,
        test_id=lock(ledger, QUICK_LOOK).id,
        operator="day bench",
        leads="blue, 1 m",
        fixture="clamp B",
        ambient_c=21.5,
    )


def figures_like(peak_amps: float) -> StartFigures:
    values = {"peak_amps": Fitted(value=peak_amps, low=peak_amps - 0.01, high=peak_amps + 0.02)}
    why = {"run_up_s": "over before the first reading of its own"}
    return StartFigures(values=values, why=why, interval_s=PACE_S, jitter_s=0.001, readings=50)


def starts_trace(peaks: tuple[float, ...]) -> Trace:
    """Each start: ZERO_S of nothing, a second at 12 V whose current falls from its peak to 0.5 A, and nothing."""
    ticks = np.rint(np.arange(0.0, START_EVERY_S * len(peaks), PACE_S) * 1e4).astype(np.int64)
    t_s = ticks / 1e4
    since_s = t_s % START_EVERY_S - ZERO_S
    on = (since_s >= -1e-9) & (since_s < 1.0)
    peak = np.array(peaks)[np.minimum((t_s // START_EVERY_S).astype(int), len(peaks) - 1)]
    amps = np.where(on, np.round(0.5 + (peak - 0.5) * np.exp(-np.maximum(since_s, 0.0) / 0.1), 3), 0.0)
    return Trace(
        sent=ticks,
        received=ticks + 80,
        volts=np.where(on, 12.0, 0.0),
        amps=amps,
        set_volts=np.where(on, 12.0, 0.0),
        set_amps=np.full(len(ticks), 3.0),
        flags=np.where(on, FLAG_ON | FLAG_CV, FLAG_CV).astype(np.uint8),
    )


def start_up(
    uid: str,
    *,
    job: int | None = None,
    unit: int | None = None,
    unit_serial: str = "",
    peaks: tuple[float, ...] = (2.0, 2.1),
    dense: tuple[Dense, ...] = (),
    utc: str = BEGAN,
    kind: RunKind = RunKind.START_UP,
    result: RunResult | None = RAN,
) -> list[Block]:
    """The journal of a run that captured starts with these peaks, in A."""
    asked = msgspec.structs.replace(
        request(uid, job=job),
        kind=kind,
        unit=unit,
        unit_serial=unit_serial,
        start_test=QUICK_LOOK,
        lead_ohm=0.12,
        item=FANS,
    )
    events = []
    for number, peak in enumerate(peaks, 1):
        began_s = (number - 1) * START_EVERY_S + ZERO_S
        told: dict[str, float | int | str | bool | None] = {
            "number": number,
            "trigger_s": began_s,
            "began_s": began_s,
            "volts": 12.0,
            "turning": "turning",
        }
        text = f"Start {number} of {len(peaks)}"
        events.append(
            Event(t_s=began_s + 1.0, kind=EventKind.START, text=text, values=told | event_values(figures_like(peak)))
        )
    trace = starts_trace(peaks)
    said = blocks(asked, utc=utc, trace=trace, events=tuple(events), result=result)
    return [*said[:2], *dense, *said[2:]]


def file_start_up(ledger: Ledger, folder: Path, uid: str, **changes: object) -> int:
    """Files such a run; its key."""
    return file_journal(ledger, write_journal(folder / f"{uid}.journal", start_up(uid, **changes))).run  # type: ignore[arg-type]


def limits_like(runs: tuple[int, ...], *, version: int = 1) -> StartLimits:
    """The peak between 1.8 and 2.2 A."""
    return StartLimits(
        test=QUICK_LOOK.name,
        version=version,
        coverage=0.95,
        confidence=0.95,
        n=5,
        starts_each=2,
        bands={"peak_amps": Band(low=1.8, high=2.2, mean=2.0, spread=0.04, n=5, factor=5.079)},
        curve=None,
        why={"run_up_s": "over before the first reading of its own"},
        runs=runs,
        within={"peak_amps": 0.01},
        between={"peak_amps": 0.04},
        warning="",
    )


def judged_as(passed: bool | None) -> Judged:
    sentence = "It starts as the known good ones do." if passed else "It takes more than they do."
    return Judged(
        passed=passed, rows=(), curve_outside_share=None, curve_outside_at_s=None, sentence=sentence, because="Peak."
    )


def fields_of(value: msgspec.Struct) -> dict[str, object]:
    return {name: getattr(value, name) for name in value.__struct_fields__}
