"""Sheets of one invented harbour workshop, made without a ledger."""

from datetime import UTC

import numpy as np

from benchlog.outcome import Outcome, RunResult, WindingVerdict
from benchlog.records import (
    FLAG_ON,
    Charge,
    ChargeKind,
    Event,
    EventKind,
    Item,
    Job,
    JobState,
    Motor,
    Result,
    Run,
    RunKind,
    Trace,
)
from benchlog.reports.document import Document, document
from benchlog.reports.regions import Region
from benchlog.reports.sheet import Curve, Sheet, curve_of

NASTY = "<script>alert(1)</script> & \"Süß\" 'Łódź'"


def job(**changes: object) -> Job:
    told: dict[str, object] = {
        "id": 7,
        "number": 7,
        "tag": "H-0007",
        "opened_utc": "2026-03-05T08:10:00.000Z",
        "closed_utc": "2026-03-06T10:00:00.000Z",
        "state": JobState.CLOSED,
        "item": Item(kind="bilge pump", model="12 V, 30 l/min", serial="BP-0417"),
        "motor": Motor(rated_volts=12.0),
        "complaint": "Hums, but nothing comes out.",
        "load_state": "dry, uncoupled",
        "cause": "dried residue",
        "result": Result.WORKS,
        "spending_limit_cents": 12000,
        "warranty_days": 90,
    }
    return Job(**(told | changes))  # type: ignore[arg-type]


def run(kind: RunKind = RunKind.RECOVERY, *, id: int = 1, samples: int = 1000, **changes: object) -> Run:
    result = RunResult(
        outcome=Outcome.RUNS if kind is RunKind.PROOF else Outcome.FREED,
        reason="it held 3.81 V",
        winding_verdict=WindingVerdict.WINDING,
        resistance_ohm=2.05,
        resistance_low_ohm=2.0,
        resistance_high_ohm=2.1,
        kicks=2,
        max_volts=12.004,
        max_amps=1.46,
        output_confirmed_off=True,
    )
    told: dict[str, object] = {
        "id": id,
        "job": 7,
        "kind": kind,
        "started_utc": f"2026-03-05T0{id}:40:00.000Z",
        "duration_s": 20.0,
        "resource": "",
        "identity": "Bench,Supply,1,1.0",
        "rated_volts": 12.0,
        "load_state": "dry, uncoupled",
        "sequence_name": "",
        "request": "{}",
        "ceilings": '{"volts":{"value":12.0,"layer":"job"},"amps":null}',
        "program": "",
        "result": result,
        "complete": True,
        "samples": samples,
    }
    return Run(**(told | changes))  # type: ignore[arg-type]


def trace(volts: list[float], amps: list[float] | None = None, *, ticks: int = 100) -> Trace:
    """A reading every `ticks` of 0.1 ms."""
    count = len(volts)
    sent = np.arange(count, dtype=np.int64) * ticks
    return Trace(
        sent=sent,
        received=sent + 8,
        volts=np.array(volts),
        amps=np.array(amps if amps is not None else [v / 8 for v in volts]),
        set_volts=np.full(count, 12.0),
        set_amps=np.full(count, 2.0),
        flags=np.full(count, FLAG_ON, dtype=np.uint8),
    )


def curve(kind: RunKind = RunKind.RECOVERY, *, id: int = 1, samples: int = 1000) -> Curve:
    """Three kicks of 12 V, a hundredth of the run each."""
    volts = [12.0 if n * 100 // samples in (20, 50, 80) else 0.0 for n in range(samples)]
    kicks = (Event(t_s=2.0 * n, kind=EventKind.KICK, text="", values={"number": n}) for n in (1, 2, 3))
    return curve_of(run(kind, id=id, samples=samples), trace(volts), kicks)


def charge(id: int, cents: int, text: str = "shaft seal", **changes: object) -> Charge:
    told: dict[str, object] = {
        "id": id,
        "utc": "2026-03-05T09:00:00.000Z",
        "kind": ChargeKind.PART,
        "text": text,
        "count": 1,
        "each_cents": abs(cents),
        "cents": cents,
    }
    return Charge(**(told | changes))  # type: ignore[arg-type]


def sheet(**changes: object) -> Sheet:
    before, after = curve(), curve(RunKind.PROOF, id=2)
    told: dict[str, object] = {
        "job": job(),
        "as_of_utc": "2026-11-25T21:00:00.000Z",
        "runs": (before.run, after.run),
        "charges": (charge(1, 1250), charge(2, 4500, "cleaned", kind=ChargeKind.MINUTES, count=45, each_cents=6000)),
        "before": before,
        "after": after,
    }
    return Sheet(**(told | changes))  # type: ignore[arg-type]


def told(made: Sheet, region: Region | None = None, currency: str = "") -> Document:
    return document(made, region or Region(), currency=currency, zone=UTC)
