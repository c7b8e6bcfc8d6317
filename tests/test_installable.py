"""What is installed from this project is whole: entry points, data files, and a lock that fits what is asked for.

The wheel and the built folder themselves are made and tried by `python -m tests.installed`.
"""

import re
import tomllib
from importlib import import_module
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.version import Version

ROOT = Path(__file__).parents[1]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
PACKAGES = PROJECT["tool"]["hatch"]["build"]["targets"]["wheel"]["packages"]
LOCKS = sorted((ROOT / ".ci").glob("locked-python*.txt"))


def pinned(lock: Path) -> dict[str, Version]:
    text = lock.read_text(encoding="utf-8")
    return {name: Version(version) for name, version in re.findall(r"^([a-z0-9-]+)==(\S+)", text, re.MULTILINE)}


@pytest.mark.parametrize("kind", ["scripts", "gui-scripts"])
def test_every_entry_point_is_there(kind: str) -> None:
    for place in PROJECT["project"][kind].values():
        module, _, name = place.partition(":")
        assert callable(getattr(import_module(module), name))


def test_the_wheel_has_every_package_that_is_imported() -> None:
    assert PROJECT["tool"]["importlinter"]["root_packages"] == PACKAGES


def test_no_file_of_a_package_is_left_out_of_the_wheel_by_the_list_of_what_git_ignores() -> None:
    # hatchling leaves out what git ignores, and nothing else. Source: hatch.pypa.io, "Build configuration".
    ignored = [line.strip("/\n") for line in (ROOT / ".gitignore").read_text(encoding="utf-8").splitlines()]
    for package in PACKAGES:
        for path in (ROOT / package).rglob("*"):
            parts = path.relative_to(ROOT).parts
            if "__pycache__" not in parts:
                assert not any(Path(part).match(pattern) for part in parts for pattern in ignored if pattern), path


def test_files_that_are_no_code_lie_where_the_build_of_one_folder_looks_for_them() -> None:
    spec = (ROOT / ".ci" / "one_folder.spec").read_text(encoding="utf-8")
    collected = re.search(r"^OWN = \[(.*)\]$", spec, re.MULTILINE)
    assert collected is not None
    with_data = {
        package
        for package in PACKAGES
        for path in (ROOT / package).rglob("*.*")
        if path.suffix in (".toml", ".sql", ".qm", ".md", ".rules", ".html", ".svg", ".png", ".wav", ".txt")
    }
    assert with_data - {"demo_db"} <= set(re.findall(r'"(\w+)"', collected[1])) | {"migrations"}


def test_there_is_a_lock_for_the_oldest_python_and_a_newer_one() -> None:
    assert [path.name for path in LOCKS] == ["locked-python3.11.txt", "locked-python3.13.txt"]


@pytest.mark.parametrize("lock", LOCKS, ids=lambda path: path.stem)
def test_a_lock_names_every_direct_dependency_within_its_range(lock: Path) -> None:
    versions = pinned(lock)
    extras = PROJECT["project"]["optional-dependencies"]
    for wanted in map(Requirement, [*PROJECT["project"]["dependencies"], *extras["build"]]):
        assert wanted.name in versions, f"{wanted.name}: renew the lock with `bash .ci/lock`"
        assert wanted.specifier.contains(versions[wanted.name]), f"{wanted}: renew the lock with `bash .ci/lock`"


@pytest.mark.parametrize("lock", LOCKS, ids=lambda path: path.stem)
def test_a_lock_has_hashes_for_every_part_and_no_place_of_a_computer(lock: Path) -> None:
    text = lock.read_text(encoding="utf-8")
    for part in re.split(r"^(?=[a-z0-9-]+==)", text, flags=re.MULTILINE)[1:]:
        assert re.search(r"--hash=sha256:[0-9a-f]{64}", part), part.partition(" ")[0]
    assert "://" not in text
    assert not re.search(r"(^|\s)/|file:/", text)
