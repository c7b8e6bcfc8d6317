"""The type that comes with the program, for a desktop that has none of those that the window likes.

DejaVu Sans Condensed: figures of one width, and all signs that stand in readings. Its licence is beside it.
"""

from functools import cache
from pathlib import Path

from PySide6.QtGui import QFont, QFontDatabase, QRawFont

SHIPPED = Path(__file__).with_name("DejaVuSansCondensed.ttf")
SIGNS = "Ωµ°×−…—0123456789"
"""What a reading may hold: a family without one of them is passed over."""
LIKED = (
    "Inter",
    "Segoe UI",
    "SF Pro Text",
    "Noto Sans",
    "Source Sans 3",
    "Cantarell",
    "Ubuntu",
    "DejaVu Sans Condensed",
    "DejaVu Sans",
)
"""In order of liking; the last two come with nearly every Linux and have figures of one width."""


@cache
def families() -> tuple[str, ...]:
    """Those of the system that are liked, the first of them with every sign; else the one that is shipped."""
    present = set(QFontDatabase.families())
    found = [family for family in LIKED if family in present]
    while found and not has_signs(QRawFont.fromFont(QFont(found[0]))):
        found.pop(0)
    return tuple(found) or shipped()


def has_signs(font: QRawFont) -> bool:
    return font.isValid() and all(font.supportsCharacter(ord(sign)) for sign in SIGNS)


def shipped() -> tuple[str, ...]:
    """Its family, once it is registered; Qt's own choice where it can't be."""
    number = QFontDatabase.addApplicationFont(str(SHIPPED))
    named = QFontDatabase.applicationFontFamilies(number) if number >= 0 else ["Sans Serif"]
    return tuple(reversed(named))  # the name of this cut comes after that of all its cuts
