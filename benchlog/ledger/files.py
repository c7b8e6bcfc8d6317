"""Photos and files of a job. The original lies beside the ledger, under its SHA-256, and never changes.

`harbour.db.files/ab/abcd….jpg` for a ledger `harbour.db`. It is on disk before the ledger says so: what is left by a
crash in between is a file that nobody asks for.
"""

import hashlib
import os
import re
import uuid
from pathlib import Path

import msgspec
from sqlalchemy import select

from benchlog.errors import LedgerDamaged, Refused
from benchlog.ledger.jobs import job_row, mark_changed
from benchlog.ledger.opening import sync_folder
from benchlog.ledger.schema import FileRow, JobRow
from benchlog.ledger.sql_errors import translated
from benchlog.ledger.store import Ledger
from benchlog.pictures.picture import Broken
from benchlog.pictures.recognise import EXTENSIONS, stripped
from benchlog.pictures.taking import Taken, take, take_file
from benchlog.records import Attached

_SHA256 = re.compile(r"[0-9a-f]{64}", re.ASCII)
_PIECE = 1 << 20
_MOST_WHO, _MOST_CAPTION = 80, 500


class Missing(msgspec.Struct, frozen=True, kw_only=True):
    """A file whose original is not what was attached. `what`: "is gone", "was changed" or "can't be read (why)"."""

    job: int
    file: Attached
    what: str


def attach(
    ledger: Ledger, job_id: int, source: Path | bytes | Taken, name: str = "", *, caption: str = "", who: str = ""
) -> Attached:
    """Keeps a file with a job, open or closed. The same content with the same caption is kept once a job.

    `name` is needed with bytes. Takes its time (the disk, a large picture): never in a window's own thread while an
    output may be on. Raises Refused where there is no such job and for what is not kept; LedgerError.
    """
    caption, who = _line(caption, "the caption", _MOST_CAPTION), _line(who, "the name", _MOST_WHO)
    if isinstance(source, Path):
        source = take_file(source)
    elif isinstance(source, bytes):
        source = take(source, name)
    with ledger.reading() as session:
        if session.get(JobRow, job_id) is None:
            raise Refused(f"there is no job with the key {job_id}")
    _keep(ledger, source)
    with ledger.writing() as session:
        same = select(FileRow).filter_by(job_id=job_id, sha256=source.sha256, caption=caption).order_by(FileRow.id)
        row = session.scalars(same.limit(1)).first()
        if row is None:
            row = FileRow(
                job_id=job_id,
                utc=ledger.clock.utc(),
                who=who,
                sha256=source.sha256,
                name=source.name,
                media_type=source.media_type,
                size=len(source.data),
                width=source.width,
                height=source.height,
                caption=caption,
                thumbnail=source.thumbnail,
            )
            session.add(row)
            mark_changed(session, job_row(session, job_id), row.utc)
        return _attached(ledger, row)


def files_of(ledger: Ledger, job_id: int) -> list[Attached]:
    """With their small pictures, first attached first. Raises LedgerError."""
    with ledger.reading() as session:
        rows = session.scalars(select(FileRow).where(FileRow.job_id == job_id).order_by(FileRow.id))
        return [_attached(ledger, row) for row in rows]


def original(ledger: Ledger, file_id: int) -> Path:
    """Where the original is, after all of it was read and found as it was attached.

    Raises Refused where there is no such file, LedgerDamaged where it is gone or was changed; LedgerError.
    """
    file = _file(ledger, file_id)
    path = _place(ledger, file.sha256, file.media_type)
    if what := _trouble(path, file, read=True):
        raise LedgerDamaged(path, f"the original of {file.name} {what}")
    return path


