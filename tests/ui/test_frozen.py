"""A built program is all of its own processes: what may be started, and that nothing else is."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from drivers.children import CHILD, command
from ui.frozen import PARTS, part_of

ROOT = Path(__file__).parents[2]
SOURCES = [path for room in ("benchlog", "drivers", "ui") for path in (ROOT / room).rglob("*.py")]


def started() -> Iterator[str]:
    """The first argument of every call of `command`, by that name or as `children.command`."""
    for path in SOURCES:
        if "children" not in (source := path.read_text(encoding="utf-8")):
            continue
        for node in ast.walk(ast.parse(source)):
            if isinstance(node, ast.Call) and ast.unparse(node.func) in ("command", "children.command"):
                assert isinstance(node.args[0], ast.Constant), "a part is started by its name"
                yield str(node.args[0].value)


def test_every_part_that_is_started_is_known_to_the_build() -> None:
    assert set(started()) == PARTS


def test_nothing_starts_the_interpreter_beside_the_one_place() -> None:
    found = [path.name for path in SOURCES if "sys.executable" in path.read_text(encoding="utf-8")]
    assert found == ["children.py"]


def test_with_an_interpreter_a_part_is_a_module_of_it_and_the_folder_is_left_out() -> None:
    assert command("benchlog.bench", "x") == [sys.executable, "-P", "-m", "benchlog.bench", "x"]


def test_the_first_argument_says_which_part_a_process_is() -> None:
    assert part_of(["/b/benchlog", CHILD, "benchlog.bench.rescue"]) == ("benchlog.bench.rescue", [])
    assert part_of(["/b/benchlog-window", CHILD, "ui", "--ledger", "x"]) == ("ui", ["--ledger", "x"])


def test_without_it_the_program_s_name_decides() -> None:
    assert part_of(["/b/benchlog", "jobs"]) == ("benchlog.cli", ["jobs"])
    assert part_of(["C/benchlog-window.exe", "--demo"]) == ("ui.own", ["--demo"])


@pytest.mark.parametrize("argv", [["b", CHILD], ["b", CHILD, "http.server"]])
def test_nothing_else_can_be_run_through_it(argv: list[str]) -> None:
    with pytest.raises(ValueError, match="no part"):
        part_of(argv)


def test_a_waiting_rescue_is_started_without_qt_and_without_the_window() -> None:
    code = (
        "import sys; from ui import frozen; sys.argv = ['benchlog', '--child', 'drivers.discovery', 'nothing']\n"
        "try: frozen.main()\n"
        "except (SystemExit, KeyError): pass\n"
        "print(sorted(m for m in sys.modules if m.partition('.')[0] in ('PySide6', 'sqlalchemy', 'click')))"
    )
    done = subprocess.run([sys.executable, "-P", "-c", code], capture_output=True, text=True, timeout=60, check=True)
    assert done.stdout.splitlines()[-1] == "[]"
