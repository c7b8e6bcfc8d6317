"""The record of a run on disk, before the screen: append-only, checksummed, readable to its last whole line.

A journal is a head and then blocks. Each block is a 4-byte little-endian length, a 4-byte CRC-32 of the payload, and
the payload in msgpack. Written by the control loop in one `write` a reading; a thread syncs it every 250 ms. A journal
that a crash left behind is read up to the first block that is cut or damaged, and all before it counts.
"""

import os
import struct
import threading
import zlib
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType
from typing import Annotated, TypeAlias

import msgspec
import numpy as np
import numpy.typing as npt

from benchlog.bench.file_lock import lock_file
from benchlog.bench.frames import Request
from benchlog.errors import JournalDamaged
from benchlog.outcome import RunResult
from benchlog.records import FLAG_CC, FLAG_CV, FLAG_ON, TICK_S, Event, Trace
from benchlog.recovery.ceilings import Ceilings
from drivers.supply import Reading, Regulation

MAGIC = b"benchlog journal 1\n"
SYNC_EVERY_S = 0.25
_BLOCK = struct.Struct("<II")
_MAX_BLOCK = 1 << 20
_MAX_JOURNAL = 1 << 30
_Ticks = Annotated[int, msgspec.Meta(ge=-(1 << 53), le=1 << 53)]
_Number = Annotated[int, msgspec.Meta(ge=0, le=9999)]
_Flags = Annotated[int, msgspec.Meta(ge=0, le=0xFF)]


class Begun(msgspec.Struct, frozen=True, array_like=True, tag="begun"):
    """The head of a run: what was asked, when, by which program."""

    request: Request
    utc: str
    program: str


class Armed(msgspec.Struct, frozen=True, array_like=True, tag="armed"):
    """The supply as it was identified and the ceilings that then held."""

    identity: str
    dialect: str
    ceilings: Ceilings


class Sample(msgspec.Struct, frozen=True, array_like=True, tag="s", gc=False):
    """One reading. Times in ticks of 0.1 ms since the run began."""

    sent: _Ticks
    received: _Ticks
    volts: float
    amps: float
    set_volts: float
    set_amps: float
    flags: _Flags


class Happening(msgspec.Struct, frozen=True, array_like=True, tag="e"):
    event: Event


class Kicked(msgspec.Struct, frozen=True, array_like=True, tag="k"):
    """A kick is about to be sent: it counts, whatever becomes of this process."""

    at: int


class Dense(msgspec.Struct, frozen=True, array_like=True, tag="d"):
    """What the supply's own measurement array held of start `number`: V and A, one every `interval_s`.

    `began`: ticks from the run's begin to the first, give or take `u_began_s`.
    """

    number: _Number
    began: _Ticks
    interval_s: float
    volts: tuple[float, ...]
    amps: tuple[float, ...]
    u_began_s: float = 0.0


class Ending(msgspec.Struct, frozen=True, array_like=True, tag="end"):
    result: RunResult
    duration_s: float


Block: TypeAlias = Begun | Armed | Sample | Happening | Kicked | Dense | Ending

_encode = msgspec.msgpack.Encoder().encode
_decode = msgspec.msgpack.Decoder(Block).decode


def flags_of(reading: Reading) -> int:
    """The flags byte of a Trace for one reading."""
    return (
        FLAG_ON * reading.output_on
        | FLAG_CC * (reading.regulation is Regulation.CC)
        | FLAG_CV * (reading.regulation is Regulation.CV)
    )


class Journal:
    """Open for one run. OSError from a write means the record can't be kept: the run must end."""

    def __init__(self, path: Path, *, sync_thread: bool = True) -> None:
        path.parent.mkdir(parents=True, exist_ok=True)
        self._file = os.open(
            path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_APPEND | getattr(os, "O_BINARY", 0), 0o600
        )
        if not lock_file(self._file):
            raise OSError(f"{path}: somebody else writes this journal")
        self._closing = threading.Event()
        self._unsynced: OSError | None = None
        self._size = os.write(self._file, MAGIC)
        self._thread = threading.Thread(target=self._sync_often, name="journal sync", daemon=True)
        if sync_thread:
            self._thread.start()

    def write(self, block: Block) -> None:
        """One block, whole, in one write. Raises OSError, also for what could not be synced since the last write."""
        if self._unsynced is not None:
            raise self._unsynced
        payload = _encode(block)
        data = _BLOCK.pack(len(payload), zlib.crc32(payload)) + payload
        written = os.write(self._file, data)
        if written != len(data):
            # Half a block would hide whatever is written after it.
            os.ftruncate(self._file, self._size)
            raise OSError("the journal took only a part of a block: the disk is full")
        self._size += written

    def sample(self, reading: Reading, zero_s: float) -> None:
        """A reading, its times counted from `zero_s`."""
        self.write(
            Sample(
                round((reading.sent_s - zero_s) / TICK_S),
                round((reading.received_s - zero_s) / TICK_S),
                reading.volts,
                reading.amps,
                reading.set_volts,
                reading.set_amps,
                flags_of(reading),
            )
        )

    def _sync_often(self) -> None:
        while not self._closing.wait(SYNC_EVERY_S):
            try:
                os.fsync(self._file)
            except OSError as error:
                self._unsynced = error
                return

    def close(self) -> None:
        """Synced and closed. Idempotent."""
        if self._closing.is_set():
            return
        self._closing.set()
        if self._thread.is_alive():
            self._thread.join(timeout=5.0)
        try:
            os.fsync(self._file)
        finally:
            os.close(self._file)

    def __enter__(self) -> "Journal":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()


