"""What the person at this window likes: colours, size, language, keys, where things stood. Nothing that limits a run.

Kept in a file of its own beside the owner's settings, which this program never writes. A file that can't be read is as
good as none: it holds nothing that anybody would miss at the bench.
"""

import contextlib
import logging
import os
from pathlib import Path
from typing import Literal, get_args

import msgspec
import platformdirs

_log = logging.getLogger(__name__)

Colours = Literal["system", "light", "dark"]
COLOURS: tuple[Colours, ...] = get_args(Colours)
SIZES = (1.0, 1.25, 1.5, 1.75, 2.0)
"""How large everything is drawn, times what the desktop asks for."""
_MOST_BYTES = 65_536


class Preferences(msgspec.Struct, frozen=True, kw_only=True):
    """`language`: "" for the desktop's. Keys as Qt writes them, "" for none: `off_key` beside Esc and Pause, which
    always hold. `geometry`, `parts`: where the window stood and how its parts were divided, as Qt gives them, in
    Base64, by the name of the part."""

    colours: Colours = "system"
    contrast: bool = False
    size: float = 1.0
    language: str = ""
    beep: bool = True
    off_key: str = ""
    start_key: str = ""
    next_key: str = ""
    geometry: str = ""
    parts: dict[str, str] = {}

    def __post_init__(self) -> None:
        if self.size not in SIZES:
            raise ValueError(f"size: one of {SIZES}")


class Preferring:
    """The preferences and their file. `path` None keeps nothing: for pictures and tests."""

    def __init__(self, path: Path | None = None) -> None:
        self.path = path
        self.now = _read(path)

    def change(self, **changes: object) -> Preferences:
        """Takes the changes over and keeps them. That they can't be kept stops nobody."""
        self.now = msgspec.structs.replace(self.now, **changes)
        if self.path is not None:
            with contextlib.suppress(OSError):
                self.path.parent.mkdir(parents=True, exist_ok=True)
                beside = self.path.with_suffix(".new")
                beside.write_bytes(msgspec.json.format(msgspec.json.encode(self.now)))
                os.replace(beside, self.path)
        return self.now


def preferences_file() -> Path:
    return Path(platformdirs.user_config_dir("benchlog", appauthor=False)) / "window.json"


def _read(path: Path | None) -> Preferences:
    try:
        if path is None or path.stat().st_size > _MOST_BYTES:
            return Preferences()
        return msgspec.json.decode(path.read_bytes(), type=Preferences)
    except FileNotFoundError:
        return Preferences()
    except (OSError, ValueError) as error:  # msgspec's own errors are ValueErrors
        _log.info("the window's preferences in %s can't be read: %s", path, error)
        return Preferences()
