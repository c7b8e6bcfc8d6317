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


class Ending(msgspec.Struct, frozen=True, array_like=True, tag="end"):
    result: RunResult
    duration_s: float


Block: TypeAlias = Begun | Armed | Sample | Happening | Kicked | Ending

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
    """What a journal says. `ending` is None where the run was cut short; `armed` where no supply was identified."""

    begun: Begun
    armed: Armed | None
    trace: Trace
    events: tuple[Event, ...]
    ending: Ending | None
    kicks: int = 0


def read_journal(path: Path) -> JournalContents:
    """Everything up to the first cut or damaged block. Raises JournalDamaged without a readable head, OSError."""
    if not path.is_file() and path.exists():
        raise JournalDamaged(f"{path}: not a file")
    if path.stat().st_size > _MAX_JOURNAL:
        raise JournalDamaged(f"{path}: larger than {_MAX_JOURNAL} bytes")
    blocks = _blocks(path.read_bytes())
    if not blocks or not isinstance(blocks[0], Begun):
        raise JournalDamaged(f"{path}: no readable head")
    samples = [block for block in blocks if isinstance(block, Sample)]
    return JournalContents(
        begun=blocks[0],
        armed=next((block for block in blocks if isinstance(block, Armed)), None),
        trace=_trace_of(samples),
        events=tuple(block.event for block in blocks if isinstance(block, Happening)),
        ending=next((block for block in blocks if isinstance(block, Ending)), None),
        kicks=sum(isinstance(block, Kicked) for block in blocks),
    )


def _blocks(data: bytes) -> list[Block]:
    found: list[Block] = []
    if not data.startswith(MAGIC):
        return found
    at = len(MAGIC)
    while at + _BLOCK.size <= len(data):
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
        found.append(block)
        at += _BLOCK.size + length
    return found


def _trace_of(samples: list[Sample]) -> Trace:
    return Trace(
        sent=np.array([sample.sent for sample in samples], dtype=np.int64),
        received=np.array([sample.received for sample in samples], dtype=np.int64),
        volts=np.array([sample.volts for sample in samples], dtype=np.float64),
        amps=np.array([sample.amps for sample in samples], dtype=np.float64),
        set_volts=np.array([sample.set_volts for sample in samples], dtype=np.float64),
        set_amps=np.array([sample.set_amps for sample in samples], dtype=np.float64),
        flags=np.array([sample.flags for sample in samples], dtype=np.uint8),
    )
