"""What every picture format tells without being decoded, and how it says that it can't be believed."""

from typing import NamedTuple


class Broken(Exception):
    """The bytes begin like a picture and don't go on like one. The text says how: "is cut short"."""


class Picture(NamedTuple):
    """Size as stored, px, and how it is to be turned to be seen: EXIF orientation, 1 to 8.

    Source of the eight: Exif 2.3 (CIPA DC-008), tag 274.
    """

    width: int
    height: int
    orientation: int

    @property
    def seen(self) -> tuple[int, int]:
        """Width and height after turning, px."""
        return (self.height, self.width) if self.orientation >= 5 else (self.width, self.height)


CUT_SHORT = "is cut short"
