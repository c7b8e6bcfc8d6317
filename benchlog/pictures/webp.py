"""WebP: its size and orientation, and a copy without what it says beside the picture. Source: RFC 9649."""

from collections.abc import Iterator
from typing import NamedTuple

from benchlog.pictures import exif
from benchlog.pictures.picture import CUT_SHORT, Broken, Picture

_HEAD, _FRAME_HEAD = 12, 16
_LOSSY, _LOSSLESS, _WIDE, _FRAME, _EXIF = b"VP8 ", b"VP8L", b"VP8X", b"ANMF", b"EXIF"
_STAYS = frozenset((_LOSSY, _LOSSLESS, b"ALPH", b"ANIM", b"ICCP"))
_HAS_EXIF, _HAS_XMP = 0x08, 0x04
_OLD_EXIF_HEAD = b"Exif\x00\x00"

MOST_CHUNKS = 100_000


class _Chunk(NamedTuple):
    kind: bytes
    payload: bytes


def is_webp(data: bytes) -> bool:
    return data[:4] == b"RIFF" and data[8:12] == b"WEBP"


def look(data: bytes) -> Picture:
    """Raises Broken for what has no size, no picture, or no end."""
    sizes, pixels, turned = [], False, exif.UPRIGHT
    for chunk in _chunks(_body(data)):
        payload = chunk.payload
        if chunk.kind in (_WIDE, _LOSSY, _LOSSLESS):
            sizes.append(_size(chunk))
        elif chunk.kind == _EXIF:
            turned = exif.orientation(payload.removeprefix(_OLD_EXIF_HEAD))
        pixels = pixels or chunk.kind in (_LOSSY, _LOSSLESS, _FRAME)
    if not sizes or not pixels:
        raise Broken("has no picture in it")
    return Picture(max(width for width, _ in sizes), max(height for _, height in sizes), turned)


def stripped(data: bytes) -> bytes:
    """Without EXIF, XMP and unknown chunks, and what follows its end; orientation and colours stay.

    What is decoded into pixels stays bit for bit. Raises Broken as look() does.
    """
    turned = look(data).orientation
    body = _kept(_body(data), turned)
    if turned != exif.UPRIGHT:
        body += _chunk(_EXIF, exif.only(turned))
    return b"RIFF" + (len(body) + 4).to_bytes(4, "little") + b"WEBP" + body


def _kept(body: bytes, turned: int) -> bytes:
    parts = []
    for kind, payload in _chunks(body):
        if kind == _WIDE:
            flags = payload[0] & ~(_HAS_EXIF | _HAS_XMP) | (_HAS_EXIF if turned != exif.UPRIGHT else 0)
            parts.append(_chunk(kind, bytes((flags,)) + payload[1:]))
        elif kind == _FRAME:
            parts.append(_chunk(kind, payload[:_FRAME_HEAD] + _kept(payload[_FRAME_HEAD:], exif.UPRIGHT)))
        elif kind in _STAYS:
            parts.append(_chunk(kind, payload))
    return b"".join(parts)


def _size(chunk: _Chunk) -> tuple[int, int]:
    payload = chunk.payload
    if chunk.kind == _WIDE and len(payload) >= 10:
        return int.from_bytes(payload[4:7], "little") + 1, int.from_bytes(payload[7:10], "little") + 1
    if chunk.kind == _LOSSY and payload[3:6] == b"\x9d\x01\x2a" and len(payload) >= 10:
        return int.from_bytes(payload[6:8], "little") & 0x3FFF, int.from_bytes(payload[8:10], "little") & 0x3FFF
    if chunk.kind == _LOSSLESS and payload[:1] == b"\x2f" and len(payload) >= 5:
        bits = int.from_bytes(payload[1:5], "little")
        return (bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1
    raise Broken("is damaged")


def _body(data: bytes) -> bytes:
    end = 8 + int.from_bytes(data[4:8], "little")
    if end > len(data):
        raise Broken(CUT_SHORT)
    return data[_HEAD:end]


def _chunk(kind: bytes, payload: bytes) -> bytes:
    return kind + len(payload).to_bytes(4, "little") + payload + b"\x00" * (len(payload) % 2)


def _chunks(body: bytes) -> Iterator[_Chunk]:
    at = count = 0
    while at < len(body):
        length = int.from_bytes(body[at + 4 : at + 8], "little")
        if at + 8 + length > len(body):
            raise Broken(CUT_SHORT)
        yield _Chunk(body[at : at + 4], body[at + 8 : at + 8 + length])
        at += 8 + length + length % 2
        count += 1
        if count > MOST_CHUNKS:
            raise Broken(f"has more than {MOST_CHUNKS} parts")
