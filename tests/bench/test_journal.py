"""A disk that takes half a block; and a journal cut or spoiled anywhere, read as if one block at a time."""

import os
import struct
import zlib
from pathlib import Path

import msgspec
import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchlog.bench.journal import MAGIC, Block, Dense, Happening, Journal, Kicked, Sample, read_journal
from benchlog.errors import JournalDamaged
from benchlog.records import Event, EventKind
from tests.ledger.benches import BEGAN, bench_trace, blocks, request, write_journal

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


def one_at_a_time(data: bytes) -> list[Block]:
    """The layout as the module's docstring tells it."""
    decoder, found, at = msgspec.msgpack.Decoder(Block), [], len(MAGIC)
    while data.startswith(MAGIC) and at + 8 <= len(data):
        length, checksum = struct.unpack_from("<II", data, at)
        payload = data[at + 8 : at + 8 + length]
        if len(payload) != length or zlib.crc32(payload) != checksum:
            break
        try:
            found.append(decoder.decode(payload))
        except (msgspec.MsgspecError, ValueError):
            break
        at += 8 + length
    return found


@pytest.fixture(scope="module")
def long_journal(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """Half a minute at 96 a second, with kicks and notes in it."""
    said = blocks(request("long"), utc=BEGAN, trace=bench_trace(2900))
    for place in range(60, 2900, 170):
        said[place:place] = [Kicked(place), NOTES[place % 3]]
    return write_journal(tmp_path_factory.mktemp("long") / "long.journal", said).read_bytes()


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(cut=st.floats(0.0, 1.0), spoiled=st.lists(st.tuples(st.floats(0.0, 1.0), st.integers(0, 7)), max_size=2))
def test_many_samples_at_once_are_what_they_are_one_at_a_time(
    tmp_path: Path, long_journal: bytes, cut: float, spoiled: list[tuple[float, int]]
) -> None:
    data = bytearray(long_journal[: round(cut * len(long_journal))] if spoiled == [] else long_journal)
    for share, bit in spoiled:
        data[int(share * (len(data) - 1))] ^= 1 << bit
    path = tmp_path / "a.journal"
    path.write_bytes(data)
    right = one_at_a_time(bytes(data))
    if not right:
        with pytest.raises(JournalDamaged):
            read_journal(path)
        return
    got = read_journal(path)
    samples = [block for block in right if isinstance(block, Sample)]
    for name in got.trace.__slots__:
        column = getattr(got.trace, name)
        assert column.tolist() == [getattr(sample, name) for sample in samples]
        assert column.flags.c_contiguous
    assert got.trace.sent.dtype == np.int64
    assert list(got.events) == [block.event for block in right if isinstance(block, Happening)]
    assert got.kicks == sum(isinstance(block, Kicked) for block in right)


def test_a_dense_curve_is_kept_with_its_number_and_a_cut_one_is_left_out(tmp_path: Path) -> None:
    path = tmp_path / "a.journal"
    volts, amps = (tuple(np.linspace(*ends, 4000).tolist()) for ends in ((0.0, 12.0), (2.0, 0.2)))
    curve = Dense(2, 12_345, 4e-4, volts, amps, 0.002)
    with Journal(path, sync_thread=False) as journal:
        for block in (*blocks(request("a"), utc=BEGAN)[:2], curve, NOTES[1]):
            journal.write(block)
    assert read_journal(path).dense == ((2, curve),)
    whole = path.read_bytes()
    path.write_bytes(whole[:-5000])
    cut = read_journal(path)
    assert (cut.dense, cut.events) == ((), ())
    assert cut.armed is not None
