"""A file is read once and within bounds; what can't be decoded is kept all the same, and said."""

import hashlib
import os
import sys
from pathlib import Path

import pytest

from benchlog.errors import Refused
from benchlog.pictures.recognise import MOST_BYTES
from benchlog.pictures.taking import take, take_file
from tests.pictures import making


def test_a_sound_file_whose_pixels_can_not_be_decoded_is_kept_without_a_small_picture() -> None:
    plain = making.encoded(b"PNG")
    data = plain[:33] + making.chunk(b"IDAT", b"no pixels") + making.chunk(b"IEND", b"")
    taken = take(data, "pump.png")
    assert (taken.media_type, taken.thumbnail, taken.width) == ("image/png", None, making.WIDTH)
    assert (taken.data, taken.sha256) == (data, hashlib.sha256(data).hexdigest())
    assert "could not be decoded" in taken.remark


@pytest.mark.skipif(sys.platform == "win32", reason="no named pipes in folders")
def test_a_pipe_is_refused_and_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pump.jpg")
    with pytest.raises(Refused, match="is not a file"):
        take_file(tmp_path / "pump.jpg")


def test_a_file_that_is_too_large_is_not_read(tmp_path: Path) -> None:
    with (tmp_path / "pump.jpg").open("wb") as file:
        file.truncate(100 * MOST_BYTES)
    with pytest.raises(Refused, match=r"more than the 32\.0 MB"):
        take_file(tmp_path / "pump.jpg")
