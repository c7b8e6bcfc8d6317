"""A support bundle tells what the installation is, and nothing of anybody's jobs."""

import json
import sqlite3
import zipfile
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from benchlog.cli import main
from benchlog.ledger.connection import connect
from benchlog.ledger.opening import HEAD
from benchlog.ledger.schema import Row
from benchlog.ledger.store import Ledger
from benchlog.logs import NAME
from benchlog.records import Item, Motor
from benchlog.support import bundle, firmware, without_addresses
from ui.shown_on import screen_facts

MARK = "Zaunkoenig"


def write(tmp_path: Path, ledger: Path, **options: Any) -> dict[str, str]:
    """What a bundle holds, by the names in it."""
    path = tmp_path / "bundle.zip"
    (tmp_path / "logs").mkdir(exist_ok=True)
    options.setdefault("settings", tmp_path / "none.toml")
    bundle(path, ledger, logs=tmp_path / "logs", **options)
    with zipfile.ZipFile(path) as written:
        return {name: written.read(name).decode() for name in written.namelist()}


def mark_everything(path: Path) -> None:
    """A row in every table, with the word in every column that takes text or bytes, and for a revision as well."""
    with closing(connect(path, foreign_keys=False)) as connection:
        connection.execute("PRAGMA ignore_check_constraints = ON")
        for table in Row.metadata.sorted_tables:
            values = [
                MARK if column.type.python_type is str else MARK.encode() if column.type.python_type is bytes else 1
                for column in table.columns
            ]
            holes = ", ".join("?" * len(values))
            names = ", ".join(f'"{name}"' for name in table.columns.keys())  # noqa: SIM118
            connection.execute(f"INSERT INTO {table.name} ({names}) VALUES ({holes})", values)
        connection.execute("UPDATE alembic_version SET version_num = ?", (MARK,))


@pytest.fixture
def marked(tmp_path: Path) -> Path:
    path = tmp_path / f"{MARK}.db"
    Ledger.open(path).close()
    mark_everything(path)
    return path


def test_no_text_of_the_ledger_the_settings_or_a_name_of_a_file_is_in_it(marked: Path, tmp_path: Path) -> None:
    settings = tmp_path / f"{MARK}.toml"
    settings.write_text('[ceilings]\nvolts = 24.0\n[shop]\ncurrency = "Zaunk"\n', encoding="utf-8")
    parts = write(tmp_path, marked, settings=settings)
    whole = "".join([*parts, *parts.values()]) + (tmp_path / "bundle.zip").read_bytes().decode("latin-1")
    assert MARK[:5].lower() not in whole.lower()
    rows = json.loads(parts["ledger.json"])["rows"]
    assert rows == dict.fromkeys(Row.metadata.tables, 1)


def test_a_settings_file_that_can_not_be_read_is_not_quoted(tmp_path: Path) -> None:
    settings = tmp_path / "settings.toml"
    settings.write_text(f"[{MARK}]\nvolts = 1\n", encoding="utf-8")
    assert json.loads(write(tmp_path, tmp_path / "none.db", settings=settings)["settings.json"]) == {
        "trouble": "the settings file can't be read"
    }


def test_it_says_the_revision_the_counts_and_that_the_file_is_sound(tmp_path: Path) -> None:
    path = tmp_path / "harbour.db"
    with Ledger.open(path) as ledger:
        ledger.new_job(
            item=Item(kind="Bilge pump"), motor=Motor(rated_volts=12.0), complaint="hums", load_state="dry, uncoupled"
        )
        facts = json.loads(write(tmp_path, path)["ledger.json"])
    assert (facts["revision"], facts["sound"], facts["rows"]["job"], facts["rows"]["run"]) == (HEAD, "yes", 1, 0)
    assert facts["rows that point to nothing"] == 0


