"""Whether a motor that was run in is still to be started cold, from its runs alone."""

import pytest

from benchlog.history.cold_restart import COLD_AFTER_S, cold_restart_due
from benchlog.outcome import Outcome, RunResult
from benchlog.records import Run, RunKind


def ran(
    number: int,
    kind: RunKind,
    started_utc: str,
    *,
    outcome: Outcome = Outcome.RUNS,
    lasted_s: float = 3600.0,
    complete: bool = True,
    moved: bool = False,
) -> Run:
    return Run(
        id=number,
        job=1,
        kind=kind,
        started_utc=started_utc,
        duration_s=lasted_s,
        resource="",
        identity="",
        rated_volts=12.0,
        load_state="",
        sequence_name="",
        request="",
        ceilings="",
        program="",
        result=RunResult(outcome=outcome, reason="", moved=moved),
        complete=complete,
        samples=10,
    )


IN = ran(3, RunKind.RUN_IN, "2026-11-20T08:00:00.000Z")


def test_it_is_due_four_hours_after_the_run_in_ended_and_not_before() -> None:
    assert COLD_AFTER_S == 4 * 3600
    due = cold_restart_due([IN], "2026-11-20T10:00:00.000Z")
    assert due is not None
    assert (due.run, due.from_utc, due.now) == (3, "2026-11-20T13:00:00Z", False)
    later = cold_restart_due([IN], "2026-11-20T13:00:00.000Z")
    assert later is not None
    assert later.now


@pytest.mark.parametrize("kind", [RunKind.PROOF, RunKind.START_UP])
def test_a_start_when_cold_settles_it_and_one_when_warm_does_not(kind: RunKind) -> None:
    warm, cold = ran(4, kind, "2026-11-20T11:00:00.000Z"), ran(5, kind, "2026-11-21T08:00:00.000Z")
    now = "2026-11-22T08:00:00.000Z"
    assert cold_restart_due([IN, warm], now) is not None
    assert cold_restart_due([cold, IN, warm], now) is None
    assert cold_restart_due([IN, ran(5, kind, "2026-11-21T08:00:00.000Z", complete=False)], now) is not None


def test_a_second_run_in_asks_again() -> None:
    cold, again = (
        ran(5, RunKind.PROOF, "2026-11-21T08:00:00.000Z"),
        ran(6, RunKind.RUN_IN, "2026-11-21T09:00:00.000Z"),
    )
    due = cold_restart_due([IN, cold, again], "2026-11-21T10:30:00.000Z")
    assert due is not None
    assert due.run == 6


@pytest.mark.parametrize(
    "run",
    [
        ran(1, RunKind.PROOF, "2026-11-20T08:00:00.000Z"),
        ran(1, RunKind.RUN_IN, "2026-11-20T08:00:00.000Z", complete=False),
        ran(1, RunKind.RUN_IN, "2026-11-20T08:00:00.000Z", outcome=Outcome.STILL_STUCK, moved=True),
        ran(1, RunKind.RUN_IN, "2026-11-20T08:00:00.000Z", outcome=Outcome.UNDETERMINED),
        ran(1, RunKind.RUN_IN, "2026-11-20T08:00:00.000Z", outcome=Outcome.REFUSED),
    ],
)
def test_what_did_not_run_asks_for_no_cold_start(run: Run) -> None:
    assert cold_restart_due([run], "2026-11-25T08:00:00.000Z") is None


def test_one_that_was_stopped_after_hours_still_does() -> None:
    stopped = ran(1, RunKind.RUN_IN, "2026-11-20T08:00:00.000Z", outcome=Outcome.STOPPED, moved=True)
    assert cold_restart_due([stopped], "2026-11-25T08:00:00.000Z") is not None
