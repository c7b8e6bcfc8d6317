"""Captured starts, limits and lots of one invented harbour workshop, made without a ledger."""

from datetime import UTC
from statistics import fmean

import numpy as np

from benchlog.ledger.captured import Captured
from benchlog.ledger.known_good import KeptLimits
from benchlog.ledger.start_tests import KeptTest
from benchlog.motor.fit import Fitted
from benchlog.motor.judging import judge
from benchlog.motor.limit_values import StartLimits
from benchlog.motor.limits import limits_from
from benchlog.motor.overlay import Curve
from benchlog.motor.start_figures import StartFigures, event_values
from benchlog.records import CheckKind, DenseCurve, Event, EventKind, Item, Lot, LotCheck, Purpose, Run, RunKind, Unit
from benchlog.recovery.start_test import StartTest
from benchlog.reports.document import Document
from benchlog.reports.lot import LotReport, Measured
from benchlog.reports.lot_document import lot_document
from benchlog.reports.regions import Region
from tests.reports.sheets import job, run

TEST = StartTest(name="cold start 12 V", volts=12.0, starts=3, on_s=1.0)


def figures(steady: float = 0.35, *, run_up: float | None = 0.24, seed: int = 0) -> StartFigures:
    """With intervals of 1 %, a little apart from start to start."""
    apart = 1 + 0.002 * np.random.default_rng(seed).standard_normal(5)
    told = {"peak_amps": 1.8, "run_up_s": run_up, "steady_amps": steady, "energy_j": 5.3, "ripple_amps": 0.004}
    values = {
        name: Fitted(value=value * k, low=value * k * 0.99, high=value * k * 1.01)
        for (name, value), k in zip(told.items(), apart.tolist(), strict=True)
        if value is not None
    }
    why = {} if run_up is not None else {"run_up_s": "not over by the end"}
    return StartFigures(values=values, why=why, interval_s=0.02, jitter_s=0.001, readings=55)


def curve(number: int = 1, *, of: int = 1, steady: float = 0.35, tau: float = 0.1, name: str = "") -> Curve:
    """Read every 20 ms, from 0.1 s before the trigger to 1 s after it."""
    t_s = np.asarray(np.arange(-5, 50) * 0.02 + 0.003 * number, dtype=np.float64)
    amps = np.where(t_s > 0, steady + (1.8 - steady) * np.exp(-np.maximum(t_s, 0) / tau), 0.001)
    volts = np.where(t_s > 0, 12.0, 0.002)
    return Curve(name=name or f"start {number}", run=of, number=number, t_s=t_s, volts=volts, amps=amps, window_s=0.02)


def captured(
    number: int = 1, *, steady: float = 0.35, tau: float = 0.1, run_up: float | None = 0.24, dense: bool = False
) -> Captured:
    """A run of three starts; with `dense` the supply measured the first of them itself."""
    told = tuple(figures(steady, run_up=run_up, seed=10 * number + k) for k in range(3))
    starts = tuple(
        Event(
            t_s=4.0 * (k + 1),
            kind=EventKind.START,
            text="",
            values=event_values(one)
            | {"number": k + 1, "trigger_s": 4.0 * k + 3, "volts": 12.0, "amps": 2.0, "delay_s": 0.0}
            | {"turning": "turning", "cut": ""},
        )
        for k, one in enumerate(told)
    )
    own = curve(1, of=number, steady=steady, tau=tau)
    array = DenseCurve(number=1, began_s=3.0, u_began_s=0.001, interval_s=0.02, volts=own.volts, amps=own.amps)
    return Captured(
        run=captured_run(number),
        starts=starts,
        curves=tuple(curve(k + 1, of=number, steady=steady, tau=tau) for k in range(3)),
        figures=told,
        dense=(array,) if dense else (),
        dense_curves=(Curve(**{name: getattr(own, name) for name in Curve.__slots__} | {"dense": True}),)
        if dense
        else (),
        lead_ohm=0.05,
        test=TEST,
    )


def captured_run(number: int = 1, **changes: object) -> Run:
    proof = run(RunKind.PROOF)
    kept = {name: getattr(proof, name) for name in Run.__struct_fields__}
    return Run(**(kept | {"id": number, "kind": RunKind.START_UP, "unit": number} | changes))


def limits(count: int = 8) -> StartLimits:
    """From so many good ones, whose steady current and run-up are some per cent apart."""
    good = [captured(n + 1, steady=0.35 + 0.004 * (n % 4), tau=0.1 + 0.002 * (n % 3)) for n in range(count)]
    return limits_from(
        [one.figures for one in good],
        [one.curves for one in good],
        test=TEST.name,
        version=TEST.version,
        runs=[one.run.id for one in good],
    )


def lot(**changes: object) -> Lot:
    fan = job(
        item=Item(kind="cabin fan", model="12 V, 120 mm"),
        purpose=Purpose.MEASURING,
        complaint="Cabin fans",
        tag="H-0014",
        number=14,
    )
    told: dict[str, object] = {
        "job": fan,
        "name": "Cabin fans",
        "test_id": 1,
        "limits_id": 1,
        "operator": "bench",
        "leads": "1 m",
        "fixture": "foam cradle",
        "ambient_c": 21.0,
    }
    return Lot(**(told | changes))  # type: ignore[arg-type]


def measured(number: int, *, steady: float = 0.352, by: StartLimits | None = None, **changes: object) -> Measured:
    """A unit with its run, judged where there are limits."""
    found = captured(number, steady=steady)
    judged = None if by is None else judge(found.figures, found.curves, by)
    passed = None if judged is None else judged.passed
    told: dict[str, object] = {
        "unit": Unit(id=number, job=14, number=number, serial=f"CF-{200 + number}", run=number, passed=passed),
        "run": found.run,
        "judged": judged,
        "means": {name: fmean(one.values[name].value for one in found.figures) for name in found.figures[0].values},
        "curves": found.curves,
    }
    return Measured(**(told | changes))  # type: ignore[arg-type]


def check(kind: CheckKind, value: float, unit: str, *, passed: bool = True) -> LotCheck:
    return LotCheck(
        id=1, utc="2026-03-05T08:15:00.000Z", kind=kind, value=value, unit=unit, passed=passed, who="bench", run=None
    )


def report(**changes: object) -> LotReport:
    """Seven units, of which the fifth takes half as much again."""
    by = limits()
    kept = KeptLimits(id=1, item=Item(kind="cabin fan"), limits=by, utc="2026-03-05T08:00:00.000Z", who="bench")
    told: dict[str, object] = {
        "lot": lot(),
        "as_of_utc": "2026-11-25T21:00:00.000Z",
        "test": KeptTest(id=1, test=TEST, utc="2026-03-05T08:00:00.000Z", who="bench", digest="0" * 64),
        "limits": kept,
        "measured": tuple(measured(n, by=by, steady=0.53 if n == 5 else 0.352) for n in range(1, 8)),
        "checks": (check(CheckKind.ZERO, 0.0012, "A"), check(CheckKind.SHORT, 0.061, "Ω")),
    }
    return LotReport(**(told | changes))  # type: ignore[arg-type]


def told(report: LotReport, region: Region | None = None) -> Document:
    return lot_document(report, region or Region(), zone=UTC)
