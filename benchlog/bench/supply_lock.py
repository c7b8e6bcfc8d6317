"""Who uses a supply: one run, or one question, at a time. A second one is refused before it has sent a byte.

A lock for each output of each address, in the user's own folder; who uses the whole supply has all of them. They end
with their process, however it ends. The waiting rescue inherits those of its run and never asks for them: it must get
to the supply, and nobody else before it is through.
"""

import contextlib
import hashlib
import os
import re
from collections.abc import Sequence
from pathlib import Path

import msgspec
import platformdirs

from benchlog.bench.file_lock import HeldLock, take
from benchlog.bench.frames import Request
from benchlog.clock import SystemClock
from benchlog.errors import Refused
from drivers.address import same_instrument
from drivers.dialect import Dialect
from drivers.identifying import outputs_apart

MOST_OUTPUTS = 16
"""As many as a dialect may have."""
PATIENCE_S = 1.5
"""The processes of the run before end a moment after its last word."""
_LONGEST_WORD = 2000


class Holder(msgspec.Struct, frozen=True, kw_only=True):
    """Who has a lock, as its file says. `utc`: since when. `output`: None for the whole supply."""

    what: str
    pid: int
    utc: str
    output: int | None = None


class HeldSupply:
    """Made by `hold`. Let go of with release(), or at the end of a `with`."""

    def __init__(self, locks: Sequence[HeldLock]) -> None:
        self._locks = locks

    @property
    def files(self) -> tuple[int, ...]:
        """To be inherited by a process that has to go on with this supply."""
        return tuple(lock.fileno() for lock in self._locks)

    def release(self) -> None:
        for lock in self._locks:
            lock.release()

    def __enter__(self) -> "HeldSupply":
        return self

    def __exit__(self, *_: object) -> None:
        self.release()


def folder() -> Path:
    """The user's own, and the same in every session of theirs."""
    return Path(platformdirs.user_state_dir("benchlog", appauthor=False)) / "supplies"


def hold_for(request: Request, dialect: Dialect) -> HeldSupply:
    """The supply of a run: its output alone only where nothing that two runs send could meet. Raises Refused."""
    network = same_instrument(request.resource).startswith(("tcp ", "lan "))
    alone = request.output if network and outputs_apart(dialect) else None
    job = "a new job" if request.job is None else f"job {request.job}"
    return hold(request.resource, what=f"a run of {job} on output {request.output}", output=alone)


def hold(
    resource: str,
    *,
    what: str,
    output: int | None = None,
    where: Path | None = None,
    patience_s: float = PATIENCE_S,
) -> HeldSupply:
    """The whole supply, or one output of it. Raises Refused where somebody has it, saying who, or nobody can tell."""
    clock, place, name = SystemClock(), where or folder(), _file_name(resource)
    holder = Holder(what=what, pid=os.getpid(), utc=clock.utc(), output=output)
    until_s = clock.now() + patience_s
    locks: list[HeldLock] = []
    try:
        place.mkdir(parents=True, exist_ok=True)
        for number in range(1, MOST_OUTPUTS + 1) if output is None else (output,):
            path = place / f"{name}.{number}"
            while (lock := take(path)) is None:
                if clock.now() >= until_s:
                    raise Refused(_in_use(path, output))
            locks.append(lock)
            os.ftruncate(lock.fileno(), 0)
            os.write(lock.fileno(), msgspec.json.encode(holder))
    except OSError as error:
        HeldSupply(locks).release()
        what = error.strerror or str(error)
        raise Refused(
            f"whether another program uses the supply can't be told ({place}: {what}): nothing was sent to it"
        ) from error
    except Refused:
        HeldSupply(locks).release()
        raise
    return HeldSupply(locks)


def _in_use(path: Path, wanted: int | None) -> str:
    """The sentence for whoever is refused."""
    holder = None
    with contextlib.suppress(OSError, msgspec.MsgspecError):
        holder = msgspec.json.decode(path.read_bytes()[:_LONGEST_WORD], type=Holder)
    if holder is None:
        who = "another program of yours"
    else:
        who = f"{holder.what} (process {holder.pid}, since {holder.utc[11:16]} UTC)"
    whole = wanted is None or holder is None or holder.output is None
    shared = "its outputs can't be used by two at once" if whole else "that output is taken"
    return f"the supply is in use by {who}; {shared}. Nothing was sent to it. Wait for its end, or stop it first"


def _file_name(resource: str) -> str:
    """Readable, and of every address its own."""
    address = same_instrument(resource)
    plain = re.sub(r"[^A-Za-z0-9.-]+", "-", address)[:60].strip("-.")
    return f"{plain}-{hashlib.sha256(address.encode('utf-8', 'surrogatepass')).hexdigest()[:10]}"
