"""Where supplies may be, as it was found when a person last asked to look. Looking happens in a process of its own."""

import contextlib
import os
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec
import platformdirs

from benchlog.clock import Clock, SystemClock

if TYPE_CHECKING:
    from drivers.discovery import Looked

KINDS = {
    "serial": "serial port",
    "usb": "USB",
    "network": "network",
    "visa": "VISA",
}
"""The parts of a search in words."""


class Place(msgspec.Struct, frozen=True, kw_only=True):
    """An address at which something may be. `kind`: one of `KINDS`; a serial port may be anything."""

    address: str
    kind: str
    words: str = ""


class LastLook(msgspec.Struct, frozen=True, kw_only=True):
    """`utc`: when. `missed`: where could not be looked, and why."""

    utc: str
    places: tuple[Place, ...]
    missed: tuple[str, ...] = ()


def cache_file() -> Path:
    return Path(platformdirs.user_cache_dir("benchlog", appauthor=False)) / "supplies.json"


def look_around(within_s: float | None = None, *, path: Path | None = None, clock: Clock | None = None) -> LastLook:
    """Looks, for some seconds, and keeps what was found. Only where a person asks for it; never in the window's thread.

    Raises OSError where no process can be started.
    """
    from drivers.discovery import LOOK_S, look

    return keep(look(LOOK_S if within_s is None else within_s), path=path, clock=clock)


def keep(looked: "Looked", *, path: Path | None = None, clock: Clock | None = None) -> LastLook:
    """A cache is no record: where it can't be written, what was found counts all the same."""
    last = LastLook(
        utc=(clock or SystemClock()).utc(),
        places=tuple(Place(address=one.address, kind=one.kind, words=one.words) for one in looked.found),
        missed=looked.missed,
    )
    path = path or cache_file()
    beside = path.with_suffix(f".{os.getpid()}")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        beside.write_bytes(msgspec.json.encode(last))
        beside.replace(path)
    except OSError:
        with contextlib.suppress(OSError):
            beside.unlink(missing_ok=True)
    return last


def last_look(path: Path | None = None) -> LastLook | None:
    """What was found last; None where nobody looked, or what is kept can't be read."""
    try:
        return msgspec.json.decode((path or cache_file()).read_bytes(), type=LastLook)
    except (OSError, msgspec.MsgspecError, UnicodeDecodeError):
        return None
