"""What a search looks through, and the index over it. What only SQLite has is here and in `connection`.

The text of a job is its words, without case and accents, a space before each and a bar between two fields. A search is
words too: each, as far as it is typed, is the beginning of a word of the text, and what may be a plural is looked for
as its singular, which begins both. What is typed without a space, "BP-04", is words in a row. FTS5 splits this text at
the same places, so that the index and LIKE find the same.
"""

import sqlite3
import unicodedata
from collections.abc import Collection, Iterable
from contextlib import closing
from functools import cache
from pathlib import Path
from typing import Any

from sqlalchemy import ColumnElement, Select, bindparam, select, text, update
from sqlalchemy.exc import DatabaseError
from sqlalchemy.orm import Session

from benchlog.ledger.connection import WRITING, connect, open_engine
from benchlog.ledger.schema import (
    ChargeRow,
    EditRow,
    EntryRow,
    FileRow,
    FindingRow,
    ItemRow,
    JobRow,
    LotRow,
    MotorRow,
    PartRow,
    UnitRow,
)

INDEX = "job_text"
INDEX_SQL = (
    f"CREATE VIRTUAL TABLE {INDEX} USING fts5"
    "(searched, content='job', content_rowid='id', tokenize='ascii', prefix='1 2 3')"
)
"""No trigger keeps it: reindex() does, in the job's own transaction. `ascii`: all but A-z and 0-9 of ASCII divides."""

STALE, PLAIN, INDEXED = 0, 1, 2
"""SQLite's user_version of a ledger: texts of another making; texts of this one, no index that holds; both hold."""

MOST_TYPED, MOST_WORDS, LONGEST_WORD = 4096, 32, 64
"""Characters and words of a search that count. A word is looked for by its first characters."""

