"""What a file is, by its content. Its name is what a person calls it, and decides nothing."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import PurePosixPath

from benchlog.errors import Refused
from benchlog.pictures import gif, jpeg, png, webp
from benchlog.pictures.picture import Broken, Picture
from benchlog.quantities import show
from drivers.foreign import inert

MOST_BYTES = 32_000_000
"""Of one file: above the photos of today's phones. To copy one of this size holds a window's thread up for 20 ms."""

MOST_PIXELS = 64_000_000
"""Of one picture: decoded it takes 256 MB, the most that the decoder gets. A small file may declare far more."""

MOST_NAME = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Format:
    """A kind of picture: its word, how it is looked at, and how it is freed of all but the picture."""

    word: str
    look: Callable[[bytes], Picture]
    stripped: Callable[[bytes], bytes]


FORMATS: dict[str, Format] = {
    "image/jpeg": Format(word="JPEG", look=jpeg.look, stripped=jpeg.stripped),
    "image/png": Format(word="PNG", look=png.look, stripped=png.stripped),
    "image/webp": Format(word="WebP", look=webp.look, stripped=webp.stripped),
    "image/gif": Format(word="GIF", look=gif.look, stripped=gif.stripped),
}

PLAIN = "application/octet-stream"
EXTENSIONS: dict[str, str] = {
    "image/jpeg": ".jpg",
    "image/png": ".png",
    "image/webp": ".webp",
    "image/gif": ".gif",
    "application/pdf": ".pdf",
    "text/csv": ".csv",
    "text/plain": ".txt",
    PLAIN: ".bin",
}
"""Every kind that is kept, by media type (RFC 2046, 4180), with the end of its name on disk."""

_SIGNATURES: tuple[tuple[bytes, str], ...] = (
    (b"\xff\xd8\xff", "image/jpeg"),
    (png.SIGNATURE, "image/png"),
    *((signature, "image/gif") for signature in gif.SIGNATURES),
    (b"%PDF-", "application/pdf"),
)

_BRANDS: tuple[tuple[frozenset[bytes], str], ...] = (
    (frozenset((b"avif", b"avis")), "AVIF"),
    (frozenset((b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"hevm", b"hevs")), "HEIC"),
    (frozenset((b"mif1", b"mif2", b"msf1")), "HEIF"),
)
"""Source: ISO/IEC 14496-12, 4.3 (where brands are); 23008-12, annexes B and E, and the AV1 image format (which)."""

_OTHERS: tuple[tuple[bytes, str], ...] = (
    (b"II*\x00", "TIFF or raw"),
    (b"MM\x00*", "TIFF or raw"),
    (b"\xff\x0a", "JPEG XL"),
    (b"\x00\x00\x00\x0cJXL \r\n\x87\n", "JPEG XL"),
    (b"\x00\x00\x00\x0cjP  \r\n\x87\n", "JPEG 2000"),
)
"""Pictures that can't be shown or freed of where they were taken."""

_PICTURE_NAMES = frozenset(
    (".jpg", ".jpeg", ".jpe", ".jfif", ".png", ".webp", ".gif", ".heic", ".heif", ".avif", ".tif", ".tiff", ".bmp")
)
_NOT_TEXT = re.compile(rb"[\x00-\x08\x0e-\x1f\x7f]")
_PIECE, _FIRST_LINES = 1 << 20, 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Recognised:
    """`picture` where it is one. `remark`: what a person should know about how it is kept; "" where nothing."""

    media_type: str
    picture: Picture | None = None
    remark: str = ""


def recognise(data: bytes, name: str) -> Recognised:
    """Raises Refused for what is empty or too large, and for a picture that is broken or can't be read here."""
    if not data:
        raise Refused(f"{name}: is empty")
    refuse_size(len(data), name)
    if other := _other_picture(data):
        raise Refused(
            f"{name}: a {other} picture can't be read here; share or save it as JPEG, or set the camera to take JPEG, "
            "and attach that"
        )
    media_type = next((kind for signature, kind in _SIGNATURES if data.startswith(signature)), None)
    media_type = media_type or ("image/webp" if webp.is_webp(data) else _text_type(data) or PLAIN)
    if media_type in FORMATS:
        return Recognised(media_type=media_type, picture=_look(data, name, FORMATS[media_type]))
    remark = ""
    if PurePosixPath(name.lower()).suffix in _PICTURE_NAMES:
        remark = f"{name}: is no picture that can be read, whatever its name says; kept as a plain file"
    elif media_type == PLAIN:
        remark = f"{name}: is of a kind that is not known here; kept as a plain file"
    return Recognised(media_type=media_type, remark=remark)


def refuse_size(size: int, name: str) -> None:
    """Raises Refused for more bytes than are kept of one file."""
    if size > MOST_BYTES:
        raise Refused(f"{name}: {show(size, 'B')} are more than the {show(MOST_BYTES, 'B')} that one file may have")


def shown_name(name: str) -> str:
    """The last part of a path from any system, on one line, that no terminal obeys; "file" where nothing is left."""
    last = inert(re.split(r"[/\\]", name)[-1]).strip()
    if len(last) > MOST_NAME:
        end = PurePosixPath(last).suffix[:10]
        last = last[: MOST_NAME - len(end) - 1] + "…" + end
    return last if last.strip(".") else "file"


def stripped(data: bytes, media_type: str) -> bytes | None:
    """A copy of a picture without place, time and device; None for what is no picture. Raises picture.Broken."""
    form = FORMATS.get(media_type)
    return None if form is None else form.stripped(data)


def _look(data: bytes, name: str, form: Format) -> Picture:
    try:
        picture = form.look(data)
    except Broken as error:
        raise Refused(
            f"{name}: a {form.word} picture that {error}; copy it again from where it was taken, and attach that"
        ) from error
    if picture.width * picture.height > MOST_PIXELS:
        raise Refused(
            f"{name}: says that it is {picture.width} × {picture.height} pixels, more than {MOST_PIXELS // 10**6} "
            "million; make it smaller, and attach that"
        )
    if not picture.width * picture.height:
        raise Refused(f"{name}: a {form.word} picture of {picture.width} × {picture.height} pixels")
    return picture


def _other_picture(data: bytes) -> str | None:
    if data[4:8] == b"ftyp":
        box = data[8 : min(int.from_bytes(data[:4]), 4096)]
        # The second word of the box is a version.
        brands = {box[at : at + 4] for at in range(0, len(box), 4) if at != 4}
        return next((word for known, word in _BRANDS if known & brands), None)
    return next((word for signature, word in _OTHERS if data.startswith(signature)), None)


def _text_type(data: bytes) -> str | None:
    head = data[:_PIECE]
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        try:
            text = head[: len(head) // 2 * 2].decode("utf-16")
        except UnicodeDecodeError:
            return None
        if _NOT_TEXT.search(text.encode("utf-8", "replace")):
            return None
    # Piece by piece, so that other threads get their turn.
    elif any(_NOT_TEXT.search(data, at, at + _PIECE) for at in range(0, len(data), _PIECE)):
        return None
    else:
        text = head.decode("utf-8-sig", "replace")
    return "text/csv" if _has_columns(text) else "text/plain"


def _has_columns(text: str) -> bool:
    lines = [line for line in text[:65_536].splitlines() if line.strip()][:_FIRST_LINES]
    counts = ([line.count(mark) for line in lines] for mark in ",;\t")
    return len(lines) > 1 and any(min(of) > 0 and min(of) == max(of) for of in counts)
