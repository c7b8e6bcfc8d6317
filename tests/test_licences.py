"""Every part of the program with its licence."""

import json
import re
import tomllib
from pathlib import Path

from click.testing import CliRunner

from benchlog.cli import main
from benchlog.licences import listing

ROOT = Path(__file__).parents[1]


def test_every_direct_dependency_is_listed_with_a_licence() -> None:
    listed = {re.sub(r"[-_.]+", "-", part.name).lower(): part.licence for part in listing()}
    wanted = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["dependencies"]
    for requirement in wanted:
        name = re.match(r"[\w.-]+", requirement)
        assert name is not None
        assert listed[name.group().lower()] not in ("", "none stated")


def test_what_those_need_is_listed_too_and_the_interpreter_and_the_database() -> None:
    names = {part.name for part in listing()}
    assert {"Mako", "shiboken6", "Python", "SQLite"} <= names


def test_what_only_tests_need_is_no_part_of_the_program() -> None:
    assert not {"pytest", "mypy", "hypothesis"} & {part.name for part in listing()}


def test_qt_is_named_as_the_public_licence_names_it() -> None:
    # Source: the wheels' own metadata, and https://doc.qt.io/qt-6/licensing.html.
    assert all("LGPL-3.0" in part.licence for part in listing() if part.name.startswith(("PySide6", "shiboken6")))


def test_the_terminal_lists_them_and_says_what_the_lgpl_allows() -> None:
    told = CliRunner().invoke(main, ["licences"])
    assert told.exit_code == 0
    assert "replace them with other versions" in " ".join(told.output.split())
    rows = CliRunner().invoke(main, ["licences", "--json"]).output.splitlines()
    assert len(rows) == len(listing())
    assert set(json.loads(rows[0])) == {"name", "version", "licence"}
