"""A trace as comma-separated values, for whoever evaluates it elsewhere. SI units."""

from collections.abc import Iterator
from dataclasses import replace
from typing import TextIO

import numpy as np
import numpy.typing as npt

from benchlog.ledger.column_codec import RAW, decimal
from benchlog.records import FLAG_CC, FLAG_CV, FLAG_ON, Run, Trace
from benchlog.reports.csv_forms import DATA, Column, Datatype, Form, Value, write_table
from drivers.supply import Regulation

COLUMNS = (
    # Half a tick is 0.05 ms.
    Column(name="t_s", title="Time since the run began", datatype=Datatype.DOUBLE, unit="s", places=5),
    Column(name="volts", title="Voltage read back", datatype=Datatype.DOUBLE, unit="V"),
    Column(name="amps", title="Current read back", datatype=Datatype.DOUBLE, unit="A"),
    Column(name="set_volts", title="Voltage set", datatype=Datatype.DOUBLE, unit="V"),
    Column(name="set_amps", title="Current limit set", datatype=Datatype.DOUBLE, unit="A"),
    Column(name="output_on", title="Output on", datatype=Datatype.BOOLEAN),
    Column(name="regulation", title="Regulation", datatype=Datatype.STRING),
)
HEADER = tuple(column.name for column in COLUMNS)


def write_csv(run: Run, trace: Trace, out: TextIO, form: Form = DATA) -> None:
    """Writes a line a sample to `out`, which must not translate line ends (open it with newline="").

    t_s is the middle of each query, to 0.05 ms. Volts and amps have the decimal places of the supply's own replies;
    a field is empty where the supply gave no finite number. output_on is 1 or 0. Raises ValueError where the trace is
    not that of the run.
    """
    if len(trace.sent) != run.samples:
        raise ValueError(f"a trace of {len(trace.sent)} samples is not that of run {run.id}, which has {run.samples}")
    readbacks = (trace.volts, trace.amps, trace.set_volts, trace.set_amps)
    columns = (COLUMNS[0], *map(_as_replied, COLUMNS[1:5], readbacks), *COLUMNS[5:])
    write_table(columns, _rows(trace, readbacks), form, out)


def _rows(trace: Trace, readbacks: tuple[npt.NDArray[np.float64], ...]) -> Iterator[tuple[Value, ...]]:
    flags = trace.flags.tolist()
    return zip(
        # Whole numbers over a power of ten: the digits are those of the tick.
        ((trace.sent + trace.received) * 5 / 100_000).tolist(),
        *(values.tolist() for values in readbacks),
        (bool(one & FLAG_ON) for one in flags),
        map(_regulation, flags),
        strict=True,
    )


def _as_replied(column: Column, values: npt.NDArray[np.float64]) -> Column:
    # A reply that is no number must not cost the others their form.
    places, _ = decimal(values[np.isfinite(values)])
    return column if places == RAW else replace(column, places=places)


def _regulation(flags: int) -> str:
    if flags & FLAG_CC:
        return Regulation.CC.value
    return Regulation.CV.value if flags & FLAG_CV else Regulation.UNKNOWN.value
