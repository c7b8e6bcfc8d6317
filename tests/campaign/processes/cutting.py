"""A journal cut at every length, and with every byte flipped: what can be read, and that it can be filed."""

import struct
import zlib
from collections.abc import Iterable, Iterator
from pathlib import Path

import msgspec

from benchlog.bench.journal import MAGIC, Begun, Block, JournalContents, read_journal
from benchlog.errors import JournalDamaged
from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from tests.campaign.processes.hits import same

_HEAD = 8


def ends_of_blocks(data: bytes) -> list[int]:
    """Where each block ends, by the format's own words: a length, a checksum, as many bytes."""
    at, ends = len(MAGIC), []
    while at < len(data):
        at += _HEAD + int.from_bytes(data[at : at + 4], "little")
        ends.append(at)
    return ends


def damaged(data: bytes, lengths: Iterable[int], flips: Iterable[int]) -> Iterator[tuple[str, bytes, int]]:
    """What was done, the bytes that are left, and how many of them are untouched from the beginning."""
    for length in lengths:
        yield f"cut at {length}", data[:length], length
    for at in flips:
        yield f"byte {at} flipped", data[:at] + bytes([data[at] ^ (1 << at % 8)]) + data[at + 1 :], at


def wrong_after(data: bytes, damages: Iterable[tuple[str, bytes, int]], path: Path) -> tuple[int, list[str]]:
    """How many were tried, and what was wrong: not exactly the whole blocks before the damage, or another exception."""
    tried, wrong, ends = 0, [], ends_of_blocks(data)
    whole = _prefixes(data, ends)
    for what, left, untouched in damages:
        tried += 1
        path.write_bytes(left)
        count = sum(end <= untouched for end in ends)
        try:
            found = read_journal(path)
        except JournalDamaged:
            if count:
                wrong.append(f"{what}: refused, with {count} whole blocks")
            continue
        except Exception as error:  # noqa: BLE001 - any other is what is looked for
            wrong.append(f"{what}: {error!r}")
            continue
        if not count or _size(found) != whole[count]:
            wrong.append(f"{what}: {_size(found)} instead of {whole[count] if count else 'a refusal'}")
    return tried, wrong


def wrong_filed(data: bytes, lengths: Iterable[int], folder: Path) -> tuple[int, list[str]]:
    """Files each cut that has a head: the trace must be the journal's. How many were filed, and what was wrong."""
    filed, wrong, first = 0, [], ends_of_blocks(data)[0]
    with Ledger.open(folder / "cuts.ledger") as ledger:
        for length in lengths:
            if length < first:
                continue
            path = folder / "cut.journal"
            path.write_bytes(_renamed(data[:length], length))
            contents = read_journal(path)
            run = file_journal(ledger, path).run
            filed += 1
            if not same(contents.trace, ledger.trace(run)):
                wrong.append(f"cut at {length}: the filed trace is another")
    return filed, wrong


def _prefixes(data: bytes, ends: list[int]) -> dict[int, tuple[int, int, bool, bool]]:
    """Of so many blocks from the beginning: samples, events, whether armed, whether ended."""
    tags: list[str] = []
    sizes = {}
    start = len(MAGIC)
    for number, end in enumerate(ends, 1):
        tags.append(msgspec.msgpack.decode(data[start + _HEAD : end])[0])
        sizes[number] = (tags.count("s"), tags.count("e"), "armed" in tags, "end" in tags)
        start = end
    return sizes


def _size(found: JournalContents) -> tuple[int, int, bool, bool]:
    return len(found.trace.sent), len(found.events), found.armed is not None, found.ending is not None


def _renamed(data: bytes, number: int) -> bytes:
    """The same run under a name of its own, because a run is filed once."""
    end = ends_of_blocks(data)[0]
    begun = msgspec.msgpack.decode(data[len(MAGIC) + _HEAD : end], type=Block)
    assert isinstance(begun, Begun)
    renamed = msgspec.structs.replace(begun, request=msgspec.structs.replace(begun.request, uid=f"cut-{number}"))
    payload = msgspec.msgpack.encode(renamed)
    return MAGIC + struct.pack("<II", len(payload), zlib.crc32(payload)) + payload + data[end:]
