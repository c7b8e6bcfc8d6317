"""One column of numbers as few bytes: whole steps, differences, byte planes, zlib.

Layout, little-endian: decimal exponent (int8, RAW for float64 as it is), times differenced (uint8), bytes a value
(uint8), bytes of compressed data (uint32), the data: all lowest bytes of the values, then all second bytes, and so on.
"""

import struct
import zlib
from typing import Any, TypeAlias

import numpy as np
import numpy.typing as npt

Whole: TypeAlias = npt.NDArray[np.int64]
Measured: TypeAlias = npt.NDArray[np.float64]
Planes: TypeAlias = npt.NDArray[np.uint8]

RAW = -1
MAX_EXPONENT = 9
MAX_ORDER = 2
_HEAD = struct.Struct("<bBBI")
_EXACT = 2.0**53
"""Above it not every whole number is a float64."""


class ColumnDamaged(Exception):
    """Bytes that no column was written as."""


def encode_column(values: Whole | Measured) -> bytes:
    """Whole numbers, or V and A. What decode_column gives is equal; of two zeros it gives the positive one."""
    exponent, whole = (0, values) if values.dtype == np.int64 else decimal(values.astype(np.float64))
    if whole is None:
        return _pack(RAW, 0, _planes(values.astype("<f8").view("<u8")))
    candidates = [_planes(_folded(_differences(whole.astype(np.int64), order))) for order in range(MAX_ORDER + 1)]
    sizes = [_expected_bytes(planes) for planes in candidates]
    order = sizes.index(min(sizes))
    return _pack(exponent, order, candidates[order])


def decimal(values: Measured) -> tuple[int, Whole | None]:
    """The fewest decimal places, 0 to MAX_EXPONENT, that say every value exactly, and the values in steps of the last.

    RAW and None where there are none: a value isn't finite, or not what so few digits parse to.
    """
    # A float64 divided by a power of ten up to 10^22 is rounded correctly: it is the number that its digits parse to.
    if not np.isfinite(values).all():
        return RAW, None
    for exponent in range(MAX_EXPONENT + 1):
        scaled = np.rint(values * 10.0**exponent)
        if scaled.size and np.abs(scaled).max() >= _EXACT:
            break
        if np.array_equal(scaled / 10.0**exponent, values):
            return exponent, scaled.astype(np.int64)
    return RAW, None


def decode_column(data: bytes, at: int, count: int) -> tuple[Whole | Measured, int]:
    """The column of `count` values at `data[at:]`, and where the next begins. Raises ColumnDamaged.

    float64 where it was decimal or raw, int64 where the exponent is 0. Takes no more room than `count` values need.
    """
    if at + _HEAD.size > len(data):
        raise ColumnDamaged("it ends in the middle of a column's head")
    exponent, order, width, length = _HEAD.unpack_from(data, at)
    at += _HEAD.size
    if not RAW <= exponent <= MAX_EXPONENT or order > MAX_ORDER or width > 8 or at + length > len(data):
        raise ColumnDamaged("a column's head is out of range")
    bits = _joined(_inflated(data[at : at + length], width * count), width, count)
    if exponent == RAW:
        return bits.astype("<u8").view("<f8").astype(np.float64, copy=False), at + length
    whole = _unfolded(bits)
    for _ in range(order):
        np.cumsum(whole, out=whole)
    return (whole / 10.0**exponent if exponent else whole), at + length


def _differences(whole: Whole, order: int) -> Whole:
    for _ in range(order):
        whole = np.diff(whole, prepend=np.int64(0))
    return whole


def _folded(whole: Whole) -> npt.NDArray[np.uint64]:
    # 0, -1, 1, -2, … become 0, 1, 2, 3, …: small numbers of either sign have zeros above.
    return ((whole << 1) ^ (whole >> 63)).view(np.uint64)


def _unfolded(bits: npt.NDArray[Any]) -> Whole:
    # As narrow as it comes: what was folded into so many bits fits into as many with a sign.
    signed = np.dtype(f"<i{bits.itemsize}")
    odd = (bits & 1).view(signed)
    bits >>= 1
    whole: Whole = (bits.view(signed) ^ np.negative(odd, out=odd)).astype(np.int64)
    return whole


def _planes(bits: npt.NDArray[np.uint64]) -> Planes:
    # uint8[width, count]; planes above the largest value are left out.
    width = (int(bits.max()).bit_length() + 7) // 8 if bits.size else 0
    return bits.astype("<u8").view(np.uint8).reshape(len(bits), 8).T[:width]


def _joined(planes: bytes, width: int, count: int) -> npt.NDArray[Any]:
    # As few bytes a value as NumPy has a type for: most columns need one or two of the eight.
    room = next(room for room in (1, 2, 4, 8) if room >= width)
    bits = np.zeros((count, room), dtype=np.uint8)
    bits[:, :width] = np.frombuffer(planes, dtype=np.uint8).reshape(width, count).T
    return bits.view(f"<u{room}").reshape(count)


def _expected_bytes(planes: Planes) -> float:
    # Entropy of each plane: close to what the compression makes of noise, and quicker than to try.
    total = 0.0
    for plane in planes:
        counts = np.bincount(plane, minlength=1)
        shares = counts[counts > 0] / len(plane)
        total -= len(plane) * float((shares * np.log2(shares)).sum()) / 8
    return total


def _pack(exponent: int, order: int, planes: Planes) -> bytes:
    data = zlib.compress(planes.tobytes(), 6) if planes.size else b""
    return _HEAD.pack(exponent, order, len(planes), len(data)) + data


def _inflated(data: bytes, size: int) -> bytes:
    if size == 0:
        if data:
            raise ColumnDamaged("an empty column has data")
        return b""
    inflater = zlib.decompressobj()
    try:
        plain = inflater.decompress(data, size)
        # Only now may the end be reached: what would come after `size` bytes is never unpacked.
        rest = b"" if inflater.eof else inflater.decompress(inflater.unconsumed_tail, 1)
    except zlib.error as error:
        raise ColumnDamaged(f"a column can't be unpacked ({error})") from error
    if len(plain) != size or rest or not inflater.eof or inflater.unused_data:
        raise ColumnDamaged("a column is not as long as it says")
    return plain
