"""GIF: its size, and a copy without what it says beside the picture. Source: the specification of GIF 89a."""

from collections.abc import Iterator
from typing import NamedTuple

from benchlog.pictures.exif import UPRIGHT
from benchlog.pictures.picture import CUT_SHORT, Broken, Picture

SIGNATURES = (b"GIF87a", b"GIF89a")

_HEAD, _EXTENSION, _IMAGE, _END = 13, 0x21, 0x2C, 0x3B
_CONTROL, _DRAWN_TEXT = 0xF9, 0x01

MOST_BLOCKS = 1_000_000
"""Some 255 bytes each are usual."""


class _Block(NamedTuple):
    kind: int
    label: int
    whole: slice


def look(data: bytes) -> Picture:
    """Raises Broken for what has no size, no picture, or no end."""
    images = [block.whole.start for block in _blocks(data) if block.kind == _IMAGE]
    if not images:
        raise Broken("has no picture in it")
    frames = [(_u16(data, at + 1) + _u16(data, at + 5), _u16(data, at + 3) + _u16(data, at + 7)) for at in images]
    # A frame that reaches over the canvas makes some decoders enlarge it.
    return Picture(
        max(_u16(data, 6), *(width for width, _ in frames)),
        max(_u16(data, 8), *(height for _, height in frames)),
        UPRIGHT,
    )


def stripped(data: bytes) -> bytes:
    """Without comments and programs' own blocks, and what follows its end. An animation then plays once.

    What is decoded into pixels stays bit for bit. Raises Broken as look() does.
    """
    look(data)
    kept = [
        data[block.whole]
        for block in _blocks(data)
        if block.kind != _EXTENSION or block.label in (_CONTROL, _DRAWN_TEXT)
    ]
    return data[: _HEAD + _palette_bytes(data, 10)] + b"".join(kept)


def _blocks(data: bytes) -> Iterator[_Block]:
    at = _HEAD + _palette_bytes(data, 10)
    left = MOST_BLOCKS
    while True:
        kind, label, start = _byte(data, at), 0, at
        if kind == _END:
            yield _Block(kind, label, slice(at, at + 1))
            return
        if kind == _EXTENSION:
            label, at = _byte(data, at + 1), at + 2
        elif kind == _IMAGE:
            at += 10 + _palette_bytes(data, at + 9) + 1
        else:
            raise Broken("is damaged")
        length = -1
        while length:
            length, left = _byte(data, at), left - 1
            at += 1 + length
            if left < 0:
                raise Broken(f"has more than {MOST_BLOCKS} parts")
        yield _Block(kind, label, slice(start, at))


def _palette_bytes(data: bytes, at: int) -> int:
    flags = _byte(data, at)
    return 3 << (flags & 7) + 1 if flags & 0x80 else 0


def _byte(data: bytes, at: int) -> int:
    if at >= len(data):
        raise Broken(CUT_SHORT)
    return data[at]


def _u16(data: bytes, at: int) -> int:
    return int.from_bytes(data[at : at + 2], "little")
