"""Where a job stands on its way: which stages are done, which is next, which are left out, and what each found.

Decided from the ledger's record alone, so that a job taken up again stands where it was left.
"""

from collections.abc import Sequence
from enum import Enum

import msgspec

from benchlog.outcome import Outcome, RunResult
from benchlog.records import Entry, Job, JobState, Run, RunKind, Stage
from ui import sayings, texts

ELECTRICAL = frozenset({Outcome.OPEN, Outcome.SHORT, Outcome.DIODE, Outcome.ELECTRONIC})
GOES = frozenset({Outcome.FREED, Outcome.RUNS})


class Standing(Enum):
    """By the name of the constant that says it."""

    DONE = "STANDING_DONE"
    NEXT = "STANDING_NEXT"
    TO_COME = "STANDING_TO_COME"
    SKIPPED = "STANDING_SKIPPED"

    @property
    def words(self) -> str:
        return str(getattr(texts, self.value))


class Milestone(msgspec.Struct, frozen=True, kw_only=True):
    """One stage of one job. `found` is what was found there, for the eye; empty where nothing was."""

    stage: Stage
    standing: Standing
    found: str = ""


class Way(msgspec.Struct, frozen=True, kw_only=True):
    """The six stages. `may_close`: there is a job, and it may be closed whatever was or was not done."""

    milestones: tuple[Milestone, ...]
    may_close: bool

    def at(self, stage: Stage) -> Milestone:
        return next(milestone for milestone in self.milestones if milestone.stage is stage)

    def next(self) -> Stage:
        """The stage that can be begun; the last one when all is done."""
        return next((m.stage for m in self.milestones if m.standing is Standing.NEXT), Stage.CLOSE)

    def may_go_to(self, stage: Stage) -> bool:
        standing = self.at(stage).standing
        return standing in (Standing.DONE, Standing.NEXT) or (stage is Stage.CLOSE and self.may_close)


def way_of(job: Job | None, entries: Sequence[Entry], runs: Sequence[Run]) -> Way:
    """`runs` oldest first. Without a job, intake is next."""
    runs = [run for run in runs if run.kind is not RunKind.LEADS]  # the supply's, not this motor's
    found = _found(job, entries, runs)
    electrical = _electrical(runs)
    milestones: list[Milestone] = []
    next_taken = False
    for stage in Stage:
        if stage in found.done:
            standing = Standing.DONE
        elif stage in (Stage.FREE, Stage.PROVE) and electrical is not None:
            standing = Standing.SKIPPED
        elif next_taken:
            standing = Standing.TO_COME
        else:
            standing, next_taken = Standing.NEXT, True
        words = found.words.get(stage, "")
        if standing is Standing.SKIPPED and electrical is not None:
            words = texts.SKIPPED_BECAUSE.format(reason=texts.OUTCOME_WORDS[electrical])
        milestones.append(Milestone(stage=stage, standing=standing, found=words))
    return Way(milestones=tuple(milestones), may_close=job is not None)


class _Found(msgspec.Struct):
    done: set[Stage]
    words: dict[Stage, str]


def _found(job: Job | None, entries: Sequence[Entry], runs: Sequence[Run]) -> _Found:
    found = _Found(set(), {})
    if job is None:
        return found
    found.done.add(Stage.INTAKE)
    found.words[Stage.INTAKE] = texts.QUOTED.format(text=job.complaint) if job.complaint else job.item.kind
    checks = [entry for entry in entries if entry.stage is Stage.MAKE_SAFE]
    if checks:
        found.done.add(Stage.MAKE_SAFE)
        found.words[Stage.MAKE_SAFE] = _checked_words(checks)
    for kind, stage in ((RunKind.PROBE, Stage.PROBE), (RunKind.RECOVERY, Stage.FREE), (RunKind.PROOF, Stage.PROVE)):
        results = [run.result for run in runs if run.kind is kind]
        if results:
            kicks = sum(result.kicks for result in results)  # of the job, not of one run
            whole = msgspec.structs.replace(results[-1], kicks=kicks)
            found.words[stage] = sayings.run_words(kind, whole)
            if _is_done(kind, results[-1]):
                found.done.add(stage)
    if Stage.FREE not in found.done:
        found.done.discard(Stage.PROVE)
    if job.state is JobState.CLOSED:
        found.done.add(Stage.CLOSE)
        found.words[Stage.CLOSE] = texts.CLOSED_FOUND
    return found


def _checked_words(checks: Sequence[Entry]) -> str:
    done = sum(entry.text.endswith(texts.SAFE_CHECKED) for entry in checks)
    words = texts.CHECKED_FOUND if done == len(checks) else texts.CHECKED_FOUND_NOT
    return words.format(done=done, other=len(checks) - done)


def _is_done(kind: RunKind, result: RunResult) -> bool:
    return sayings.probe_went_through(result) if kind is RunKind.PROBE else result.outcome in GOES


def _electrical(runs: Sequence[Run]) -> Outcome | None:
    """The last word on the winding, where it says that kicks can't help."""
    spoken = [
        run.result.outcome
        for run in runs
        if run.result.outcome in ELECTRICAL | GOES | {Outcome.STILL_STUCK}
        or (run.kind is RunKind.PROBE and sayings.probe_went_through(run.result))
    ]
    return spoken[-1] if spoken and spoken[-1] in ELECTRICAL else None
