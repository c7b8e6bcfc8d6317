"""Captured starts in the ledger: the curves of a run, their figures, what the supply measured of them itself."""

from collections.abc import Sequence
from dataclasses import dataclass

import msgspec
import numpy as np
from sqlalchemy import ColumnElement, select

from benchlog.errors import Refused
from benchlog.ledger.rows import dense_of, event_of, run_of, select_runs, trace_of
from benchlog.ledger.schema import DenseRow, EventRow, RunRow, TraceRow
from benchlog.ledger.store import Ledger
from benchlog.motor.overlay import Curve, curves_of
from benchlog.motor.start_figures import StartFigures, figures_from_event
from benchlog.records import DenseCurve, Event, EventKind, Lot, Run, RunKind, Trace
from benchlog.recovery.start_test import StartTest

BEFORE_S = 0.1
"""Kept of the time before the trigger where the run does not say its test."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Captured:
    """A run that captured starts. `curves`, `figures`, `starts`: one for each start, by the same place.

    `starts`: its events as recorded. `figures`: as worked out when it was measured. `dense`: what the supply measured
    itself, of some starts or none; `dense_curves`: the same since the trigger, as long as the start was held.
    `lead_ohm`: Ω, as the run had it. `test`: None where the run does not say it.
    """

    run: Run
    starts: tuple[Event, ...]
    curves: tuple[Curve, ...]
    figures: tuple[StartFigures, ...]
    dense: tuple[DenseCurve, ...]
    dense_curves: tuple[Curve, ...]
    lead_ohm: float
    test: StartTest | None


class _Asked(msgspec.Struct):
    """What is read of a filed request; a program of another age may have written more."""

    lead_ohm: float = 0.0
    start_test: StartTest | None = None


def captured(ledger: Ledger, run: int) -> Captured:
    """Of a run, by its key. Raises Refused where there is none or it captured no starts, LedgerError."""
    found = _captured(ledger, RunRow.id == run)
    if not found:
        raise Refused(f"run {ledger.run(run).id} captured no starts")
    return found[0]


def captured_of_lot(ledger: Ledger, lot: Lot) -> list[Captured]:
    """All of a lot in the order in which they began, in four questions however many. Raises LedgerError."""
    return _captured(ledger, RunRow.job_id == lot.job.id)


def captured_of_runs(ledger: Ledger, runs: Sequence[int]) -> list[Captured]:
    """In the order in which they began, those that captured starts. Raises LedgerError."""
    return [one for run in dict.fromkeys(runs) for one in _captured(ledger, RunRow.id == run)]


def _captured(ledger: Ledger, wanted: ColumnElement[bool]) -> list[Captured]:
    of_starts = (RunRow.kind == RunKind.START_UP.value, wanted)
    with ledger.reading() as session:
        rows = session.execute(select_runs().where(*of_starts).order_by(RunRow.started_utc, RunRow.id))
        runs = [run_of(ledger.path, row) for row in rows]
        events: dict[int, list[Event]] = {run.id: [] for run in runs}
        traces: dict[int, Trace] = {}
        dense: dict[int, list[DenseCurve]] = {run.id: [] for run in runs}
        of_runs = select(EventRow).join(RunRow, RunRow.id == EventRow.run_id).where(*of_starts)
        for event in session.scalars(of_runs.order_by(EventRow.run_id, EventRow.seq)):
            events[event.run_id].append(event_of(ledger.path, event))
        for trace in session.scalars(select(TraceRow).join(RunRow, RunRow.id == TraceRow.run_id).where(*of_starts)):
            traces[trace.run_id] = trace_of(ledger.path, trace)
        of_dense = select(DenseRow).join(RunRow, RunRow.id == DenseRow.run_id).where(*of_starts)
        for curve in session.scalars(of_dense.order_by(DenseRow.run_id, DenseRow.seq)):
            dense[curve.run_id].append(dense_of(ledger.path, curve))
    return [_of_run(run, traces[run.id], events[run.id], dense[run.id]) for run in runs]


def _of_run(run: Run, trace: Trace, events: list[Event], dense: list[DenseCurve]) -> Captured:
    try:
        asked = msgspec.json.decode(run.request, type=_Asked)
    except msgspec.MsgspecError:
        asked = _Asked()
    before_s = BEFORE_S if asked.start_test is None else asked.start_test.before_s
    curves = {curve.number: curve for curve in curves_of(trace, events, run=run.id, before_s=before_s)}
    starts = {number: event for event in events if (number := _number(event)) in curves}
    return Captured(
        run=run,
        starts=tuple(starts.values()),
        curves=tuple(curves[number] for number in starts),
        figures=tuple(figures_from_event(event) for event in starts.values()),
        dense=tuple(dense),
        dense_curves=tuple(
            _since_trigger(one, starts[one.number], curves[one.number]) for one in dense if one.number in starts
        ),
        lead_ohm=asked.lead_ohm,
        test=asked.start_test,
    )


def _number(event: Event) -> int | None:
    number = event.values.get("number")
    return number if event.kind is EventKind.START and isinstance(number, int) else None


def _since_trigger(dense: DenseCurve, start: Event, polled: Curve) -> Curve:
    """A value stands for the middle of its window. What came after the last reading is of another level."""
    begun_s = dense.began_s - float(start.values["trigger_s"] or 0.0)
    t_s = np.asarray(begun_s + (np.arange(len(dense.amps)) + 0.5) * dense.interval_s, dtype=np.float64)
    held = slice(0, int(np.searchsorted(t_s, polled.t_s[-1] + polled.window_s / 2)))
    return Curve(
        name=f"start {dense.number}, dense",
        run=polled.run,
        number=dense.number,
        t_s=t_s[held],
        volts=dense.volts[held],
        amps=dense.amps[held],
        window_s=dense.interval_s,
        dense=True,
    )
