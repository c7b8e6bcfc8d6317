"""Rows of the ledger to plain values. A word that this program does not know is damage, never a guess."""

from pathlib import Path
from typing import Any, TypeVar

import msgspec
from sqlalchemy import Row, Select, func, select

from benchlog.errors import LedgerDamaged
from benchlog.ledger.dense_codec import decode_dense
from benchlog.ledger.schema import DenseRow, EntryRow, EventRow, ItemRow, JobRow, MotorRow, RunRow, TraceRow
from benchlog.ledger.trace_codec import Coded, TraceDamaged, decode
from benchlog.outcome import RunResult
from benchlog.records import DenseCurve, Entry, Event, Item, Job, Motor, Run, Trace

_Value = TypeVar("_Value", bound=msgspec.Struct)

_RUN_COLUMNS = tuple(name for name in Run.__struct_fields__ if name not in {"job", "result", "samples", "unit"})
_RESULT_COLUMNS = RunResult.__struct_fields__


def select_jobs() -> Select[Any]:
    """Jobs with their item, their motor and how many runs they have; without the long text that they are found by."""
    runs = select(func.count()).where(RunRow.job_id == JobRow.id).correlate(JobRow).scalar_subquery()
    return (
        select(
            *(column for column in JobRow.__table__.columns if column.name != "searched"),
            *(ItemRow.__table__.c[name].label(f"item_{name}") for name in Item.__struct_fields__),
            *(MotorRow.__table__.c[name].label(f"motor_{name}") for name in Motor.__struct_fields__),
            runs.label("runs"),
        )
        .join(ItemRow, ItemRow.id == JobRow.item_id)
        .join(MotorRow, MotorRow.id == JobRow.motor_id)
    )


def job_of(path: Path, row: Row[Any]) -> Job:
    """One row of select_jobs()."""
    columns = row._mapping
    fields = {name: columns[name] for name in Job.__struct_fields__ if name not in {"item", "motor"}}
    fields["item"] = {name: columns[f"item_{name}"] for name in Item.__struct_fields__}
    fields["motor"] = {name: columns[f"motor_{name}"] for name in Motor.__struct_fields__}
    return value_of(path, f"job {row.number}", fields, Job)


def select_runs() -> Select[Any]:
    """Runs with the number of samples in their trace, whose data is not touched."""
    return select(RunRow.__table__, TraceRow.samples).join(TraceRow, TraceRow.run_id == RunRow.id)


def run_of(path: Path, row: Row[Any]) -> Run:
    """One row of select_runs()."""
    columns = row._mapping
    fields = {name: columns[name] for name in _RUN_COLUMNS}
    fields |= {"job": columns["job_id"], "samples": columns["samples"], "unit": columns["unit_id"]}
    fields["result"] = {name: columns[name] for name in _RESULT_COLUMNS}
    return value_of(path, f"run {row.id}", fields, Run)


def entry_of(path: Path, row: EntryRow) -> Entry:
    fields = {name: getattr(row, name) for name in Entry.__struct_fields__}
    return value_of(path, f"entry {row.id}", fields, Entry)


def event_of(path: Path, row: EventRow) -> Event:
    try:
        values = msgspec.json.decode(row.values)
    except (
        msgspec.DecodeError,
        TypeError,
        ValueError,
        RecursionError,
    ) as error:  # in a damaged file the column may hold anything
        raise LedgerDamaged(path, f"event {row.seq} of run {row.run_id} can't be read ({error})") from error
    fields = {"t_s": row.t_s, "kind": row.kind, "text": row.text, "values": values}
    return value_of(path, f"event {row.seq} of run {row.run_id}", fields, Event)


def trace_of(path: Path, row: TraceRow) -> Trace:
    """Raises LedgerDamaged where it does not pass its checks."""
    try:
        return decode(Coded(samples=row.samples, format=row.format, checksum=row.checksum, data=row.data))
    except TraceDamaged as error:
        raise LedgerDamaged(path, f"the trace of run {row.run_id}: {error}") from error


def dense_of(path: Path, row: DenseRow) -> DenseCurve:
    """Raises LedgerDamaged where it does not pass its checks."""
    try:
        volts, amps = decode_dense(Coded(samples=row.samples, format=row.format, checksum=row.checksum, data=row.data))
        return DenseCurve(
            number=int(row.number),
            began_s=float(row.began_s),
            u_began_s=float(row.u_began_s),
            interval_s=float(row.interval_s),
            volts=volts,
            amps=amps,
        )
    except (TraceDamaged, TypeError, ValueError) as error:
        raise LedgerDamaged(path, f"curve {row.seq} of run {row.run_id}: {error}") from error


def value_of(path: Path, name: str, fields: dict[str, Any], kind: type[_Value]) -> _Value:
    """Fields of a row as a plain value. Raises LedgerDamaged where they are not one; `name` is said."""
    try:
        return msgspec.convert(fields, kind)
    except msgspec.ValidationError as error:
        raise LedgerDamaged(path, f"{name} can't be read ({error})") from error
