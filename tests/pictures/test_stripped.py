"""What leaves has no place in it, is turned as it was, and its pixels are bit for bit the same."""

import io
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageOps

from benchlog.pictures import exif
from benchlog.pictures.picture import Broken, Picture
from benchlog.pictures.recognise import FORMATS
from benchlog.pictures.thumbnail import LONGEST_PX, thumbnail
from tests.pictures import making


@pytest.mark.parametrize("orientation", [1, 3, 6, 8])
@pytest.mark.parametrize(("media_type", "make"), making.MAKERS.items())
def test_place_is_gone_orientation_stays_and_pixels_are_the_same(
    media_type: str, make: Callable[[int], bytes], orientation: int
) -> None:
    data = make(orientation)
    form = FORMATS[media_type]
    freed = form.stripped(data)
    assert making.PLACE in data
    assert making.PLACE not in freed
    assert form.look(freed) == form.look(data) == Picture(making.WIDTH, making.HEIGHT, orientation)
    # Read back by another decoder: Pillow, which comes with the plots of the second solver.
    with Image.open(io.BytesIO(data)) as before, Image.open(io.BytesIO(freed)) as after:
        assert after.tobytes() == before.tobytes()
        assert after.getexif().get(274, 1) == orientation
        assert not after.getexif().get_ifd(34853)
    assert form.stripped(freed) == freed


def test_the_coded_scan_of_a_jpeg_is_the_same_bytes() -> None:
    plain = making.encoded(b"JPEG")
    scan = plain[plain.index(b"\xff\xda") :]
    assert FORMATS["image/jpeg"].stripped(making.jpeg(6)).endswith(scan)


def test_a_gif_loses_its_comments_and_keeps_its_picture() -> None:
    data = making.gif()
    freed = FORMATS["image/gif"].stripped(data)
    assert making.PLACE not in freed
    with Image.open(io.BytesIO(data)) as before, Image.open(io.BytesIO(freed)) as after:
        assert after.convert("RGB").tobytes() == before.convert("RGB").tobytes()


@pytest.mark.parametrize("orientation", range(1, 9))
@pytest.mark.parametrize("order", ["<", ">"])
def test_a_small_picture_is_turned_as_another_program_turns_it(orientation: int, order: str) -> None:
    data = making.jpeg(orientation, order)
    picture = FORMATS["image/jpeg"].look(data)
    small = thumbnail(data, "image/jpeg", picture)
    assert small is not None
    assert making.PLACE not in small
    with Image.open(io.BytesIO(data)) as image, Image.open(io.BytesIO(small)) as ours:
        theirs = ImageOps.exif_transpose(image).convert("RGB")
        assert ours.size == theirs.size == picture.seen
        for x, y in ((0.2, 0.2), (0.8, 0.2), (0.2, 0.8), (0.8, 0.8)):
            at = int(x * theirs.width), int(y * theirs.height)
            one, other = ours.getpixel(at), theirs.getpixel(at)
            assert isinstance(one, tuple)
            assert isinstance(other, tuple)
            assert max(abs(a - b) for a, b in zip(one, other, strict=True)) < 30


@pytest.mark.parametrize("kind", [b"JPEG", b"PNG", b"WEBP"])
def test_a_small_picture_has_a_longest_side(kind: bytes) -> None:
    data = making.encoded(kind, making.painted(1200, 500))
    media_type = f"image/{kind.decode().lower()}"
    small = thumbnail(data, media_type, FORMATS[media_type].look(data))
    assert small is not None
    with Image.open(io.BytesIO(small)) as image:
        assert (image.format, image.size) == ("JPEG", (LONGEST_PX, 133))


@pytest.mark.parametrize(("media_type", "make"), [*making.MAKERS.items(), ("image/gif", lambda: making.gif())])
@given(data=st.data())
def test_bytes_that_are_not_what_they_were_are_broken_or_still_a_picture(
    media_type: str, make: Callable[[], bytes], data: st.DataObject
) -> None:
    spoiled = bytearray(make())
    for at in data.draw(st.lists(st.integers(4, len(spoiled) - 1), min_size=1, max_size=4)):
        spoiled[at] = data.draw(st.integers(0, 255))
    try:
        freed = FORMATS[media_type].stripped(bytes(spoiled))
    except Broken:
        return
    assert FORMATS[media_type].look(freed) == FORMATS[media_type].look(bytes(spoiled))


@given(st.binary(max_size=200))
def test_no_block_makes_the_orientation_fail(rest: bytes) -> None:
    assert 1 <= exif.orientation(b"II*\x00" + rest) <= 8
    assert 1 <= exif.orientation(b"MM\x00*" + rest) <= 8
