"""PNG: its size and orientation, and a copy without what it says beside the picture. Source: W3C PNG, third edition."""

import zlib
from collections.abc import Iterator
from typing import NamedTuple

from benchlog.pictures import exif
from benchlog.pictures.picture import CUT_SHORT, Broken, Picture

SIGNATURE = b"\x89PNG\r\n\x1a\n"

_PICTURE = frozenset((b"IHDR", b"PLTE", b"IDAT", b"IEND", b"tRNS", b"acTL", b"fcTL", b"fdAT"))
_COLOURS = frozenset((b"cHRM", b"cICP", b"gAMA", b"iCCP", b"sBIT", b"sRGB", b"bKGD", b"pHYs", b"mDCV", b"cLLI"))
_EXIF = b"eXIf"

MOST_CHUNKS = 100_000
"""Some 8 kB each is usual."""


class _Chunk(NamedTuple):
    kind: bytes
    whole: slice
    payload: slice


def look(data: bytes) -> Picture:
    """Raises Broken for what has no size, no picture, no end, or a chunk of the picture that is damaged."""
    size, pixels, turned = None, False, exif.UPRIGHT
    whole = memoryview(data)
    for chunk in _chunks(data):
        start, end = chunk.payload.start, chunk.payload.stop
        if chunk.kind == b"IHDR" and end - start == 13:
            size = size or (int.from_bytes(data[start : start + 4]), int.from_bytes(data[start + 4 : start + 8]))
        pixels = pixels or chunk.kind == b"IDAT"
        if chunk.kind == _EXIF:
            turned = exif.orientation(data[chunk.payload])
        elif chunk.kind in _PICTURE and zlib.crc32(whole[start - 4 : end]) != int.from_bytes(data[end : end + 4]):
            raise Broken("is damaged")
    if size is None or not pixels:
        raise Broken("has no picture in it")
    return Picture(*size, turned)


def stripped(data: bytes) -> bytes:
    """Without EXIF, texts, times and private chunks, and what follows its end; orientation and colours stay.

    What is decoded into pixels stays bit for bit. Raises Broken as look() does.
    """
    turned = look(data).orientation
    parts = [SIGNATURE]
    for chunk in _chunks(data):
        if chunk.kind in _PICTURE or chunk.kind in _COLOURS:
            parts.append(data[chunk.whole])
        if chunk.kind == b"IHDR" and turned != exif.UPRIGHT:
            parts.append(_chunk(_EXIF, exif.only(turned)))
    return b"".join(parts)


def _chunk(kind: bytes, payload: bytes) -> bytes:
    return len(payload).to_bytes(4) + kind + payload + zlib.crc32(kind + payload).to_bytes(4)


def _chunks(data: bytes) -> Iterator[_Chunk]:
    at = len(SIGNATURE)
    for _ in range(MOST_CHUNKS):
        length, kind = int.from_bytes(data[at : at + 4]), data[at + 4 : at + 8]
        end = at + 12 + length
        if end > len(data):
            raise Broken(CUT_SHORT)
        yield _Chunk(kind, slice(at, end), slice(at + 8, end - 4))
        if kind == b"IEND":
            return
        at = end
    raise Broken(f"has more than {MOST_CHUNKS} parts")
