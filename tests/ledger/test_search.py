"""What a job is found by: the same with the index and without, whatever is typed, and after whatever damage."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import select, text, update

from benchlog.clock import VirtualClock
from benchlog.errors import LedgerDamaged
from benchlog.ledger import search
from benchlog.ledger.costs import charge_other
from benchlog.ledger.finding_jobs import find_jobs
from benchlog.ledger.findings import add_finding
from benchlog.ledger.schema import JobRow
from benchlog.ledger.search import INDEX, MOST_WORDS, match, matches, phrases_of, reindex, searched, words_of
from benchlog.ledger.store import Ledger
from benchlog.ledger.wanted import Wanted
from benchlog.records import Entry, Item, Stage
from tests.ledger.benches import BILGE_PUMP, CABIN_FAN, MOTOR

pytestmark = pytest.mark.skipif(not search.has_fts5(), reason="this SQLite has no index to compare with")

ALPHABET = st.sampled_from("ab1AB.-_%\"'*^ :(){}\n\t\x00ÄäßøŁ²½ﬁ™漢日한İıǅ\u0301\u200d\u0940\U0001f6e5\xb6")
WORDS = st.text(st.one_of(ALPHABET, st.characters(codec="utf-8")), max_size=12)
FIELDS = st.lists(WORDS, max_size=4)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "workshop.ledger"


@pytest.fixture
def ledger(path: Path) -> Iterator[Ledger]:
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        yield ledger


@pytest.fixture(scope="module")
def rewritten() -> Iterator[Ledger]:
    """A ledger of four jobs whose texts a property test writes over."""
    with TemporaryDirectory() as folder, Ledger.open(Path(folder) / "a.ledger", clock=VirtualClock()) as ledger:
        for _ in range(4):
            new_job(ledger)
        yield ledger


def new_job(ledger: Ledger, complaint: str = "hums", item: Item = BILGE_PUMP) -> int:
    return ledger.new_job(item=item, motor=MOTOR, complaint=complaint, load_state="dry").id


def found(ledger: Ledger, typed: str) -> list[int]:
    return [job.id for job in find_jobs(ledger, Wanted(text=typed)).jobs]


def by_both(ledger: Ledger, typed: str) -> tuple[set[int], set[int]]:
    """Through the index, and by LIKE."""
    phrases = phrases_of(typed)
    with ledger.reading() as session:
        plain = set(session.scalars(select(JobRow.id).where(*matches(phrases))))
        if not phrases:
            return plain, plain
        asked = text(f"SELECT rowid FROM {INDEX} WHERE {INDEX} MATCH :match")
        return set(session.scalars(asked, {"match": match(phrases)})), plain


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(jobs=st.lists(FIELDS, min_size=4, max_size=4), typed=WORDS, cut=st.integers(0, 12))
def test_the_index_and_like_give_the_same(rewritten: Ledger, jobs: list[list[str]], typed: str, cut: int) -> None:
    with rewritten.writing() as session:
        for row, fields in zip(session.scalars(select(JobRow).order_by(JobRow.id)), jobs, strict=True):
            new = searched([str(row.id), *fields])
            reindex(session, row.id, row.searched, new)
            row.searched = new
    for asked in (typed, *(field[:cut] for field in jobs[0]), " ".join(jobs[1])):
        indexed, plain = by_both(rewritten, asked)
        assert indexed == plain
    # And what is in a job is found by it, as far as it is typed.
    for fields, job in zip(jobs, range(1, 5), strict=True):
        for field in fields:
            assert job in by_both(rewritten, field)[1]
    with rewritten.reading() as session:
        session.execute(text(f"SELECT count(*) FROM {INDEX}"))


@given(WORDS)
def test_words_stay_the_same_when_they_are_taken_apart_again(typed: str) -> None:
    words = words_of(typed)
    assert words_of(" ".join(words)) == words
    assert all(word.isalnum() for word in words)


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("LÜFTER", ["lufter"]),
        ("Lu\u0308fter", ["lufter"]),
        ("Straße", ["strasse"]),
        ("Ankersjø, Łódź", ["ankersjo", "lodz"]),
        ("BP-17/a", ["bp", "17", "a"]),
        ("½ hp™", ["1", "2", "hptm"]),
        ("%_'\"*", []),
    ],
)
def test_words_know_no_case_no_accent_and_no_mark(typed: str, words: list[str]) -> None:
    assert words_of(typed) == words


@pytest.mark.parametrize(
    ("typed", "numbers"),
    [
        ("pumps", [2, 1]),
        ("PUMPS", [2, 1]),
        ("hand-pumps", [2]),
        ("brass", [3]),
        ("gas", [4]),
        ("SN-400s", [5]),
        ("hums bilge-pumps", [1]),
        ("brushes", [8]),
        ("batteries", [8]),
        ("boxes", [8]),
        ("series", [9]),
    ],
)
def test_a_plural_finds_its_singular(ledger: Ledger, typed: str, numbers: list[int]) -> None:
    said_of = ("bilge pump hums", "hand pumps", "brass, not bras", "gas", "SN-400S", "SN-400", "ga, pum, bra")
    for said in (*said_of, "a brush, a box, a battery", "in series, no serial"):
        new_job(ledger, said, Item(kind="anchor light"))
    assert found(ledger, typed) == numbers
    indexed, plain = by_both(ledger, typed)
    assert indexed == plain == set(numbers)


def test_what_is_typed_without_a_space_is_words_in_a_row_of_one_field(ledger: Ledger) -> None:
    new_job(ledger, "AB-12", CABIN_FAN)
    new_job(ledger, "12 then AB", CABIN_FAN)
    new_job(ledger, "12", Item(kind="hatch", serial="AB"))
    assert found(ledger, "ab-12") == found(ledger, "ab-1") == [1]
    assert found(ledger, "ab 12") == [3, 2, 1]


def test_a_job_is_found_by_all_that_hangs_on_it(ledger: Ledger) -> None:
    job = new_job(ledger)
    new_job(ledger)
    ledger.add_entry(
        job, Entry(utc="2026-01-01T00:00:00.000Z", stage=Stage.FREE, text="soaked in vinegar", who="Bosse")
    )
    add_finding(ledger, job, part="resistor", marking="4R7", place="beside the plug", purpose="limits the LED")
    charge_other(ledger, job, "harbour launch", 1250)
    for typed in ("vinegar", "bosse", "4r7", "limits led", "launch", "h-0001", "vin res lau"):
        assert found(ledger, typed) == [job], typed


def test_half_a_million_characters_are_kept_and_found_and_can_be_typed(ledger: Ledger) -> None:
    told = "seized " + "Ä" * 250_000 + " " + "ab " * 83_000 + "zebra"
    job = new_job(ledger, told)
    assert ledger.job(job).complaint == told
    assert found(ledger, "zebra") == found(ledger, "Ä" * 500) == [job]
    assert by_both(ledger, "a" * 70) == ({job}, {job})
    assert found(ledger, "zebra " * 80_000) == found(ledger, "ab " * 170_000) == [job]
    assert found(ledger, "x" * 500_000) == []
    assert sum(len(phrase.split()) for phrase in phrases_of("a-b " * 500 + "c" * 9000)) <= MOST_WORDS


def test_a_change_takes_the_old_words_out_of_the_index(ledger: Ledger, path: Path) -> None:
    job = new_job(ledger, "walrus")
    with ledger.writing() as session:
        row = session.get_one(JobRow, job)
        reindex(session, job, row.searched, " otter")
        row.searched = " otter"
    assert by_both(ledger, "walrus") == (set(), set())
    assert by_both(ledger, "ott") == ({job}, {job})
    with closing(sqlite3.connect(path)) as connection:  # rank 1: compared with the texts. Source: sqlite.org/fts5, 6.4
        connection.execute(f"INSERT INTO {INDEX} ({INDEX}, rank) VALUES ('integrity-check', 1)")


@pytest.mark.parametrize(
    "spoil",
    [
        f"DROP TABLE {INDEX}",
        f"INSERT INTO {INDEX} ({INDEX}) VALUES ('delete-all')",
        "PRAGMA user_version = 0",
        "PRAGMA user_version = 1",
        "PRAGMA user_version = 77",
    ],
)
def test_an_index_that_is_missing_or_does_not_hold_is_made_anew_at_opening(path: Path, spoil: str) -> None:
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        job = new_job(ledger, "walrus")
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute(spoil)
    with Ledger.open(path) as ledger:
        assert by_both(ledger, "walr") == ({job}, {job})


def test_texts_of_an_earlier_making_are_made_anew_at_opening(path: Path) -> None:
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        for _ in range(3):
            new_job(ledger, "walrus")
        with ledger.writing() as session:
            session.execute(update(JobRow).values(searched="H-0001\nbilge"))
            session.execute(text("PRAGMA user_version = 0"))
    with Ledger.open(path) as ledger:
        assert by_both(ledger, "walr") == ({1, 2, 3}, {1, 2, 3})


def test_a_stale_index_never_shows_what_is_not_there(ledger: Ledger) -> None:
    job = new_job(ledger, "walrus")
    with ledger.writing() as session:
        session.execute(update(JobRow).values(searched=" otter"))
    assert found(ledger, "walrus") == []
    assert job  # it is there


@pytest.mark.parametrize("writing_first", [False, True])
@pytest.mark.parametrize(
    "spoil", [f"UPDATE {INDEX}_data SET block = x'ffffffffff'", f"UPDATE {INDEX}_config SET v = 0 WHERE k = 'version'"]
)
def test_a_damaged_index_is_given_up_and_neither_a_search_nor_a_write_fails(
    path: Path, spoil: str, writing_first: bool
) -> None:
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        jobs = {new_job(ledger, "walrus")}
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute(spoil)
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        if writing_first:
            jobs.add(new_job(ledger, "walrus again"))
        assert set(found(ledger, "walr")) == set(found(ledger, "walr")) == jobs
        jobs.add(new_job(ledger, "walrus again"))
        assert set(found(ledger, "walr")) == jobs
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        assert by_both(ledger, "walr") == (jobs, jobs)


def test_without_an_index_all_is_found_all_the_same(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        first = new_job(ledger, "walrus")
    monkeypatch.setattr(search, "has_fts5", lambda: False)
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        second = new_job(ledger, "walrus")
        assert found(ledger, "walr") == [second, first]
    monkeypatch.undo()
    with Ledger.open(path, clock=VirtualClock()) as ledger:
        assert by_both(ledger, "walr") == ({first, second}, {first, second})


@pytest.mark.parametrize(
    "made",
    [
        "CREATE VIRTUAL TABLE other USING fts5(searched)",
        f"DROP TABLE {INDEX}; CREATE VIRTUAL TABLE {INDEX} USING fts5(searched)",
    ],
)
def test_any_other_virtual_table_is_refused(path: Path, made: str) -> None:
    with Ledger.open(path):
        pass
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(made)
    with pytest.raises(LedgerDamaged, match="virtual table"):
        Ledger.open(path)
