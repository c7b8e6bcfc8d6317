"""A small picture of a picture. The only module of benchlog that imports Qt, and only when it is called.

Qt's decoders run without a window or an application, and let other threads run meanwhile.
"""

from benchlog.pictures.picture import Picture

LONGEST_PX = 320
QUALITY = 80

_TURNS: dict[int, tuple[int, int, int, int]] = {
    1: (1, 0, 0, 1),
    2: (-1, 0, 0, 1),
    3: (-1, 0, 0, -1),
    4: (1, 0, 0, -1),
    5: (0, 1, 1, 0),
    6: (0, 1, -1, 0),
    7: (0, -1, -1, 0),
    8: (0, -1, 1, 0),
}
"""By EXIF orientation: where a stored step to the right goes (x, y), and where one down goes. Source: Exif 2.3, 274."""


def thumbnail(data: bytes, media_type: str, picture: Picture) -> bytes | None:
    """A JPEG of at most LONGEST_PX a side, upright, on white, with nothing of the original but its pixels, in sRGB.

    None where Qt can't be loaded or does not decode it.
    """
    try:
        from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize
        from PySide6.QtGui import QColorSpace, QImage, QImageReader, QImageWriter, QPainter, QTransform
    except ImportError:  # the package, or one of the system's libraries that it needs
        return None
    source = QBuffer()
    source.setData(QByteArray(data))
    source.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(source, QByteArray(media_type.removeprefix("image/").encode()))
    # Only the decoder that was chosen by the content, whatever others say they can do.
    reader.setAutoDetectImageFormat(False)
    # Of the formats here Qt turns some and not others.
    reader.setAutoTransform(False)
    scale = min(1.0, LONGEST_PX / max(picture.width, picture.height))
    size = QSize(max(1, round(picture.width * scale)), max(1, round(picture.height * scale)))
    reader.setScaledSize(size)
    small = reader.read()
    if small.isNull():
        return None
    if small.size() != size:
        small = small.scaled(size)
    if small.colorSpace().isValid():
        small.convertToColorSpace(QColorSpace(QColorSpace.NamedColorSpace.SRgb))
    small = small.transformed(QTransform(*_TURNS[picture.orientation], 0, 0))
    # Painted anew: a copy would bring texts and the colour profile along.
    upright = QImage(small.size(), QImage.Format.Format_RGB32)
    upright.fill(0xFFFFFFFF)
    painter = QPainter(upright)
    painter.drawImage(0, 0, small)
    painter.end()
    target = QBuffer()
    target.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QImageWriter(target, QByteArray(b"jpeg"))
    writer.setQuality(QUALITY)
    return bytes(target.data().data()) if writer.write(upright) else None
