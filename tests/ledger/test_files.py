"""Originals beside the ledger: byte for byte, verified when read, freed of place when they leave."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from benchlog.errors import LedgerDamaged, Refused
from benchlog.ledger.files import attach, export, files_of, folder_of, missing_originals, original
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor
from tests.pictures import making


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with Ledger.open(tmp_path / "harbour.db") as opened:
        opened.new_job(item=Item(kind="Bilge pump"), motor=Motor(rated_volts=12.0), complaint="hums", load_state="dry")
        yield opened


def test_an_original_is_kept_byte_for_byte_with_a_small_picture(ledger: Ledger, tmp_path: Path) -> None:
    source = tmp_path / "pump.jpg"
    source.write_bytes(making.jpeg(6))
    kept = attach(ledger, 1, source, caption=" impeller,  rust ", who="dock foreman")
    path = original(ledger, kept.id)
    assert path.read_bytes() == making.jpeg(6)
    assert path == folder_of(ledger.path) / kept.sha256[:2] / f"{kept.sha256}.jpg"
    assert (kept.name, kept.caption, kept.width, kept.height) == ("pump.jpg", "impeller, rust", 64, 96)
    assert kept.thumbnail is not None
    assert files_of(ledger, 1) == [kept]
    assert [one.name for one in path.parent.iterdir()] == [path.name]


def test_the_same_content_is_one_file_on_disk_and_one_line_a_job(ledger: Ledger) -> None:
    one = attach(ledger, 1, making.png(), "a.png")
    assert attach(ledger, 1, making.png(), "b.png") == one
    other = attach(ledger, 1, making.png(), "b.png", caption="the brushes")
    assert (other.id, other.sha256) != (one.id, "")
    assert original(ledger, other.id) == original(ledger, one.id)


def test_a_changed_or_lost_original_is_said_and_comes_back_with_its_bytes(ledger: Ledger, tmp_path: Path) -> None:
    kept = attach(ledger, 1, making.png(), "a.png")
    path = original(ledger, kept.id)
    assert missing_originals(ledger, read=True) == []
    path.write_bytes(path.read_bytes()[:-1] + b"x")
    assert missing_originals(ledger) == []
    assert [one.what for one in missing_originals(ledger, read=True)] == ["was changed"]
    for ask in (lambda: original(ledger, kept.id), lambda: export(ledger, kept.id, tmp_path / "out.png")):
        with pytest.raises(LedgerDamaged, match=r"the original of a.png was changed"):
            ask()
    assert not (tmp_path / "out.png").exists()
    path.unlink()
    assert [(one.job, one.what) for one in missing_originals(ledger)] == [(1, "is gone")]
    attach(ledger, 1, making.png(), "a.png")
    assert original(ledger, kept.id).read_bytes() == making.png()


def test_what_leaves_has_no_place_in_it_and_never_goes_over_what_is_there(ledger: Ledger, tmp_path: Path) -> None:
    kept = attach(ledger, 1, making.jpeg(6), "a.jpg")
    note = attach(ledger, 1, b"hums", "a.txt")
    assert export(ledger, kept.id, tmp_path / "out.jpg")
    assert making.PLACE not in (tmp_path / "out.jpg").read_bytes()
    assert not export(ledger, note.id, tmp_path / "out.txt")
    assert (tmp_path / "out.txt").read_bytes() == b"hums"
    with pytest.raises(Refused, match="is there already"):
        export(ledger, kept.id, tmp_path / "out.txt")
    assert (tmp_path / "out.txt").read_bytes() == b"hums"


def test_what_is_refused_leaves_nothing(ledger: Ledger, tmp_path: Path) -> None:
    for source, words in ((making.jpeg()[:300], "is cut short"), (tmp_path, "not a file"), (tmp_path / "a", "be read")):
        with pytest.raises(Refused, match=words):
            attach(ledger, 1, source, "a.jpg")
    with pytest.raises(Refused, match="no job with the key 7"):
        attach(ledger, 7, making.png(), "a.png")
    assert files_of(ledger, 1) == []
    assert not folder_of(ledger.path).exists()


def test_a_ledger_from_elsewhere_names_no_file_outside_its_folder(ledger: Ledger) -> None:
    kept = attach(ledger, 1, b"hums", "a.txt")
    with closing(sqlite3.connect(ledger.path)) as connection, connection:
        connection.execute("UPDATE file SET sha256 = '../../../etc/passwd'")
    with pytest.raises(LedgerDamaged, match="a name that is never given"):
        original(ledger, kept.id)
