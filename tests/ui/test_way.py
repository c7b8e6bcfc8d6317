"""Which stage is next follows from the record alone."""

from benchlog.outcome import Outcome, RunResult, WindingVerdict
from benchlog.records import Entry, Item, Job, JobState, Motor, Run, RunKind, Stage
from ui.way import Standing, Way, way_of

JOB = Job(
    id=1,
    number=7,
    tag="H-0007",
    opened_utc="2026-11-25T08:00:00.000Z",
    closed_utc=None,
    state=JobState.OPEN,
    item=Item(kind="Bilge pump"),
    motor=Motor(rated_volts=12.0),
    complaint="hums, does not turn",
    load_state="dry, uncoupled",
)
SAFE = [Entry(utc="2026-11-25T08:01:00.000Z", stage=Stage.MAKE_SAFE, text="Unplugged from the mains: done")]


def run(kind: RunKind, outcome: Outcome, verdict: WindingVerdict = WindingVerdict.WINDING, *, kicks: int = 0) -> Run:
    return Run(
        id=1,
        job=1,
        kind=kind,
        started_utc="2026-11-25T08:02:00.000Z",
        duration_s=1.0,
        resource="",
        identity="",
        rated_volts=12.0,
        load_state="dry, uncoupled",
        sequence_name="starting ladder",
        request="",
        ceilings="null",
        program="",
        result=RunResult(outcome=outcome, reason="", winding_verdict=verdict, kicks=kicks),
        complete=True,
        samples=0,
    )


PROBED = run(RunKind.PROBE, Outcome.UNDETERMINED)


def standings(way: Way) -> list[Standing]:
    return [milestone.standing for milestone in way.milestones]


def test_without_a_job_only_intake_can_be_begun() -> None:
    way = way_of(None, [], [])
    assert way.next() is Stage.INTAKE
    assert [stage for stage in Stage if way.may_go_to(stage)] == [Stage.INTAKE]


def test_nothing_is_probed_before_it_is_made_safe() -> None:
    way = way_of(JOB, [], [])
    assert way.next() is Stage.MAKE_SAFE
    assert not way.may_go_to(Stage.PROBE)


def test_a_probe_that_was_stopped_is_not_a_probe() -> None:
    assert way_of(JOB, SAFE, [run(RunKind.PROBE, Outcome.STOPPED)]).next() is Stage.PROBE
    assert way_of(JOB, SAFE, [PROBED]).next() is Stage.FREE


def test_an_electrical_finding_leaves_free_and_prove_out_with_the_reason() -> None:
    way = way_of(JOB, SAFE, [run(RunKind.PROBE, Outcome.SHORT, WindingVerdict.SHORT)])
    assert way.at(Stage.FREE).standing is Standing.SKIPPED
    assert "short" in way.at(Stage.PROVE).found
    assert way.next() is Stage.CLOSE


def test_a_later_good_probe_brings_free_back() -> None:
    way = way_of(JOB, SAFE, [run(RunKind.PROBE, Outcome.OPEN, WindingVerdict.OPEN), PROBED])
    assert way.next() is Stage.FREE


def test_still_stuck_may_be_tried_again_or_closed_but_not_proved() -> None:
    way = way_of(JOB, SAFE, [PROBED, run(RunKind.RECOVERY, Outcome.STILL_STUCK)])
    assert way.next() is Stage.FREE
    assert way.may_go_to(Stage.CLOSE)
    assert not way.may_go_to(Stage.PROVE)


def test_the_kicks_told_are_those_of_all_its_runs() -> None:
    """The one that was stopped kicked as well."""
    tried = [run(RunKind.RECOVERY, Outcome.STOPPED, kicks=2), run(RunKind.RECOVERY, Outcome.FREED)]
    assert way_of(JOB, SAFE, [PROBED, *tried]).at(Stage.FREE).found == "freed, 2 kicks"


def test_freed_and_proved_comes_to_close() -> None:
    way = way_of(JOB, SAFE, [PROBED, run(RunKind.RECOVERY, Outcome.FREED), run(RunKind.PROOF, Outcome.RUNS)])
    assert standings(way)[:5] == [Standing.DONE] * 5
    assert way.next() is Stage.CLOSE


def test_stuck_again_undoes_the_proof() -> None:
    runs = [
        PROBED,
        run(RunKind.RECOVERY, Outcome.FREED),
        run(RunKind.PROOF, Outcome.RUNS),
        run(RunKind.RECOVERY, Outcome.STILL_STUCK),
    ]
    assert way_of(JOB, SAFE, runs).next() is Stage.FREE
