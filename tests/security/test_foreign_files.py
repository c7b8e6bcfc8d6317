"""Journals, ledgers, settings and exports from elsewhere, through the functions and the command line."""

import contextlib
import csv
import os
import re
import sqlite3
import struct
import subprocess
import sys
import zlib
from contextlib import closing
from pathlib import Path

import msgspec
import pytest
from click.testing import CliRunner
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchlog.bench.journal import MAGIC, Begun, Happening, Sample, read_journal
from benchlog.cli.export import command as export
from benchlog.cli.jobs import command as jobs
from benchlog.cli.options import say
from benchlog.errors import JournalDamaged, LedgerDamaged, LedgerError, Refused
from benchlog.ledger.filing import file_journal, file_left_behind
from benchlog.ledger.run_record import read_rescue
from benchlog.ledger.store import Ledger
from benchlog.ledger.trace_codec import Coded, TraceDamaged, decode, encode
from benchlog.records import Closing, Event, EventKind, Item
from benchlog.settings import owner_settings
from drivers.foreign import inert
from tests.ledger.benches import (
    BEGAN,
    BILGE_PUMP,
    FREED,
    MOTOR,
    blocks,
    leave_journal,
    request,
    small_trace,
    write_journal,
)
from tests.security.test_foreign_text import HOSTILE

ESCAPES = "\x1b[2J\x1b]0;x\x07\u202e\u2066\r"
MB = 1 << 20


def block(payload: bytes) -> bytes:
    return struct.pack("<II", len(payload), zlib.crc32(payload)) + payload


HEAD = block(msgspec.msgpack.encode(Begun(request(), BEGAN, "benchlog")))