def test_it_says_which_own_dialect_a_supply_speaks_and_its_firmware_only(tmp_path: Path) -> None:
    path = tmp_path / "harbour.db"
    Ledger.open(path).close()
    mark_everything(path)
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute(
            "UPDATE run SET dialect = 'SCPI-1999, one output', identity = ?", (f"{MARK},{MARK},{MARK},1.04-2.0",)
        )
    facts = json.loads(write(tmp_path, path)["ledger.json"])
    assert facts["supply"] == {"dialect": "SCPI-1999, one output", "firmware": "1.04-2.0"}


@pytest.mark.parametrize(
    ("identity", "told"),
    [
        ("Maker,Model,0,1.0", "1.0"),
        ("Maker,Model,0, V2.31b7 ", "V2.31b7"),
        ("Maker,Model,0,A.01.15-01.23", "A.01.15-01.23"),
        ("Maker,Model,0,of Anna's boat 1", "not told"),
        ("Maker,Model,0,Anna1", "not told"),
        ("Maker,Model,0", "not told"),
        ("", "not told"),
    ],
)
def test_a_firmware_is_told_where_it_looks_like_a_version(identity: str, told: str) -> None:
    assert firmware(identity) == told


@pytest.mark.parametrize(
    "address",
    [
        "TCPIP::192.0.2.10::5025::SOCKET",
        "ASRL/dev/ttyUSB0,115200::INSTR",
        "USB0::0x1234::0x5678::A123::INSTR",
        "192.0.2.10",
        "owner@example.org",
    ],
)
def test_addresses_are_taken_out_of_logs(address: str) -> None:
    assert without_addresses(f"of {address} lost\nnext") == "of * lost\nnext"


def test_the_last_faults_are_in_it(tmp_path: Path) -> None:
    (tmp_path / "logs").mkdir()
    (tmp_path / "logs" / NAME).write_text("2026-11-30T00:00:00.000Z bench[7] ERROR x: lost 192.0.2.10\n", "utf-8")
    assert write(tmp_path, tmp_path / "none.db")[f"logs/{NAME}"].endswith("x: lost *\n")


def test_it_knows_what_it_is_shown_on_where_there_is_a_window(tmp_path: Path) -> None:
    told = json.loads(write(tmp_path, tmp_path / "none.db", screen=screen_facts())["about.json"])
    assert told["screen"]["platform"] == "offscreen"
    assert " x " in told["screen"]["screens"][0]["size px"]
    assert {"Python", "SQLite", "benchlog", "PyVISA"} <= set(told["versions"])


def test_a_ledger_that_is_none_or_damaged_is_said_so_and_stays_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "notes.txt"
    path.write_bytes(b"only notes " * 500)
    assert json.loads(write(tmp_path, path)["ledger.json"])["trouble"] == "SQLITE_NOTADB"
    assert path.read_bytes() == b"only notes " * 500


def test_looking_has_an_end(tmp_path: Path) -> None:
    path = tmp_path / "harbour.db"
    Ledger.open(path).close()
    with closing(sqlite3.connect(path)) as connection, connection:
        numbers = "WITH n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 20000)"
        connection.execute(f"{numbers} INSERT INTO draft SELECT i, '', '' FROM n")
    assert "not through" in json.loads(write(tmp_path, path, within_s=0.0)["ledger.json"])["sound"]


def test_the_terminal_writes_one_says_what_is_in_it_and_replaces_nothing(tmp_path: Path) -> None:
    arguments = ["support-bundle", "--output", str(tmp_path / "b.zip"), "--ledger", str(tmp_path / "none.db")]
    first = CliRunner().invoke(main, arguments)
    assert (first.exit_code, "Not in it: names, owners" in first.output) == (0, True)
    before = (tmp_path / "b.zip").read_bytes()
    second = CliRunner().invoke(main, arguments)
    assert (second.exit_code, "is there already" in second.output) == (2, True)
    assert (tmp_path / "b.zip").read_bytes() == before
