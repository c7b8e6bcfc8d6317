"""The support bundle: one zip that says what this installation is and what went wrong, and nothing of anybody's jobs.

It is put together from what is known to be the program's own: numbers, versions, names of tables and of dialects that
come with it. No text of the ledger is read into it but the firmware's version of a supply, where it looks like one.
"""

import json
import os
import platform
import re
import sqlite3
import sys
import zipfile
from collections.abc import Mapping
from contextlib import closing
from pathlib import Path
from typing import Any

import msgspec

from benchlog.clock import Clock, SystemClock
from benchlog.errors import LedgerError, Refused
from benchlog.ledger.connection import connect
from benchlog.ledger.opening import HEAD
from benchlog.ledger.schema import Row
from benchlog.licences import listing
from benchlog.logs import log_files
from benchlog.settings import owner_settings

LOOK_S = 2.0
"""s for looking through the ledger while a window is open: a run that ends then waits for it."""
MOST_LOG = 1_000_000
"""Bytes of each log file; those are no longer by themselves."""

WORDS = """\
What is in this file, and what is not
=====================================

about.json     versions of benchlog and of what it stands on, the computer's system, what is known of its screens
settings.json  the owner's ceilings, as numbers
ledger.json    the ledger's revision, its size, how many rows each table has, whether its file is sound, and of the
               supply used last: which of benchlog's own dialects it speaks, and its firmware's version
logs/          warnings and faults, with the time in UTC; addresses are taken out

Not in it: names, owners, contacts, labels, serial numbers, complaints, notes, tags, photos, files, traces, readings,
prices, the supply's maker, address and serial number, your user name, your folders.

It is text throughout: look through it before you give it away.
"""

_ADDRESS = re.compile(r"\b(?:TCPIP|ASRL|USB|GPIB|VXI|PXI)\d*[:/][^\s;\"')]*|\b\d{1,3}(?:\.\d{1,3}){3}\b|\S+@\S+")
_FIRMWARE = re.compile(r"(?=.*\d)(?!.*[A-Za-z]{4})[A-Za-z0-9._\-/]{1,32}")
"""At most three letters in a row: what is a word is no version."""


def bundle(
    path: Path,
    ledger: Path,
    *,
    screen: Mapping[str, object] | None = None,
    within_s: float = LOOK_S,
    logs: Path | None = None,
    settings: Path | None = None,
    clock: Clock | None = None,
) -> None:
    """Writes the zip; a file that is there is not replaced. `screen`: what the window knows of what it is shown on.

    Not in the window's thread: it reads the whole ledger, for `within_s` at the most. Raises OSError.
    """
    clock = clock or SystemClock()
    parts = {
        "READ-ME.txt": WORDS,
        "about.json": _json(about(clock, screen or {})),
        "settings.json": _json(ceilings_set(settings)),
        "ledger.json": _json(ledger_facts(ledger, clock, within_s)),
    }
    for file in log_files(logs):
        text = file.read_bytes()[-MOST_LOG:].decode("utf-8", "replace")
        parts[f"logs/{file.name}"] = without_addresses(text)
    try:
        with zipfile.ZipFile(path, "x", zipfile.ZIP_DEFLATED) as target:
            for name, text in parts.items():
                target.writestr(name, text)
    except FileExistsError:
        raise
    except OSError:
        path.unlink(missing_ok=True)
        raise


def about(clock: Clock, screen: Mapping[str, object]) -> dict[str, Any]:
    """Versions, and what it runs on."""
    return {
        "made": clock.utc(),
        "versions": {part.name: part.version for part in listing()},
        "built": bool(getattr(sys, "frozen", False)),
        "system": f"{platform.system()} {platform.release()} {platform.machine()}",
        "processors": os.cpu_count(),
        "qt platform asked for": os.environ.get("QT_QPA_PLATFORM", "")[:40].partition(":")[0],
        "screen": dict(screen),
    }


def ceilings_set(path: Path | None) -> dict[str, Any]:
    """The owner's ceilings; of a file that can't be read no more than that."""
    try:
        owner = owner_settings(path)
    except Refused:
        return {"trouble": "the settings file can't be read"}
    return {"ceilings": msgspec.to_builtins(owner.ceilings), "unlocked": msgspec.to_builtins(owner.unlocked)}


def ledger_facts(path: Path, clock: Clock, within_s: float) -> dict[str, Any]:
    """Counts and states of a ledger. Nothing in it is changed, and no file is made. Never raises."""
    facts: dict[str, Any] = {"revision of this program": HEAD}
    try:
        facts["bytes"] = path.stat().st_size
        with closing(connect(path)) as connection:
            _look_through(connection, facts, clock, within_s)
    except (OSError, sqlite3.Error, LedgerError, ValueError) as error:
        facts["trouble"] = getattr(error, "sqlite_errorname", type(error).__name__)
    return facts


def _look_through(connection: sqlite3.Connection, facts: dict[str, Any], clock: Clock, within_s: float) -> None:
    until_s = clock.now() + within_s
    connection.set_progress_handler(lambda: int(clock.now() > until_s), 10_000)
    (revision,) = connection.execute("SELECT version_num FROM alembic_version").fetchone()
    facts["revision"] = revision if re.fullmatch(r"\d{4}", str(revision)) else "none of this program's"
    facts["supply"] = _supply(connection)
    counts = facts["rows"] = dict[str, int]()
    try:
        for table in sorted(Row.metadata.tables):
            (counts[table],) = connection.execute(f'SELECT count(*) FROM "{table}"').fetchone()
        found = connection.execute("PRAGMA integrity_check").fetchall()
        facts["sound"] = "yes" if found == [("ok",)] else f"no: {len(found)} findings"
        facts["rows that point to nothing"] = len(connection.execute("PRAGMA foreign_key_check").fetchall())
    except sqlite3.OperationalError:
        facts["sound"] = f"not known: not through within {within_s:g} s"


def _supply(connection: sqlite3.Connection) -> dict[str, str]:
    """Of the supply of the last run."""
    last = connection.execute("SELECT dialect, identity FROM run ORDER BY started_utc DESC, id DESC LIMIT 1").fetchone()
    if last is None:
        return {}
    dialect, identity = (str(one) for one in last)
    return {"dialect": dialect if dialect in _own_dialects() else "another", "firmware": firmware(identity)}


def _own_dialects() -> set[str]:
    from drivers.dialect import shipped, shipped_names

    return {shipped(name).name for name in shipped_names()}


def firmware(identity: str) -> str:
    """The fourth field of an answer to *IDN?, where it looks like a version. Source: IEEE 488.2, 10.14."""
    fields = [field.strip() for field in identity.split(",")]
    told = fields[3] if len(fields) == 4 else ""
    return told if _FIRMWARE.fullmatch(told) else "not told"


def without_addresses(text: str) -> str:
    """A log as it may be given away: what looks like an address is a star."""
    return _ADDRESS.sub("*", text)


def _json(facts: dict[str, Any]) -> str:
    return json.dumps(facts, indent=2, ensure_ascii=False) + "\n"