def export(ledger: Ledger, file_id: int, target: Path) -> bool:
    """Writes a copy to `target`, which must not be there yet. A picture's has no place, time or device in it any more.

    False where the file is no picture, and so was copied as it is. Raises as original() does, and Refused where
    `target` can't be written.
    """
    file = _file(ledger, file_id)
    path = _place(ledger, file.sha256, file.media_type)
    with translated(path):
        data = path.read_bytes()
    if hashlib.sha256(data).hexdigest() != file.sha256:
        raise LedgerDamaged(path, f"the original of {file.name} was changed")
    try:
        freed = stripped(data, file.media_type)
    except Broken as error:
        raise LedgerDamaged(ledger.path, f"file {file_id} is said to be {file.media_type}, and {error}") from error
    try:
        with target.open("xb") as written:
            try:
                written.write(data if freed is None else freed)
                written.flush()
                os.fsync(written.fileno())
            except BaseException:
                target.unlink(missing_ok=True)
                raise
    except FileExistsError as error:
        raise Refused(f"{target}: is there already, and stays as it is") from error
    except OSError as error:
        raise Refused(f"{target}: can't be written ({error.strerror})") from error
    return freed is not None


def missing_originals(ledger: Ledger, *, read: bool = False) -> list[Missing]:
    """Files whose original is gone or has another size; with `read` also those with other content, which takes long.

    Raises LedgerError.
    """
    columns = [column for column in FileRow.__table__.columns if column.name != "thumbnail"]
    found = []
    with ledger.reading() as session:
        rows = session.execute(select(*columns).order_by(FileRow.id)).all()
    for row in rows:
        file = _attached(ledger, row)
        if what := _trouble(_place(ledger, file.sha256, file.media_type), file, read=read):
            found.append(Missing(job=row.job_id, file=file, what=what))
    return found


def folder_of(ledger_path: Path) -> Path:
    """Where a ledger's originals are."""
    return ledger_path.with_name(ledger_path.name + ".files")


def _keep(ledger: Ledger, taken: Taken) -> None:
    path = _place(ledger, taken.sha256, taken.media_type)
    with translated(path):
        if path.is_file() and _digest(path) == taken.sha256:
            return
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        new = path.with_name(f".{path.name}.{uuid.uuid4().hex}.new")
        try:
            with os.fdopen(
                os.open(new, os.O_CREAT | os.O_EXCL | os.O_WRONLY | getattr(os, "O_BINARY", 0), 0o600), "wb"
            ) as file:
                file.write(taken.data)
                file.flush()
                os.fsync(file.fileno())
            # Over one of the same name that is not what its name says.
            new.replace(path)
        finally:
            new.unlink(missing_ok=True)
        for folder in (path.parent, path.parent.parent, ledger.path.parent):
            sync_folder(folder)


def _place(ledger: Ledger, sha256: str, media_type: str) -> Path:
    # A ledger from elsewhere may say anything, also "../..".
    if not _SHA256.fullmatch(sha256) or media_type not in EXTENSIONS:
        raise LedgerDamaged(ledger.path, "it has a file with a name that is never given")
    return folder_of(ledger.path) / sha256[:2] / (sha256 + EXTENSIONS[media_type])


def _trouble(path: Path, file: Attached, *, read: bool) -> str:
    try:
        if path.stat().st_size != file.size or (read and _digest(path) != file.sha256):
            return "was changed"
    except FileNotFoundError:
        return "is gone"
    except OSError as error:
        return f"can't be read ({error.strerror})"
    return ""


def _digest(path: Path) -> str:
    digest = hashlib.sha256()
    with path.open("rb") as file:
        while piece := file.read(_PIECE):
            digest.update(piece)
    return digest.hexdigest()


def _file(ledger: Ledger, file_id: int) -> Attached:
    with ledger.reading() as session:
        row = session.get(FileRow, file_id)
        if row is None:
            raise Refused(f"there is no file {file_id}")
        return _attached(ledger, row)


def _attached(ledger: Ledger, row: object) -> Attached:
    fields = {name: getattr(row, name, None) for name in Attached.__struct_fields__}
    try:
        return msgspec.convert(fields, Attached)
    except (msgspec.ValidationError, TypeError) as error:
        raise LedgerDamaged(ledger.path, f"file {fields['id']} can't be read ({error})") from error


def _line(text: str, name: str, at_most: int) -> str:
    text = " ".join(text.split())
    if len(text) > at_most:
        raise Refused(f"{name}: {len(text)} characters are more than {at_most}")
    if not text.isprintable():
        raise Refused(f"{name}: has characters that can't be shown")
    return text
