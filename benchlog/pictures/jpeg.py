"""JPEG: its size and orientation, and a copy without what it says beside the picture. Source: ITU-T T.81, annex B."""

import re
from collections.abc import Iterator
from typing import NamedTuple

from benchlog.pictures import exif
from benchlog.pictures.picture import CUT_SHORT, Broken, Picture

_START, _END, _SCAN = 0xD8, 0xD9, 0xDA
_FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}
_APP0, _APP1, _APP2, _APP14 = 0xE0, 0xE1, 0xE2, 0xEE
_EXIF, _JFIF, _PROFILE = b"Exif\x00\x00", b"JFIF\x00", b"ICC_PROFILE\x00"
_COLOUR_CODING_BYTES = 12
"""An APP14 of this length says how the colours are coded, and without it they come out wrong. Source: ITU-T T.872."""

_MARKER = re.compile(rb"\xff+([^\x00\xff])")
_AFTER_SCAN = re.compile(rb"\xff[^\x00\xd0-\xd7\xff]")

MOST_SEGMENTS, MOST_SCANS = 2000, 32
"""Far above what cameras write (some 300 and 10): each scan is one more pass over the picture when it is decoded."""


class _Segment(NamedTuple):
    marker: int
    whole: slice
    payload: slice


def look(data: bytes) -> Picture:
    """Raises Broken for what has no size, no picture, or no end."""
    size, scans, turned = None, 0, exif.UPRIGHT
    for segment in _segments(data):
        payload = data[segment.payload]
        if segment.marker in _FRAMES and len(payload) >= 5:
            size = size or (int.from_bytes(payload[3:5]), int.from_bytes(payload[1:3]))
        elif segment.marker == _SCAN:
            scans += 1
        elif segment.marker == _APP1 and payload.startswith(_EXIF) and turned == exif.UPRIGHT:
            turned = exif.orientation(payload[len(_EXIF) :])
    if scans > MOST_SCANS:
        raise Broken(f"has {scans} scans, more than {MOST_SCANS}")
    if size is None or not scans:
        raise Broken("has no picture in it")
    return Picture(*size, turned)


def stripped(data: bytes) -> bytes:
    """Without EXIF, XMP, IPTC, comments, makers' data and what follows its end; orientation and colours stay.

    What is decoded into pixels stays bit for bit. Raises Broken as look() does.
    """
    turned = look(data).orientation
    head, rest = [b"\xff\xd8"], []
    for segment in _segments(data):
        if segment.marker == _APP0 and data.startswith(_JFIF, segment.payload.start):
            head.append(data[segment.whole])
        elif _stays(data, segment):
            rest.append(data[segment.whole])
    if turned != exif.UPRIGHT:
        block = _EXIF + exif.only(turned)
        head.append(b"\xff\xe1" + (len(block) + 2).to_bytes(2) + block)
    return b"".join(head + rest)


def _stays(data: bytes, segment: _Segment) -> bool:
    if segment.marker == _APP2:
        return data.startswith(_PROFILE, segment.payload.start)
    if segment.marker == _APP14:
        return len(data[segment.payload]) == _COLOUR_CODING_BYTES
    return 0xC0 <= segment.marker < _APP0


def _segments(data: bytes) -> Iterator[_Segment]:
    # The bytes of a scan belong to its segment. Ends with the picture: what some cameras append is not looked at.
    at = 2
    for _ in range(MOST_SEGMENTS):
        found = _MARKER.match(data, at)
        if found is None:
            raise Broken(CUT_SHORT if len(data) - at < 2 else "is damaged")
        marker, start = found[1][0], found.end() - 2
        if marker == _END:
            yield _Segment(marker, slice(start, start + 2), slice(start + 2, start + 2))
            return
        if marker <= 0x01 or 0xD0 <= marker <= _START:
            raise Broken("is damaged")
        length = int.from_bytes(data[start + 2 : start + 4])
        after = at = start + 2 + length
        if max(at, start + 4) > len(data) or length < 2:
            raise Broken(CUT_SHORT if max(at, start + 4) > len(data) else "is damaged")
        if marker == _SCAN:
            ended = _AFTER_SCAN.search(data, at)
            if ended is None:
                raise Broken(CUT_SHORT)
            at = ended.start()
        yield _Segment(marker, slice(start, at), slice(start + 4, after))
    raise Broken(f"has more than {MOST_SEGMENTS} parts")
