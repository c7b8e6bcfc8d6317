"""What a person likes is kept, and a file that can't be read stops nobody."""

from pathlib import Path

import pytest

from ui.preferences import Preferences, Preferring


def test_what_was_changed_is_there_the_next_time(tmp_path: Path) -> None:
    file = tmp_path / "there" / "window.json"
    Preferring(file).change(colours="dark", off_key="F12", parts={"history": "AAAA"})
    now = Preferring(file).now
    assert (now.colours, now.off_key, now.parts) == ("dark", "F12", {"history": "AAAA"})
    assert now.size == 1.0


@pytest.mark.parametrize(
    "content", [b"", b"{", b'{"size": 7.0}', b'{"colours": "loud"}', b"\xff\xfe", b"[]", b" " * 70_000]
)
def test_a_file_that_makes_no_sense_is_as_good_as_none(tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "window.json"
    file.write_bytes(content)
    assert Preferring(file).now == Preferences()


def test_a_preference_of_a_newer_program_does_not_take_the_others_along(tmp_path: Path) -> None:
    file = tmp_path / "window.json"
    file.write_bytes(b'{"colours": "dark", "something_new": 3}')
    assert Preferring(file).now.colours == "dark"


def test_where_nothing_can_be_written_the_change_holds_for_now(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    preferring = Preferring(tmp_path / "file" / "window.json")
    assert preferring.change(beep=False).beep is False
    assert preferring.now.beep is False


def test_without_a_file_nothing_is_kept() -> None:
    assert Preferring(None).change(contrast=True).contrast
    assert not Preferring(None).now.contrast


def test_a_size_that_is_none_of_those_offered_is_refused() -> None:
    with pytest.raises(ValueError, match="size"):
        Preferences(size=3.0)
