"""Two supplies, two jobs, at the same time: each run has a bench process of its own, and ends by itself."""

import sys
from collections.abc import Callable
from contextlib import ExitStack, closing
from pathlib import Path

import pytest

from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor
from tests.processes import BenchProcess, OwnedProcess, wait_until

pytestmark = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="finds processes through /proc")


def renewed(*runs: OwnedProcess, until: Callable[[], bool]) -> None:
    """These windows are open until then."""

    def there() -> bool:
        for run in runs:
            run.renew()
        return until()

    wait_until(there)


def test_two_jobs_run_on_two_supplies_at_the_same_time_and_neither_ends_with_the_other(tmp_path: Path) -> None:
    motor = Motor(rated_volts=12.0)
    with ExitStack() as stack:
        ledger = stack.enter_context(Ledger.open(tmp_path / "ledger.db"))
        jobs = [
            ledger.new_job(item=Item(kind=kind), motor=motor, complaint="stuck", load_state="dry")
            for kind in ("bilge pump", "cabin fan")
        ]
        benches = [stack.enter_context(closing(BenchProcess(tmp_path, "hopeless"))) for _ in jobs]
        runs = [
            stack.enter_context(closing(OwnedProcess(bench.resource, tmp_path / f"{job.number}.journal", job=job.id)))
            for bench, job in zip(benches, jobs, strict=True)
        ]
        first, second = benches
        renewed(*runs, until=lambda: all(any(one["on"] for one in bench.switches()) for bench in benches))
        assert all(run.process.poll() is None for run in runs)
        renewed(runs[1], until=lambda: runs[0].process.poll() is not None)
        assert first.switches()[-1]["on"] is False
        seen = len(second.readings())
        renewed(runs[1], until=lambda: len(second.readings()) > seen + 10 and second.is_driving())
        runs[1].process.wait(timeout=10.0)
        for job, run, bench in zip(jobs, runs, benches, strict=True):
            file_journal(ledger, run.journal)
            (filed,) = ledger.runs(job.id)
            assert (filed.complete, filed.result.output_confirmed_off) == (True, True)
            assert bench.switches()[-1]["on"] is False
            amps = ledger.trace(filed.id).amps
            told = [one["reported_amps"] for one in bench.readings()]
            assert amps == pytest.approx(told[-len(amps) :], abs=1e-9)
