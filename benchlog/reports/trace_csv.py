"""A trace as comma-separated values, for whoever evaluates it elsewhere.

RFC 4180: commas, CR LF, a header line; "." is the decimal mark whatever the locale. SI units.
"""

from collections.abc import Iterator
from typing import TextIO

import numpy as np
import numpy.typing as npt

from benchlog.ledger.column_codec import RAW, decimal
from benchlog.records import FLAG_CC, FLAG_CV, FLAG_ON, Run, Trace
from drivers.supply import Regulation

HEADER = ("t_s", "volts", "amps", "set_volts", "set_amps", "output_on", "regulation")


def write_csv(run: Run, trace: Trace, out: TextIO) -> None:
    """Writes a line a sample to `out`, which must not translate line ends (open it with newline="").

    t_s is the middle of each query, to 0.05 ms. Volts and amps have the decimal places of the supply's own replies;
    a field is empty where the supply gave no finite number. output_on is 1 or 0. Raises ValueError where the trace is
    not that of the run.
    """
    if len(trace.sent) != run.samples:
        raise ValueError(f"a trace of {len(trace.sent)} samples is not that of run {run.id}, which has {run.samples}")
    columns = (
        _times(trace.sent + trace.received),
        *(_readbacks(column) for column in (trace.volts, trace.amps, trace.set_volts, trace.set_amps)),
        ("1" if flags & FLAG_ON else "0" for flags in trace.flags.tolist()),
        (_regulation(flags) for flags in trace.flags.tolist()),
    )
    out.write(",".join(HEADER) + "\r\n")
    out.writelines(",".join(fields) + "\r\n" for fields in zip(*columns, strict=True))


def _times(half_ticks: npt.NDArray[np.int64]) -> Iterator[str]:
    # Half a tick is 0.05 ms: in whole numbers, so that no digit comes from a rounding.
    for hundred_thousandths in (half_ticks * 5).tolist():
        whole, rest = divmod(abs(hundred_thousandths), 100_000)
        yield f"{'-' if hundred_thousandths < 0 else ''}{whole}.{rest:05d}"


def _readbacks(values: npt.NDArray[np.float64]) -> Iterator[str]:
    finite = np.isfinite(values)
    # A reply that is no number must not cost the others their form.
    places, _ = decimal(values[finite])
    for value, is_number in zip(values.tolist(), finite.tolist(), strict=True):
        if not is_number:
            yield ""
        elif places == RAW:
            yield repr(value)
        else:
            yield f"{value:.{places}f}"


def _regulation(flags: int) -> str:
    if flags & FLAG_CC:
        return Regulation.CC.value
    return Regulation.CV.value if flags & FLAG_CV else Regulation.UNKNOWN.value
