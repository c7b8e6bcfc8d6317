"""What the ledger knows of motors like one: from the demo ledger, whose jobs are known."""

import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from benchlog.ledger.likes import past_of
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome
from benchlog.records import Item


@pytest.fixture(scope="module")
def demo(built_demo: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("likes") / "demo.db"
    shutil.copy(built_demo, path)
    return path


def test_a_serial_comes_before_its_model_and_a_model_before_its_kind(demo: Path) -> None:
    with Ledger.open(demo) as ledger:
        job = next(job for job in reversed(ledger.jobs()) if job.item.serial and job.item.model)
        same = past_of(ledger, job.item)
        model = past_of(ledger, Item(kind=job.item.kind, make=job.item.make, model=job.item.model, serial="another"))
        kind = past_of(ledger, Item(kind=job.item.kind))
        nothing = past_of(ledger, Item(kind="anchor winch"))
    assert {one.likeness for one in same} == {"this serial"}
    assert {one.likeness for one in model} == {"this model"}
    assert {one.likeness for one in kind} == {"this kind"}
    assert len(kind) >= len(model) >= 1
    assert nothing == []


def test_what_freed_one_is_known_with_its_ladder_and_its_ceilings(demo: Path) -> None:
    with Ledger.open(demo) as ledger:
        freed = [one for job in ledger.jobs() for one in past_of(ledger, Item(kind=job.item.kind)) if one.freed]
        assert freed
        for one in freed:
            run = ledger.run(one.run)
            assert run.result.outcome is Outcome.FREED
            assert one.freed_ratio is not None
            assert 0.3 < one.freed_ratio < 1.6
            assert one.freed_amps is not None
            assert one.freed_amps > 0
            assert one.sequence is not None
            assert one.limits is not None
            assert ledger.job_by_number(one.job).id == run.job


def test_a_job_is_not_its_own_past(demo: Path) -> None:
    with Ledger.open(demo) as ledger:
        job = next(job for job in ledger.jobs() if job.last_outcome == Outcome.STILL_STUCK)
        assert all(one.job != job.number for one in past_of(ledger, job.item, not_job=job.id))


def test_a_run_filed_by_another_program_has_no_ladder_to_take_again(demo: Path, tmp_path: Path) -> None:

    path = tmp_path / "older.db"
    shutil.copy(demo, path)
    with closing(sqlite3.connect(path)) as connection:
        connection.execute('UPDATE run SET request = \'{"layers": {"job": {"volts": -1}}}\'')
        connection.commit()
    with Ledger.open(path) as ledger:
        kinds = {job.item.kind for job in ledger.jobs()}
        found = [one for kind in kinds for one in past_of(ledger, Item(kind=kind))]
    assert found
    assert all(one.sequence is None and one.limits is None for one in found)