_BAR = " ¶"  # to Python no letter, to the index a word: no words in a row across two fields
_LETTERS = {"ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "æ": "ae", "œ": "oe", "ı": "i"}
"""Letters that Unicode does not take apart into a plain one and a mark."""
_AT_ONCE = 500
_PLURALS = (("ss", 4, 0), ("ies", 7, 3), ("ches", 6, 2), ("shes", 6, 2), ("xes", 5, 2), ("sses", 6, 2), ("s", 4, 1))
"""Endings, letters from which on they count, and how many of them go; the first that fits."""


class _Plain(dict[int, str]):
    """By code point: what a character is compared as. A space where it is neither letter nor digit."""

    def __missing__(self, code: int) -> str:
        found = chr(code)
        while (apart := self._apart(found)) != found:
            found = apart
        self[code] = "".join(one if one.isalnum() else " " for one in found)
        return self[code]

    @staticmethod
    def _apart(found: str) -> str:
        letters = unicodedata.normalize("NFKD", found.casefold())
        return "".join(_LETTERS.get(one, one) for one in letters if not unicodedata.combining(one))


_PLAIN = _Plain()


def words_of(text: str) -> list[str]:
    """The words of a text as they are compared: "Lüfter" and "LUFTER" are the same."""
    return text.translate(_PLAIN).split()


def searched(fields: Iterable[str]) -> str:
    """What a job with these fields is found by."""
    said = dict.fromkeys(" ".join(words) for field in fields if (words := words_of(field)))
    return " " + f"{_BAR} ".join(said)


def phrases_of(typed: str) -> list[str]:
    """What is looked for: words in a row, of which the last may go on. All must be found."""
    phrases: dict[str, None] = {}
    left = MOST_WORDS
    for chunk in typed[:MOST_TYPED].split():
        words = words_of(chunk)[:left]
        cut = next((n for n, word in enumerate(words) if len(word) >= LONGEST_WORD), len(words))
        if row := [*words[:cut], *(word[:LONGEST_WORD] for word in words[cut : cut + 1])]:
            phrases[" ".join([*row[:-1], _singular(row[-1])])] = None
            left -= len(row)
    return list(phrases)


def _singular(word: str) -> str:
    """Without what makes it a plural, as far as its letters tell: what is left begins both."""
    if not word.isalpha():
        return word
    return next(
        (word[: len(word) - cut] for ending, least, cut in _PLURALS if len(word) >= least and word.endswith(ending)),
        word,
    )


def matches(phrases: Collection[str]) -> list[ColumnElement[bool]]:
    """Conditions on a job that hold where its text has all of these."""
    return [JobRow.searched.like(f"% {phrase}%") for phrase in phrases]


def match(phrases: Collection[str]) -> str:
    """The same, as the index is asked."""
    return " AND ".join(f'"{phrase}" *' for phrase in phrases)


_SOURCES: tuple[Select[*tuple[Any, ...]], ...] = (
    select(
        JobRow.id,
        *(JobRow.tag, JobRow.number, ItemRow.kind, ItemRow.make, ItemRow.model, ItemRow.serial, MotorRow.note),
        *(JobRow.complaint, JobRow.owner, JobRow.contact, JobRow.who, JobRow.opened_before, JobRow.pumped),
        *(JobRow.waiting_for, JobRow.cause, JobRow.work_done, JobRow.method, JobRow.prognosis, JobRow.advice),
        *(JobRow.result, JobRow.last_outcome),
    )
    .join(ItemRow, ItemRow.id == JobRow.item_id)
    .join(MotorRow, MotorRow.id == JobRow.motor_id)
    .where(JobRow.id.in_(bindparam("jobs", expanding=True))),
    *(
        wanted.where(row.job_id.in_(bindparam("jobs", expanding=True))).order_by(row.id)
        for row, wanted in (
            (EntryRow, select(EntryRow.job_id, EntryRow.text, EntryRow.who)),
            (
                FindingRow,
                select(
                    *(FindingRow.job_id, FindingRow.part, FindingRow.marking, FindingRow.place),
                    *(FindingRow.purpose, FindingRow.value, FindingRow.who),
                ),
            ),
            (
                ChargeRow,
                select(ChargeRow.job_id, ChargeRow.text, PartRow.name, PartRow.number).outerjoin(
                    PartRow, PartRow.id == ChargeRow.part_id
                ),
            ),
            (FileRow, select(FileRow.job_id, FileRow.name, FileRow.caption)),
            (EditRow, select(EditRow.job_id, EditRow.new).where(EditRow.run_id.is_not(None))),
            (UnitRow, select(UnitRow.job_id, UnitRow.serial)),
        )
    ),
    select(LotRow.job_id, LotRow.name, LotRow.operator, LotRow.leads, LotRow.fixture).where(
        LotRow.job_id.in_(bindparam("jobs", expanding=True))
    ),
)
"""All that a job is found by: its key, and fields. Of edits only what was said of a run: the others are in the job."""


def texts_of(session: Session, jobs: Collection[int]) -> dict[int, str]:
    """What these jobs are found by, from their rows as they are now."""
    fields: dict[int, list[str]] = {job: [] for job in jobs}
    for source in _SOURCES:
        for job, *found in session.execute(source, {"jobs": list(jobs)}):
            fields[job] += [str(one) for one in found if one]
    return {job: searched(said) for job, said in fields.items()}


def index_holds(session: Session) -> bool:
    """Whether the index may be asked."""
    return session.get_bind().dialect.name == "sqlite" and has_fts5() and _version(session) == INDEXED


def reindex(session: Session, job: int, old: str, new: str) -> None:
    """Keeps the index with a job whose text was `old`, or "" when it is new. A damaged index is given up, no more."""
    if not index_holds(session):
        return
    try:
        if old:
            say = text(f"INSERT INTO {INDEX} ({INDEX}, rowid, searched) VALUES ('delete', :job, :text)")
            session.execute(say, {"job": job, "text": old})
        session.execute(text(f"INSERT INTO {INDEX} (rowid, searched) VALUES (:job, :text)"), {"job": job, "text": new})
    except DatabaseError as error:
        if not _is_damage(error):
            raise
        give_up_index(session)


def give_up_index(session: Session) -> None:
    """From now on LIKE; the next opening makes the index anew."""
    session.execute(text(f"PRAGMA user_version = {PLAIN}"))


def search_holds(connection: sqlite3.Connection) -> bool:
    """Whether the texts and the index of a ledger are what this program makes, as far as a look at opening can tell."""
    (version,) = connection.execute("PRAGMA user_version").fetchone()
    if not has_fts5():
        return bool(version == PLAIN)
    if version != INDEXED or not connection.execute("SELECT 1 FROM sqlite_master WHERE name = ?", [INDEX]).fetchone():
        return False
    counts = f"SELECT (SELECT count(*) FROM {INDEX}_docsize), (SELECT count(*) FROM job)"
    indexed, jobs = connection.execute(counts).fetchone()
    return bool(indexed == jobs)


def make_search(path: Path) -> None:
    """The texts, where they are of another making, and the index, where this SQLite has it. In one transaction."""
    try:
        _make_in(path)
    except DatabaseError as error:
        if not _is_damage(error):
            raise
        with closing(connect(path)) as connection:
            _cut_out(connection)
        _make_in(path)


def _make_in(path: Path) -> None:
    engine = open_engine(path)
    try:
        with Session(engine.execution_options(**{WRITING: True})) as session, session.begin():
            _make(session)
    finally:
        engine.dispose()


def _cut_out(connection: sqlite3.Connection) -> None:
    # An index so damaged that SQLite can't open it can't be dropped either.
    connection.execute("BEGIN IMMEDIATE")
    connection.execute("PRAGMA writable_schema = ON")
    connection.execute("DELETE FROM sqlite_master WHERE name = ? AND sql = ?", [INDEX, INDEX_SQL])
    connection.execute("PRAGMA writable_schema = OFF")
    for part in ("data", "idx", "docsize", "config"):
        connection.execute(f"DROP TABLE IF EXISTS {INDEX}_{part}")
    connection.execute("COMMIT")


def _make(session: Session) -> None:
    if _version(session) not in (PLAIN, INDEXED):
        after = 0
        while jobs := session.scalars(
            select(JobRow.id).where(JobRow.id > after).order_by(JobRow.id).limit(_AT_ONCE)
        ).all():
            made = [{"job": job, "made": made} for job, made in texts_of(session, jobs).items()]
            session.connection().execute(
                update(JobRow).where(JobRow.id == bindparam("job")).values(searched=bindparam("made")), made
            )
            after = jobs[-1]
    if has_fts5():
        session.execute(text(f"DROP TABLE IF EXISTS {INDEX}"))
        session.execute(text(INDEX_SQL))
        session.execute(text(f"INSERT INTO {INDEX} ({INDEX}) VALUES ('rebuild')"))
    session.execute(text(f"PRAGMA user_version = {INDEXED if has_fts5() else PLAIN}"))


@cache
def has_fts5() -> bool:
    """Whether this SQLite has the index at all."""
    with closing(sqlite3.connect(":memory:")) as connection:
        return connection.execute("SELECT 1 FROM pragma_module_list WHERE name = 'fts5'").fetchone() is not None


def _version(session: Session) -> int:
    return int(session.execute(text("PRAGMA user_version")).scalar_one())


def _is_damage(error: DatabaseError) -> bool:
    # FTS5 says of a head that it does not know no more than "error".
    code = getattr(error.orig, "sqlite_errorcode", 0) or 0
    return code & 0xFF in (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_ERROR)
