"""Files are known by their content, and what is not kept is refused in a sentence."""

import pytest

from benchlog.errors import Refused
from benchlog.pictures.recognise import MOST_BYTES, MOST_PIXELS, recognise, shown_name
from tests.pictures import making

PICTURES = [making.jpeg(), making.png(), making.webp(), making.gif()]


@pytest.mark.parametrize(
    ("data", "media_type"),
    [
        (making.jpeg(), "image/jpeg"),
        (making.png(), "image/png"),
        (making.webp(), "image/webp"),
        (making.gif(), "image/gif"),
        (b"%PDF-1.7\n", "application/pdf"),
        (b"t;volts\n0,0;12\n0,1;12\n", "text/csv"),
        ("t\tvolts\n0\t12\n".encode("utf-16"), "text/csv"),
        (b"Bilge pump, 12 V\nhums", "text/plain"),
        (b"12 \xb5F\n", "text/plain"),
        (b"\x00\x01\x02", "application/octet-stream"),
    ],
)
def test_the_content_decides_and_not_the_name(data: bytes, media_type: str) -> None:
    assert recognise(data, "pump.exe").media_type == media_type
    assert recognise(data, "pump.png").media_type == media_type


def test_a_photo_that_is_no_photo_is_kept_as_a_plain_file_and_said() -> None:
    known = recognise(b"hums, does not turn", "pump.jpg")
    assert (known.media_type, known.picture) == ("text/plain", None)
    assert known.remark.startswith("pump.jpg: is no picture")


@pytest.mark.parametrize("brand", ["heic", "mif1", "avif"])
def test_a_picture_that_can_not_be_shown_is_refused_with_the_way_out(brand: str) -> None:
    data = (24).to_bytes(4) + b"ftyp" + brand.encode() + bytes(4) + b"miafmsf1"
    with pytest.raises(Refused, match=r"^pump.jpg: a (HEIC|HEIF|AVIF) picture can't be read here; .*JPEG"):
        recognise(data, "pump.jpg")


@pytest.mark.parametrize("data", PICTURES)
def test_a_picture_cut_short_anywhere_is_refused_or_no_picture(data: bytes) -> None:
    whole = len(data) - len(making.PLACE)  # what follows the picture's end is none of it
    if data.startswith(b"\xff\xd8"):
        whole = data.index(b"\xff\xd9", data.index(b"\xff\xda")) + 2
    for end in range(12, whole):
        with pytest.raises(Refused, match=r"picture that (is cut short|is damaged)"):
            recognise(data[:end], "pump.jpg")
    assert recognise(data[:whole], "pump.jpg").picture is not None


def test_a_small_file_that_declares_a_vast_picture_is_refused() -> None:
    data = bytearray(making.encoded(b"PNG"))
    data[8:33] = making.chunk(b"IHDR", (60_000).to_bytes(4) + (60_000).to_bytes(4) + bytes(data[24:29]))
    with pytest.raises(Refused, match=f"60000 × 60000 pixels, more than {MOST_PIXELS // 10**6} million"):
        recognise(bytes(data), "pump.png")


def test_sizes_have_a_limit_and_nothing_is_no_file() -> None:
    with pytest.raises(Refused, match=r"are more than the 32\.0 MB"):
        recognise(b"a" * (MOST_BYTES + 1), "pump.txt")
    with pytest.raises(Refused, match="is empty"):
        recognise(b"", "pump.txt")


@pytest.mark.parametrize(
    ("name", "shown"),
    [("../../a/pump.jpg", "pump.jpg"), ("C:\\x\\pump.jpg", "pump.jpg"), ("a\x1b[2Jb", "a?[2Jb"), ("..", "file")],
)
def test_a_name_is_one_inert_line_without_a_path(name: str, shown: str) -> None:
    assert shown_name(name) == shown
