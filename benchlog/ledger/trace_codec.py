"""A trace as a few bytes a sample, exactly.

Times are whole ticks already; readbacks are whole multiples of a power of ten, because an instrument replies in
decimal digits. Each column is coded by itself, so that the noise of one does not hide the quiet of another.
"""

import zlib
from dataclasses import dataclass

import numpy as np

from benchlog.ledger.column_codec import ColumnDamaged, Measured, Whole, decode_column, encode_column
from benchlog.records import Trace

FORMAT = 1
MAX_SAMPLES = 4_000_000
"""More than 11 hours at 96 a second, and 200 MB once decoded: what claims more is not decoded."""

_COLUMNS = ("sent", "lag", "volts", "amps", "set_volts", "set_amps", "flags")


class TraceDamaged(Exception):
    """Data that is not a whole, unchanged trace."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Coded:
    """A trace as it lies on disk. `checksum`: CRC-32 of `data`."""

    samples: int
    format: int
    checksum: int
    data: bytes


def encode(trace: Trace) -> Coded:
    """Lossless. Raises ValueError for columns of different lengths or more than MAX_SAMPLES."""
    columns: tuple[Whole | Measured, ...] = (
        trace.sent,
        # How long a reply took varies far less than when it came.
        trace.received - trace.sent,
        trace.volts,
        trace.amps,
        trace.set_volts,
        trace.set_amps,
        trace.flags.astype(np.int64),
    )
    samples = len(trace.sent)
    if any(column.shape != (samples,) for column in columns) or samples > MAX_SAMPLES:
        raise ValueError(f"not a trace of 0 to {MAX_SAMPLES} samples with columns of one length")
    data = b"".join(encode_column(column) for column in columns)
    return Coded(samples=samples, format=FORMAT, checksum=zlib.crc32(data), data=data)


def decode(coded: Coded) -> Trace:
    """The trace that was encoded. Raises TraceDamaged for anything else, before it takes room for what it claims."""
    if coded.format != FORMAT:
        raise TraceDamaged(f"format {coded.format} is not known")
    if not isinstance(coded.samples, int) or not 0 <= coded.samples <= MAX_SAMPLES:
        raise TraceDamaged(f"{coded.samples} samples are outside 0 to {MAX_SAMPLES}")
    if not isinstance(coded.data, bytes) or zlib.crc32(coded.data) != coded.checksum:
        raise TraceDamaged("its checksum does not fit")
    columns: dict[str, Whole | Measured] = {}
    at = 0
    try:
        for name in _COLUMNS:
            columns[name], at = decode_column(coded.data, at, coded.samples)
    except ColumnDamaged as error:
        raise TraceDamaged(f"{error}") from error
    if at != len(coded.data):
        raise TraceDamaged("there is something after its last column")
    whole = {name: columns[name] for name in ("sent", "lag", "flags")}
    if any(column.dtype != np.int64 for column in whole.values()):
        raise TraceDamaged("its times or flags are not whole numbers")
    if ((whole["flags"] < 0) | (whole["flags"] > 0xFF)).any():
        raise TraceDamaged("flags outside 0 to 255")
    sent = whole["sent"].astype(np.int64, copy=False)
    return Trace(
        sent=sent,
        received=sent + whole["lag"].astype(np.int64, copy=False),
        volts=columns["volts"].astype(np.float64, copy=False),
        amps=columns["amps"].astype(np.float64, copy=False),
        set_volts=columns["set_volts"].astype(np.float64, copy=False),
        set_amps=columns["set_amps"].astype(np.float64, copy=False),
        flags=whole["flags"].astype(np.uint8),
    )
