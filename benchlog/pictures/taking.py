"""A file on its way into a job: read once, recognised, with its small picture. Never in a window's own thread."""

import hashlib
import os
import stat
from pathlib import Path

import msgspec

from benchlog.errors import Refused
from benchlog.pictures.recognise import MOST_BYTES, recognise, refuse_size, shown_name
from benchlog.pictures.thumbnail import thumbnail


class Taken(msgspec.Struct, frozen=True, kw_only=True):
    """`data` as it was, byte for byte. `width`, `height`: px as seen. `remark`: what is to be said of it, or ""."""

    name: str
    data: bytes
    sha256: str
    media_type: str
    width: int | None = None
    height: int | None = None
    thumbnail: bytes | None = None
    remark: str = ""


def take(data: bytes, name: str) -> Taken:
    """Raises Refused in a sentence that begins with the name."""
    name = shown_name(name)
    known = recognise(data, name)
    small, remark = None, known.remark
    if known.picture is not None:
        small = thumbnail(data, known.media_type, known.picture)
        if small is None:
            remark = f"{name}: could not be decoded here; kept without a small picture"
    width, height = known.picture.seen if known.picture else (None, None)
    return Taken(
        name=name,
        data=data,
        sha256=hashlib.sha256(data).hexdigest(),
        media_type=known.media_type,
        width=width,
        height=height,
        thumbnail=small,
        remark=remark,
    )


def take_file(path: Path) -> Taken:
    """Raises Refused for what is no file, can't be read, or is not kept."""
    name = shown_name(path.name)
    try:
        # Looked at before it is opened: to open a pipe waits for whoever writes to it.
        if not stat.S_ISREG(path.stat().st_mode):
            raise Refused(f"{name}: is not a file")
        with path.open("rb") as file:
            opened = os.fstat(file.fileno())
            if not stat.S_ISREG(opened.st_mode):
                raise Refused(f"{name}: is not a file")
            refuse_size(opened.st_size, name)
            data = file.read(MOST_BYTES + 1)
    except (OSError, ValueError) as error:  # ValueError: a name with a NUL in it
        raise Refused(f"{name}: can't be read ({getattr(error, 'strerror', None) or error})") from error
    return take(data, name)
