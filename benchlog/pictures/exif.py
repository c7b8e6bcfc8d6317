"""The orientation in an EXIF block, and a block that holds nothing else. Source: TIFF 6.0, section 2; Exif 2.3."""

import struct

_ORIENTATION, _SHORT = 274, 3
UPRIGHT = 1


def orientation(block: bytes) -> int:
    """1 to 8, from a block that begins with the TIFF header; 1 where it does not say, or says what can't be."""
    order = {b"II*\x00": "<", b"MM\x00*": ">"}.get(block[:4])
    if order is None or len(block) < 8:
        return UPRIGHT
    (at,) = struct.unpack_from(order + "I", block, 4)
    if at + 2 > len(block):
        return UPRIGHT
    (count,) = struct.unpack_from(order + "H", block, at)
    for entry in range(at + 2, min(at + 2 + 12 * count, len(block) - 11), 12):
        tag, kind, values, value = struct.unpack_from(order + "HHIH", block, entry)
        if (tag, kind, values) == (_ORIENTATION, _SHORT, 1):
            return value if 1 <= value <= 8 else UPRIGHT
    return UPRIGHT


def only(turned: int) -> bytes:
    """A block that says the orientation, and nothing else."""
    return struct.pack(">4sIHHHIHHI", b"MM\x00*", 8, 1, _ORIENTATION, _SHORT, 1, turned, 0, 0)