def journal_of(folder: Path, *payloads: bytes) -> Path:
    path = folder / "a.journal"
    path.write_bytes(MAGIC + HEAD + b"".join(block(payload) for payload in payloads))
    return path


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A ledger with one job and one run."""
    made = tmp_path / "workshop.ledger"
    with Ledger.open(made) as ledger:
        job = ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry").id
        file_journal(ledger, leave_journal(tmp_path, "a", job=job))
    return made


def sql(path: Path, *statements: str) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("PRAGMA ignore_check_constraints = ON")
        for statement in statements:
            connection.execute(statement)


@pytest.mark.parametrize(
    "sample",
    [
        ("s", 1 << 63, 0, 0.0, 0.0, 0.0, 0.0, 0),
        ("s", 0, -(1 << 63), 0.0, 0.0, 0.0, 0.0, 0),
        ("s", 0, 0, 0.0, 0.0, 0.0, 0.0, 256),
        ("s", 0, 0, 0.0, 0.0, 0.0, 0.0, -1),
        ("s", 0, 0, "=1+1", 0.0, 0.0, 0.0, 0),
    ],
)
def test_a_sample_that_no_run_writes_ends_a_journal_as_damage_does(tmp_path: Path, sample: tuple[object, ...]) -> None:
    good = msgspec.msgpack.encode(Sample(1, 2, 1.0, 1.0, 1.0, 1.0, 0))
    contents = read_journal(journal_of(tmp_path, good, msgspec.msgpack.encode(sample), good))
    assert len(contents.trace.sent) == 1


def test_an_ending_that_no_run_writes_blames_the_journal_and_not_the_ledger(path: Path) -> None:
    ended = blocks(request("run-2"), result=msgspec.structs.replace(FREED, kicks=-1))
    left = path.parent / "b.journal"
    left.write_bytes(MAGIC + b"".join(block(msgspec.msgpack.encode(one)) for one in ended))
    assert read_journal(left).ending is None
    with Ledger.open(path) as ledger:
        assert ledger.run(file_journal(ledger, left).run).result.outcome == "stopped"


@pytest.mark.parametrize(
    "payload",
    [
        msgspec.msgpack.encode(["s", 0, 0, 0.0, 0.0, 0.0, 0.0, 0])[:-1] + b"\x00" + b"\x91" * 100_000,
        b"\x99" + msgspec.msgpack.encode(["s", 0, 0, 0.0, 0.0, 0.0, 0.0, 0])[1:] + b"\x91" * 100_000 + b"\xc0",
        b"\x92\xa1e\x84\xa3t_s\x00\xa4kind\xa4note\xa4text\xa1\xff\xa6values\x80",
        b"\xdd\xff\xff\xff\xff",
        b"\xc6\xff\xff\xff\xff",
        b"",
    ],
    ids=["after", "nested", "not UTF-8", "long array", "long bytes", "nothing"],
)
def test_a_block_that_is_no_block_ends_a_journal(tmp_path: Path, payload: bytes) -> None:
    assert len(read_journal(journal_of(tmp_path, payload)).trace.sent) == 0


@settings(max_examples=200, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.binary(max_size=300), st.booleans(), st.booleans())
def test_any_bytes_are_a_journal_or_damaged(tmp_path: Path, data: bytes, framed: bool, headed: bool) -> None:
    path = tmp_path / "any.journal"
    path.write_bytes(MAGIC + HEAD * headed + (block(data) if framed else data))
    with contextlib.suppress(JournalDamaged):
        read_journal(path)


def test_a_journal_that_is_no_file_is_not_waited_for(tmp_path: Path) -> None:
    (tmp_path / "folder.journal").mkdir()
    with pytest.raises(JournalDamaged, match="not a file"):
        read_journal(tmp_path / "folder.journal")
    if hasattr(os, "mkfifo"):
        os.mkfifo(tmp_path / "pipe.journal")
        with pytest.raises(JournalDamaged, match="not a file"):
            read_journal(tmp_path / "pipe.journal")


def test_a_journals_words_are_kept_as_they_are_and_name_no_file(path: Path) -> None:
    victim = path.parent / "victim.journal"
    victim.write_bytes(b"kept")
    left = path.parent / "b.journal"
    said = [Begun(request("../victim", journal=str(victim)), BEGAN, "benchlog"), *blocks(request())[1:]]
    said.insert(1, Happening(Event(t_s=0.0, kind=EventKind.NOTE, text="=cmd|'x'!A1")))
    left.write_bytes(MAGIC + b"".join(block(msgspec.msgpack.encode(one)) for one in said))
    with Ledger.open(path) as ledger:
        filed = file_journal(ledger, left)
        assert ledger.events(filed.run)[0].text == "=cmd|'x'!A1"
    assert victim.read_bytes() == b"kept"
    assert not left.exists()


@settings(max_examples=200)
@given(st.binary(max_size=200), st.integers(-5, 5_000_000), st.integers(0, 200))
def test_any_bytes_are_a_trace_or_damaged(data: bytes, samples: int, at: int) -> None:
    good = encode(small_trace())
    for whole in (data, good.data[:at] + data, good.data[:at] + data + good.data[at + len(data) :]):
        for count in (samples, good.samples):
            with contextlib.suppress(TraceDamaged):
                decode(Coded(samples=count, format=1, checksum=zlib.crc32(whole), data=whole))


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="limits its own memory")
def test_a_column_that_unpacks_to_a_thousand_times_its_size_takes_no_room() -> None:
    bomb = "zlib.compress(bytes(1 << 30), 9)"
    program = (
        "import resource, zlib\n"
        "from benchlog.ledger.column_codec import ColumnDamaged, decode_column\n"
        f"import struct; data = {bomb}\n"
        "held = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss\n"
        "try: decode_column(struct.pack('<bBBI', 0, 0, 8, len(data)) + data, 0, 1000)\n"
        "except ColumnDamaged as error: print('damaged', resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - held)\n"
    ).replace("bytes(1 << 30)", "bytes(1 << 26)")
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, timeout=60, check=True)
    word, more_kb = done.stdout.split()
    assert word == "damaged"
    assert int(more_kb) < 16 * 1024


@pytest.mark.parametrize(
    ("before", "after"), [(b"-owner', 'closed')", b"-owner', 'closee')"), (b"closed_utc TEXT", b"closed_utc TEXX")]
)
def test_closing_a_job_whose_state_column_is_damaged_is_done_or_says_so(
    path: Path, before: bytes, after: bytes
) -> None:
    data = path.read_bytes()
    assert before in data
    path.write_bytes(data.replace(before, after))
    with Ledger.open(path) as ledger:
        if after.endswith(b"TEXX"):
            assert ledger.close_job(1, Closing(cause="", work_done="", prognosis="")).closed_utc is not None
            return
        with pytest.raises(LedgerDamaged, match="rules"):
            ledger.close_job(1, Closing(cause="", work_done="", prognosis=""))
        assert ledger.job(1).closed_utc is None


@pytest.mark.parametrize(
    "statement",
    [
        "CREATE TRIGGER sly AFTER UPDATE ON job BEGIN UPDATE run SET outcome = 'freed'; END",
        "CREATE VIEW sly AS SELECT * FROM job",
        "CREATE VIRTUAL TABLE sly USING fts5(x)",
        'CREATE VIEW "\x1b[2J\u202e" AS SELECT 1',
    ],
)
@pytest.mark.parametrize("revision", ["0001", "0002"])
def test_what_a_foreign_schema_would_do_is_not_done(path: Path, statement: str, revision: str) -> None:
    sql(path, statement, f"UPDATE alembic_version SET version_num = '{revision}'")
    before = path.read_bytes()
    with pytest.raises(LedgerDamaged, match="not this program's") as refused:
        Ledger.open(path)
    assert path.read_bytes() == before
    assert refused.value.what.isprintable()


@pytest.mark.parametrize(
    "statement",
    [
        f"UPDATE event SET \"values\" = '{'[' * 5000}'",
        'UPDATE event SET "values" = \'{"a":1e999}\'',
        "UPDATE event SET \"values\" = CAST(x'22ff22' AS TEXT)",
        'UPDATE event SET "values" = zeroblob(100)',
        "UPDATE event SET t_s = 'soon'",
        "UPDATE run SET outcome = '<b>freed</b>'",
        "UPDATE run SET kicks = 'many'",
        "UPDATE trace SET data = zeroblob(1000000)",
        "UPDATE trace SET samples = 1 << 62",
        "UPDATE trace SET format = 'x'",
        "UPDATE job SET state = x'00'",
    ],
)
def test_a_damaged_value_is_a_value_or_an_error_of_the_ledger(path: Path, statement: str) -> None:
    sql(path, statement)
    with Ledger.open(path) as ledger:
        for read in (ledger.jobs, lambda: ledger.runs(1), lambda: ledger.events(1), lambda: ledger.trace(1)):
            with contextlib.suppress(LedgerError):
                read()


def test_the_list_of_jobs_sends_a_terminal_nothing_that_it_obeys(path: Path) -> None:
    with Ledger.open(path) as ledger:
        item = Item(kind=f"cabin fan{ESCAPES}", model="Ærø")
        ledger.new_job(item=item, motor=MOTOR, complaint=f"hums{ESCAPES}\nstill", load_state="")
    for options in ([], ["--json"]):
        done = CliRunner().invoke(jobs, ["--ledger", str(path), *options])
        assert done.exit_code == 0
        lines = done.output.splitlines()
        assert len(lines) == 2
        assert all(line.isprintable() for line in lines)
    assert "Ærø" in CliRunner().invoke(jobs, ["--ledger", str(path)]).output


def test_an_export_never_goes_over_what_is_there(path: Path) -> None:
    before = path.read_bytes()
    done = CliRunner().invoke(export, ["1", "--ledger", str(path), "--output", str(path)])
    assert done.exit_code == 2
    assert "is there already" in done.output
    assert path.read_bytes() == before
    new = path.parent / "run.csv"
    assert CliRunner().invoke(export, ["1", "--ledger", str(path), "--output", str(new)]).exit_code == 0
    with new.open(newline="", encoding="utf-8") as file:
        head, *lines = list(csv.reader(file))
    # A spreadsheet takes a field that begins with = + - @, tab or CR for a formula (common practice, no source);
    # a number with its sign is none.
    assert len(lines) == len(small_trace().sent)
    assert all(name.replace("_", "").isalpha() for name in head)
    number = re.compile(r"(-?\d+(\.\d+)?(e-?\d+)?)?|CC|CV|unknown")
    assert all(number.fullmatch(field) for line in lines for field in line)


@pytest.mark.parametrize("run", ["99999999999999999999999", "0", "7"])
def test_a_run_that_no_ledger_has_is_refused_in_one_line(path: Path, run: str) -> None:
    done = CliRunner().invoke(export, [run, "--ledger", str(path)])
    assert done.exit_code == 2
    assert len(done.output.splitlines()) == 1


@settings(max_examples=100, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.text(alphabet=st.characters(codec="utf-8"), max_size=60)
    | st.sampled_from(["[ceilings]\nvolts = nan", "[ceilings]\nvolts = true"])
)
def test_any_short_text_is_settings_or_refused(tmp_path: Path, text: str) -> None:
    path = tmp_path / "settings.toml"
    path.write_text(text, encoding="utf-8")
    with contextlib.suppress(Refused):
        owner_settings(path)


@pytest.mark.parametrize("utc", ["0001-01-01T00:00:00+23:59", "9999-12-31T23:59:59-23:59", "yesterday", ""])
def test_a_run_that_began_outside_the_calendar_keeps_no_other_from_being_filed(
    path: Path, tmp_path: Path, utc: str
) -> None:
    folder = tmp_path / "left"
    folder.mkdir()
    write_journal(folder / "b.journal", blocks(request("b"), utc=utc))
    leave_journal(folder, "c")
    with Ledger.open(path) as ledger:
        assert len(file_left_behind(ledger, folder)) == 1
    assert (folder / "b.journal").exists()


@pytest.mark.parametrize("word", ["[" * 4_000, "{" * 4_000, "null", "\x00", '{"utc": 1}'])
def test_what_a_rescue_did_not_write_confirms_nothing(tmp_path: Path, word: str) -> None:
    record = tmp_path / "a.journal.rescue"
    record.write_text(word, encoding="utf-8")
    found = read_rescue(record)
    assert found is not None
    assert not found.confirmed_off


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE.keys())
def test_hostile_settings_are_refused_with_a_line_that_no_terminal_obeys(tmp_path: Path, text: str) -> None:
    file = tmp_path / "settings.toml"
    file.write_text(text, encoding="utf-8", errors="surrogatepass")
    with pytest.raises(Refused) as refused:
        owner_settings(file)
    assert str(refused.value) == inert(str(refused.value))


def test_what_the_terminal_says_of_a_run_is_nothing_that_it_obeys(capsys: pytest.CaptureFixture[str]) -> None:
    say(f"the supply reports: {ESCAPES}\nnext line")
    assert capsys.readouterr().out == f"the supply reports: {inert(ESCAPES)}\nnext line\n"
