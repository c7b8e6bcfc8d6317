"""What all tests share."""

import getpass
import os
import shutil
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from typing import Protocol

import pytest
from hypothesis import settings

import demo_db
from benchlog.bench.frames import Happened
from benchlog.records import Event, EventKind
from demo_db.virtual import VirtualBench, VirtualRun
from drivers.simulated.scenario import load

# An example that takes long on a busy machine is no failure.
settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")

os.environ["QT_QPA_PLATFORM"] = "offscreen"
# Locks of supplies: what processes that were killed leave behind stays out of the user's own folder.
os.environ["XDG_STATE_HOME"] = os.path.join(tempfile.gettempdir(), f"benchlog-tests-{getpass.getuser()}")


@pytest.fixture(autouse=True, scope="session")
def application() -> object:
    """One application for all: paper and pictures need a small one, the window a whole one, and the first one stays."""
    from PySide6.QtWidgets import QApplication

    return QApplication.instance() or QApplication(["tests"])


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    for item in items:
        if "built_demo" in getattr(item, "fixturenames", ()):
            item.add_marker(pytest.mark.timeout(300))  # whichever comes first builds it: half a minute of work


BUILT_ANEW = ("ledger/test_opening.py", "ledger/test_disk.py", "ledger/test_migrations.py")
"""Whose matter is how a ledger is made."""


@pytest.fixture(autouse=True, scope="session")
def new_ledgers(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Every new ledger is the same file and the work of 0.1 s: it is built once a worker, and copied for the others."""
    from benchlog.ledger import migrating

    build = migrating.build

    @cache
    def built(application_id: int) -> bytes:
        path = tmp_path_factory.mktemp("new") / "ledger.db"
        path.touch()
        build(path, application_id=application_id)
        return path.read_bytes()

    def copy(path: Path, *, application_id: int) -> None:
        if any(name in os.environ["PYTEST_CURRENT_TEST"] for name in BUILT_ANEW):
            build(path, application_id=application_id)
        else:
            path.write_bytes(built(application_id))

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(migrating, "build", copy)
        yield


@pytest.fixture(scope="session")
def built_demo(tmp_path_factory: pytest.TempPathFactory, request: pytest.FixtureRequest) -> Path:
    """The demo ledger, built once for all workers: it takes seconds. Whoever may write to it takes a copy."""
    folder = tmp_path_factory.getbasetemp()
    built = (folder.parent if hasattr(request.config, "workerinput") else folder) / "built.db"
    with closing(sqlite3.connect(built.with_suffix(".lock"), timeout=290.0, isolation_level=None)) as one_at_a_time:
        one_at_a_time.execute("BEGIN EXCLUSIVE")
        if not built.exists():
            making = Path(tempfile.mkdtemp(dir=folder)) / "demo.db"
            demo_db.build(making)
            making.rename(built)  # whole, or not there
    return Path(shutil.copy(built, tmp_path_factory.mktemp("built") / "demo.db"))


BEGAN = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


class RunVirtually(Protocol):
    def __call__(self, scenario: str, *, seed: int = 0, **changes: object) -> VirtualRun: ...


@pytest.fixture
def run_virtually(tmp_path: Path) -> RunVirtually:
    """A recovery on a named scenario in virtual time."""

    def run(scenario: str, *, seed: int = 0, **changes: object) -> VirtualRun:
        bench = VirtualBench(load(scenario), seed=seed, began=BEGAN)
        journal = tmp_path / f"{len(list(tmp_path.iterdir()))}-{scenario}-{seed}.journal"
        return bench.run(bench.request(journal, **changes))  # type: ignore[arg-type]

    return run


def events_of(run: VirtualRun, kind: EventKind | None = None) -> list[Event]:
    """The events a run showed, of one kind or of all."""
    return [f.event for f in run.frames if isinstance(f, Happened) and (kind is None or f.event.kind is kind)]
