"""A disk that takes half a block: what is written after it must not be hidden by it."""

import os
from pathlib import Path

import pytest

from benchlog.bench.journal import Happening, Journal, read_journal
from benchlog.records import Event, EventKind
from tests.ledger.benches import BEGAN, blocks, request

NOTES = [Happening(Event(t_s=float(n), kind=EventKind.NOTE, text=f"note {n}")) for n in range(3)]


def test_half_a_block_is_taken_back_so_that_the_next_can_be_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "a.journal"
    real = os.write
    with Journal(path, sync_thread=False) as journal:
        journal.write(blocks(request("a"), utc=BEGAN)[0])
        journal.write(NOTES[0])
        with monkeypatch.context() as patched:
            patched.setattr(os, "write", lambda file, data: real(file, data[: len(data) // 2]))
            with pytest.raises(OSError, match="the disk is full"):
                journal.write(NOTES[1])
        journal.write(NOTES[2])
    assert [event.text for event in read_journal(path).events] == ["note 0", "note 2"]
