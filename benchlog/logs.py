"""What went wrong, where it can be found afterwards: warnings and faults of the window, the bench process, the rescue.

Only this program's own words and numbers get into the file, so that it can be given away: any other argument of a
message stands as its kind and length, an error as its class, a traceback as its places. What a customer said, what a
label says, an address and a path are none of them.
"""

import contextlib
import enum
import logging
import os
import platform
import sys
import threading
from collections.abc import Iterator, Mapping
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType

from benchlog.clock import utc_text

FILES, FILE_BYTES = 5, 1_000_000
"""So many files of so many bytes at the most, the one that is being written among them."""
LONGEST = 8_000
"""Characters of one entry: a fault that repeats itself in its own traceback does not fill a file."""
NAME, OLDER = "benchlog.log", "benchlog-*.log"
_OWN = ("benchlog", "drivers", "ui", "demo_db", "migrations")
_PLACES = 20


def log_folder() -> Path:
    """Where the files are."""
    import platformdirs  # only once there is something to be written

    return Path(platformdirs.user_log_dir("benchlog", appauthor=False))


def keep_log(part: str, folder: Path | None = None) -> "LogFile":
    """From now on this process's warnings go into the file as well, and errors that nobody caught.

    `part`: which process of the program this is. What is written to the terminal stays as it was.
    """
    file = LogFile(part, folder)
    root = logging.getLogger()
    root.addHandler(file)
    root.setLevel(logging.WARNING)
    shown, shown_of_thread = sys.excepthook, threading.excepthook

    def uncaught(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        file.handle(_fault(error))
        shown(kind, error, trace)

    def uncaught_in_thread(what: threading.ExceptHookArgs) -> None:
        if what.exc_value is not None:
            file.handle(_fault(what.exc_value))
        shown_of_thread(what)

    sys.excepthook, threading.excepthook = uncaught, uncaught_in_thread
    return file


def _fault(error: BaseException) -> logging.LogRecord:
    trace = (type(error), error, error.__traceback__)
    return logging.LogRecord("benchlog.logs", logging.CRITICAL, "", 0, "a fault that nobody caught", None, trace)


class LogFile(logging.Handler):
    """Opened for each entry and closed again: several processes write to it, and entries are rare.

    Nothing that goes wrong in here is told to anybody: a full disk must not end a run.
    """

    def __init__(self, part: str, folder: Path | None = None) -> None:
        super().__init__(logging.WARNING)
        self._part, self._folder = part, folder

    def emit(self, record: logging.LogRecord) -> None:
        with contextlib.suppress(Exception):
            self._write(f"{said_by(record, self._part)}\n".encode("utf-8", "replace"))

    def _write(self, entry: bytes) -> None:
        folder = self._folder or log_folder()
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
        path = folder / NAME
        size = path.stat().st_size if path.exists() else 0
        if size and size + len(entry) > FILE_BYTES:
            _set_aside(path)
            size = 0
        file = os.open(path, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o600)
        try:
            os.write(file, entry if size else f"{heading()}\n".encode() + entry)
        finally:
            os.close(file)


def _set_aside(path: Path) -> None:
    # A name of its own, so that of two processes that do this at once none replaces the other's.
    stamp = datetime.now(UTC).strftime("%Y%m%dT%H%M%S%f")
    path.rename(path.with_name(f"benchlog-{stamp}-{os.getpid()}.log"))
    for older in sorted(path.parent.glob(OLDER))[: 1 - FILES]:
        older.unlink(missing_ok=True)


def log_files(folder: Path | None = None) -> list[Path]:
    """Those that are there, oldest first."""
    folder = folder or log_folder()
    newest = folder / NAME
    return [*sorted(folder.glob(OLDER)), *([newest] if newest.exists() else [])]


def heading() -> str:
    """What a file begins with."""
    from importlib.metadata import PackageNotFoundError, version

    told = [f"Python {platform.python_version()}", f"{platform.system()} {platform.release()} {platform.machine()}"]
    for name in ("pyside6-essentials", "pyvisa", "pyvisa-py", "sqlalchemy"):
        with contextlib.suppress(PackageNotFoundError):
            told.append(f"{name} {version(name)}")
    return f"# benchlog {version('benchlog')}, {', '.join(told)}; times are UTC"


def said_by(record: logging.LogRecord, part: str) -> str:
    """An entry: when, who, how bad, and what of the message is this program's own."""
    utc = utc_text(datetime.fromtimestamp(record.created, UTC))
    lines = [f"{utc} {part}[{record.process}] {record.levelname} {record.name}: {_message(record)}"]
    if record.exc_info and record.exc_info[1] is not None:
        lines += places(record.exc_info[1])
    return "\n".join(lines)[:LONGEST]


def _message(record: logging.LogRecord) -> str:
    own = record.name.partition(".")[0] in _OWN
    if not isinstance(record.msg, str) or not (own or record.args):
        return f"({type(record.msg).__name__})"  # a library that puts its message together itself
    arguments = record.args or ()
    masked: object = (
        {key: _word(value) for key, value in arguments.items()}
        if isinstance(arguments, Mapping)
        else tuple(_word(value) for value in arguments)
    )
    try:
        return record.msg % masked if arguments else record.msg
    except (TypeError, ValueError, KeyError):
        return record.msg


def _word(value: object) -> object:
    match value:
        case bool() | int() | float() | None:
            return value
        case enum.Enum():
            return value.name
        case BaseException():
            return _class(value)
        case str() | bytes():
            return f"<{type(value).__name__}, {len(value)}>"
        case _:
            return f"<{type(value).__name__}>"


def places(error: BaseException) -> Iterator[str]:
    """The classes of an error and of those behind it, and where each was raised: file, line and function."""
    import traceback

    seen: set[int] = set()
    behind: BaseException | None = error
    while behind is not None and id(behind) not in seen:
        seen.add(id(behind))
        yield f"  {_class(behind)}"
        for frame, number in list(traceback.walk_tb(behind.__traceback__))[-_PLACES:]:
            yield f"    {_short(frame.f_code.co_filename)}:{number} in {frame.f_code.co_name}"
        behind = behind.__cause__ or (None if behind.__suppress_context__ else behind.__context__)


def _class(error: BaseException) -> str:
    number = getattr(error, "errno", None)
    code = getattr(error, "sqlite_errorname", None)
    beside = f" {number}" if isinstance(number, int) else f" {code}" if isinstance(code, str) else ""
    return f"{type(error).__module__}.{type(error).__qualname__}{beside}".removeprefix("builtins.")


def _short(file: str) -> str:
    """Without the folders that it is installed in: those may have the user's name."""
    parts = Path(file).parts
    for index in range(len(parts) - 1, -1, -1):
        if parts[index] == "site-packages":
            return "/".join(parts[index + 1 :])
        if parts[index] in _OWN and index < len(parts) - 1:
            return "/".join(parts[index:])
    return parts[-1] if parts else "?"
