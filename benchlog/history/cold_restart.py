"""A motor that was run in is to start once more when it is cold: derived from its runs, kept nowhere.

"It starts only when warm" is not repaired, and a warm restart at the end of a run-in does not tell.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from benchlog.outcome import Outcome
from benchlog.records import Run, RunKind

COLD_AFTER_S = 4 * 3600.0
"""s after a run-in until a motor counts as cold: some eight of its longest time constants. Starting value."""
_STARTS = (RunKind.PROOF, RunKind.START_UP)


@dataclass(frozen=True, slots=True, kw_only=True)
class Due:
    """A cold start that is still to come: after which run, from when on, and whether that time has come."""

    run: int
    from_utc: str
    now: bool


def cold_restart_due(runs: Sequence[Run], now_utc: str) -> Due | None:
    """Of one job's runs in any order; None where it was not run in, or was started cold since. ISO 8601 times."""
    ran_in = [run for run in runs if run.kind is RunKind.RUN_IN and run.complete and _ran(run)]
    if not ran_in:
        return None
    last = max(ran_in, key=_ended)
    cold = _ended(last) + timedelta(seconds=COLD_AFTER_S)
    if any(run.kind in _STARTS and run.complete and _began(run) >= cold for run in runs):
        return None
    from_utc = cold.isoformat(timespec="seconds").replace("+00:00", "Z")
    return Due(run=last.id, from_utc=from_utc, now=datetime.fromisoformat(now_utc).astimezone(UTC) >= cold)


def _ran(run: Run) -> bool:
    """It turned for a time, however that ended; one that stuck has other needs than a cold start."""
    return run.result.outcome is not Outcome.STILL_STUCK and (run.result.outcome is Outcome.RUNS or run.result.moved)


def _began(run: Run) -> datetime:
    return datetime.fromisoformat(run.started_utc).astimezone(UTC)


def _ended(run: Run) -> datetime:
    return _began(run) + timedelta(seconds=run.duration_s)