@dataclass(frozen=True, slots=True, kw_only=True)
class JournalContents:
    """What a journal says. `ending` is None where the run was cut short; `armed` where no supply was identified.

    `dense`: the number of a start and what the supply's own array held of it.
    """

    begun: Begun
    armed: Armed | None
    trace: Trace
    events: tuple[Event, ...]
    ending: Ending | None
    kicks: int = 0
    dense: tuple[tuple[int, Dense], ...] = ()


def read_journal(path: Path) -> JournalContents:
    """Everything up to the first cut or damaged block. Raises JournalDamaged without a readable head, OSError."""
    if not path.is_file() and path.exists():
        raise JournalDamaged(f"{path}: not a file")
    if path.stat().st_size > _MAX_JOURNAL:
        raise JournalDamaged(f"{path}: larger than {_MAX_JOURNAL} bytes")
    blocks, trace = _read(path.read_bytes())
    if not blocks or not isinstance(blocks[0], Begun):
        raise JournalDamaged(f"{path}: no readable head")
    return JournalContents(
        begun=blocks[0],
        armed=next((block for block in blocks if isinstance(block, Armed)), None),
        trace=trace,
        events=tuple(block.event for block in blocks if isinstance(block, Happening)),
        ending=next((block for block in blocks if isinstance(block, Ending)), None),
        kicks=sum(isinstance(block, Kicked) for block in blocks),
        dense=tuple((block.number, block) for block in blocks if isinstance(block, Dense)),
    )


def _read(data: bytes) -> tuple[list[Block], Trace]:
    """All blocks but the samples, and those as a trace."""
    found: list[Block] = []
    pieces: list[_Rows] = []
    singly: list[Sample] = []
    at = len(MAGIC) if data.startswith(MAGIC) else len(data)
    while at + _BLOCK.size <= len(data):
        if found and (rows := _usual_samples(data, at)) is not None:
            pieces += [_rows_of(singly), rows]
            singly = []
            at += len(rows) * _USUAL.itemsize
            continue
        length, checksum = _BLOCK.unpack_from(data, at)
        payload = data[at + _BLOCK.size : at + _BLOCK.size + length]
        if length > _MAX_BLOCK or len(payload) != length or zlib.crc32(payload) != checksum:
            break
        try:
            block = _decode(payload)
        except (msgspec.MsgspecError, ValueError, RecursionError):  # text that is not UTF-8; what is nested too deep
            break
        if isinstance(block, Ending) and block.result.kicks < 0:
            break
        if isinstance(block, Sample) and found:
            singly.append(block)
        else:
            found.append(block)
        at += _BLOCK.size + length
    pieces.append(_rows_of(singly))
    # Column by column: all rows once more beside them are 100 MB of a day at 20 readings/s.
    return found, Trace(**{name: np.concatenate([rows[name] for rows in pieces]) for name in _COLUMNS})


_Rows: TypeAlias = npt.NDArray[np.void]
_COLUMNS = ("sent", "received", "volts", "amps", "set_volts", "set_amps", "flags")
_TRACE = np.dtype([*((name, "<i8" if name in _COLUMNS[:2] else "<f8") for name in _COLUMNS[:-1]), ("flags", "u1")])
_USUAL = np.dtype(
    [
        *(("length", "<u4"), ("checksum", "<u4"), ("tag", "V3")),
        *(("type_0", "u1"), ("sent", ">u4"), ("type_1", "u1"), ("received", ">u4")),
        *(("type_2", "u1"), ("volts", ">f8"), ("type_3", "u1"), ("amps", ">f8")),
        *(("type_4", "u1"), ("set_volts", ">f8"), ("type_5", "u1"), ("set_amps", ">f8"), ("flags", "u1")),
    ]
)
"""The block of a sample from 6.6 s into a run on, byte for byte: almost all of a long journal, read many at a time.

Source of the types: the msgpack specification: 0x98 an array of 8, 0xa1 a text of 1, 0xce 32 bits, 0xcb a float64.
"""
_TAG, _TYPES = b"\x98\xa1s", (0xCE, 0xCE, 0xCB, 0xCB, 0xCB, 0xCB)
_AT_ONCE = 2048


def _usual_samples(data: bytes, at: int) -> _Rows | None:
    """Whole and undamaged samples of the usual form that follow one another from `at` on; None where there are none."""
    payload = _USUAL.itemsize - _BLOCK.size
    if data[at] != payload or not data.startswith(_TAG, at + _BLOCK.size):
        return None
    count = min((len(data) - at) // _USUAL.itemsize, _AT_ONCE)
    rows = np.frombuffer(data, _USUAL, count, at)
    usual = (rows["length"] == payload) & (rows["tag"] == np.void(_TAG)) & (rows["flags"] < 0x80)
    for number, kind in enumerate(_TYPES):
        usual &= rows[f"type_{number}"] == kind
    count = count if usual.all() else int(usual.argmin())
    view = memoryview(data)
    for number, checksum in enumerate(rows["checksum"][:count].tolist()):
        begins = at + number * _USUAL.itemsize + _BLOCK.size
        if zlib.crc32(view[begins : begins + payload]) != checksum:
            count = number
            break
    found = np.empty(count, _TRACE)
    for name in _COLUMNS:
        found[name] = rows[name][:count]
    return found if count else None


def _rows_of(samples: list[Sample]) -> _Rows:
    return np.array([msgspec.structs.astuple(sample) for sample in samples], dtype=_TRACE)
