"""Pictures made in code: a quarter red, a quarter blue, and every hiding place filled with a position in a harbour."""

import struct
import zlib

from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtGui import QColor, QImage, QImageWriter, QPainter

PLACE = b"HARBOUR-54N10E"
WIDTH, HEIGHT = 96, 64


def painted(width: int = WIDTH, height: int = HEIGHT) -> QImage:
    """Red at the top left, blue at the top right, grey below."""
    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(QColor(120, 120, 120))
    painter = QPainter(image)
    painter.fillRect(0, 0, width // 2, height // 2, QColor(220, 0, 0))
    painter.fillRect(width // 2, 0, width - width // 2, height // 2, QColor(0, 0, 220))
    painter.end()
    return image


def encoded(kind: bytes, image: QImage | None = None) -> bytes:
    target = QBuffer()
    target.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QImageWriter(target, QByteArray(kind.lower()))
    writer.setQuality(90)
    assert writer.write(image or painted())
    return bytes(target.data().data())


def exif_block(orientation: int, order: str = "<") -> bytes:
    """TIFF header, orientation, and a GPS IFD with a date stamp that is PLACE. Source of the tags: Exif 2.3."""
    mark = b"II" if order == "<" else b"MM"
    head = struct.pack(order + "2sHI", mark, 42, 8)
    gps_at = 8 + 2 + 2 * 12 + 4
    value_at = gps_at + 2 + 12 + 4
    ifd = struct.pack(order + "HHHIHHHHIII", 2, 274, 3, 1, orientation, 0, 34853, 4, 1, gps_at, 0)
    gps = struct.pack(order + "HHHIII", 1, 29, 2, len(PLACE), value_at, 0)
    return head + ifd + gps + PLACE


def jpeg(orientation: int = 1, order: str = "<") -> bytes:
    """With EXIF, XMP, IPTC, a comment, a maker's segment, and a second picture after the end."""
    plain = encoded(b"JPEG")
    segments = (
        (0xE1, b"Exif\x00\x00" + exif_block(orientation, order)),
        (0xE1, b"a packet of XMP\x00" + PLACE),
        (0xED, b"8BIM" + PLACE),
        (0xE2, b"MORE\x00" + PLACE),
        (0xEE, PLACE),
        (0xFE, PLACE),
    )
    hidden = b"".join(bytes((0xFF, mark)) + (len(body) + 2).to_bytes(2) + body for mark, body in segments)
    return plain[:2] + hidden + plain[2:] + plain + PLACE


def png(orientation: int = 1) -> bytes:
    plain = encoded(b"PNG")
    hidden = chunk(b"eXIf", exif_block(orientation)) + chunk(b"tEXt", b"Comment\x00" + PLACE) + chunk(b"prVt", PLACE)
    return plain[:33] + hidden + plain[33:] + PLACE


def chunk(kind: bytes, body: bytes) -> bytes:
    return len(body).to_bytes(4) + kind + body + zlib.crc32(kind + body).to_bytes(4)


def webp(orientation: int = 1) -> bytes:
    plain = encoded(b"WEBP")[12:]
    wide = bytes((0x0C, 0, 0, 0)) + (WIDTH - 1).to_bytes(3, "little") + (HEIGHT - 1).to_bytes(3, "little")
    body = _riff(b"VP8X", wide) + plain + _riff(b"EXIF", exif_block(orientation)) + _riff(b"XMP ", PLACE)
    return b"RIFF" + (len(body) + 4).to_bytes(4, "little") + b"WEBP" + body + PLACE


def _riff(kind: bytes, body: bytes) -> bytes:
    return kind + len(body).to_bytes(4, "little") + body + b"\x00" * (len(body) % 2)


def gif() -> bytes:
    """Two by one pixels, black and white, by hand. Source: the specification of GIF 89a."""
    comment = b"\x21\xfe" + bytes((len(PLACE),)) + PLACE + b"\x00"
    program = b"\x21\xff\x0bXMP DataXMP" + bytes((len(PLACE),)) + PLACE + b"\x00"
    image = b"\x2c\x00\x00\x00\x00\x02\x00\x01\x00\x00\x02\x02\x44\x0a\x00"
    return b"GIF89a\x02\x00\x01\x00\x80\x00\x00\x00\x00\x00\xff\xff\xff" + comment + program + image + b";" + PLACE


MAKERS = {"image/jpeg": jpeg, "image/png": png, "image/webp": webp}
