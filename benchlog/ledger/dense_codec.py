"""A dense curve as a few bytes a sample, exactly: volts and amps, each coded by itself as a column of a trace is."""

import zlib

import numpy as np

from benchlog.ledger.column_codec import ColumnDamaged, Measured, decode_column, encode_column
from benchlog.ledger.trace_codec import MAX_SAMPLES, Coded, TraceDamaged

FORMAT = 1


def encode_dense(volts: Measured, amps: Measured) -> Coded:
    """Lossless. Raises ValueError for columns of different lengths or more than MAX_SAMPLES."""
    samples = len(volts)
    if volts.shape != (samples,) or amps.shape != (samples,) or samples > MAX_SAMPLES:
        raise ValueError(f"not a curve of 0 to {MAX_SAMPLES} samples with columns of one length")
    data = encode_column(volts) + encode_column(amps)
    return Coded(samples=samples, format=FORMAT, checksum=zlib.crc32(data), data=data)


def decode_dense(coded: Coded) -> tuple[Measured, Measured]:
    """Volts and amps as they were. Raises TraceDamaged for anything else, before it takes room for what it claims."""
    if coded.format != FORMAT:
        raise TraceDamaged(f"format {coded.format} is not known")
    if not isinstance(coded.samples, int) or not 0 <= coded.samples <= MAX_SAMPLES:
        raise TraceDamaged(f"{coded.samples} samples are outside 0 to {MAX_SAMPLES}")
    if not isinstance(coded.data, bytes) or zlib.crc32(coded.data) != coded.checksum:
        raise TraceDamaged("its checksum does not fit")
    try:
        volts, at = decode_column(coded.data, 0, coded.samples)
        amps, at = decode_column(coded.data, at, coded.samples)
    except ColumnDamaged as error:
        raise TraceDamaged(f"{error}") from error
    if at != len(coded.data):
        raise TraceDamaged("there is something after its last column")
    return volts.astype(np.float64, copy=False), amps.astype(np.float64, copy=False)
