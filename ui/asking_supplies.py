"""Where supplies may be, and what one of them is: found out in processes of their own, each with a deadline.

Everything here waits, and so is called from a thread that is not the window's.
"""

import subprocess
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

import msgspec

from benchlog.bench.looking_around import LastLook, last_look, look_around
from benchlog.children import command
from benchlog.quantities import show
from ui import texts

ASK_S = 40.0
"""s after which a process that asks is killed: it asks for 7.5 s, and then takes eight readings of a slow supply."""

RANGE_QUESTION = "How many volts"
"""How the question begins that the two fields for a range answer."""


class _Outputs(msgspec.Struct, frozen=True, kw_only=True):
    count: int = 1


class _Dialect(msgspec.Struct, frozen=True, kw_only=True):
    outputs: _Outputs = _Outputs()


class _Settling(msgspec.Struct, frozen=True, kw_only=True):
    utc: str = ""


class Told(msgspec.Struct, frozen=True, kw_only=True):
    """A report as `benchlog supply --json` writes it and the ledger keeps it; an older one lacks some of it."""

    resource: str = ""
    output: int = 1
    usable: bool = False
    identity: str = ""
    why: str = ""
    speaks: str = ""
    dialect: _Dialect | None = None
    missing: dict[str, str] = {}
    questions: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    volts_max: float | None = None
    amps_max: float | None = None
    latency_s: float | None = None
    reading_s: float | None = None
    readings_per_s: float | None = None
    least_kick_s: float | None = None
    settling: _Settling | None = None

    @property
    def outputs(self) -> int:
        return 1 if self.dialect is None else self.dialect.outputs.count

    @property
    def wants_range(self) -> bool:
        return any(question.startswith(RANGE_QUESTION) for question in self.questions)


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """`most`: volts and amps that its outputs can give, where a person said so."""

    resource: str
    output: int = 1
    most: tuple[float, float] | None = None


class Supplies(Protocol):
    """What the window wants of the world of supplies; `look` raises OSError."""

    def last(self) -> LastLook | None: ...
    def look(self) -> LastLook: ...
    def ask(self, question: Question) -> Told: ...
    def stop(self) -> None: ...


class SuppliesAsked:
    """By the same command as at a terminal, which also keeps what was found in the ledger."""

    def __init__(self, ledger: Path) -> None:
        self._ledger = ledger
        self._process: subprocess.Popen[str] | None = None
        self._stopped = False

    def last(self) -> LastLook | None:
        return last_look()

    def look(self) -> LastLook:
        return look_around()

    def ask(self, question: Question) -> Told:
        """What came of it; what went wrong is its `why`."""
        if self._stopped:
            return Told(resource=question.resource, why=texts.ASK_STOPPED)
        try:
            out, err = self._run(question)
        except subprocess.TimeoutExpired:
            return Told(resource=question.resource, why=texts.ASK_TOO_LONG.format(after=show(ASK_S, "s")))
        except OSError as error:
            return Told(resource=question.resource, why=str(error))
        return report_of(out, err, question)

    def stop(self) -> None:
        """A process that is asking is ended: it has switched nothing on."""
        self._stopped = True
        if self._process is not None:
            self._process.kill()

    def _run(self, question: Question) -> tuple[str, str]:
        asking = command("benchlog.cli", "supply", "--json", "--ledger", str(self._ledger))
        asking += ["--output", str(question.output)]
        if question.most is not None:
            volts, amps = question.most
            asking += ["--most-volts", f"{volts:.9g}", "--most-amps", f"{amps:.9g}"]
        asking += ["--", question.resource]
        pipe, none = subprocess.PIPE, subprocess.DEVNULL
        with subprocess.Popen(
            asking, stdin=none, stdout=pipe, stderr=pipe, encoding="utf-8", errors="replace"
        ) as process:
            self._process = process
            try:
                return process.communicate(timeout=ASK_S)
            except BaseException:
                process.kill()
                raise
            finally:
                self._process = None


def report_of(out: str, err: str, question: Question) -> Told:
    """What the command wrote: its report, or else the line in which it says what went wrong."""
    for line in out.splitlines():
        try:
            return msgspec.json.decode(line, type=Told)
        except msgspec.MsgspecError:
            continue
    said = err.strip().splitlines()
    why = said[-1].removeprefix("benchlog: ") if said else texts.ASK_NOTHING
    return Told(resource=question.resource, why=why)


def told_of(content: dict[str, Any]) -> Told | None:
    """A report that the ledger kept; None where a program of another age wrote it differently."""
    try:
        return msgspec.convert(content, Told)
    except msgspec.ValidationError:
        return None
