"""A resistor of known value on the leads: what is told of a supply that is right, and of a value that is not."""

from datetime import UTC, datetime
from pathlib import Path

import msgspec
import pytest

from benchlog.bench.frames import Happened
from benchlog.outcome import Outcome
from benchlog.records import Event, EventKind, RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.checking import LATCH_SHARE, LIMIT_SHARE, ROOM, SHARES
from benchlog.recovery.steps import Sequence
from benchlog.recovery.supply_check import SupplyCheck
from demo_db.virtual import VirtualBench, VirtualRun
from drivers.simulated.scenario import ResistorData, load

CHECK = SupplyCheck(ohm=10.0, ohm_share=0.01, share=0.02, volts=3.0)


def bench_with(ohm: float) -> VirtualBench:
    scenario = msgspec.structs.replace(load("short"), resistor=ResistorData(ohms=ohm))
    return VirtualBench(scenario, seed=3, began=datetime(2026, 11, 25, 9, tzinfo=UTC))


def checked(
    tmp_path: Path, check: SupplyCheck | None, *, ohm: float = 10.0, on: VirtualBench | None = None
) -> VirtualRun:
    bench = on or bench_with(ohm)
    limits = Limits(volts=3.0, amps=ROOM * 0.3)
    return bench.run(
        bench.request(
            tmp_path / f"{len(list(tmp_path.iterdir()))}.journal",
            RunKind.CHECK,
            rated_volts=3.0,
            layers={Layer.JOB: limits},
            sequence=Sequence(name="supply check"),
            check=check,
        )
    )


def figures(run: VirtualRun) -> list[Event]:
    events = [frame.event for frame in run.frames if isinstance(frame, Happened)]
    return [event for event in events if event.kind is EventKind.FINDING and "passed" in event.values]


def test_a_supply_that_is_right_is_within_in_every_figure(tmp_path: Path) -> None:
    run = checked(tmp_path, CHECK)
    told = figures(run)
    assert [event.values["what"] for event in told] == ["volts", "amps", "mode"] * len(SHARES) + ["limit", "mode"]
    assert all(event.values["passed"] for event in told)
    assert run.result.output_confirmed_off
    assert run.result.max_volts == pytest.approx(CHECK.volts, rel=0.02)
    limit = told[-2].values
    assert limit["wanted"] == pytest.approx(LIMIT_SHARE * CHECK.amps)


def test_a_resistor_of_another_value_shows_in_the_amps_and_nowhere_else(tmp_path: Path) -> None:
    told = figures(checked(tmp_path, CHECK, ohm=12.0))
    wrong = {event.values["what"] for event in told if not event.values["passed"]}
    assert wrong == {"amps"}
    assert all("Not within" in event.text for event in told if not event.values["passed"])


@pytest.mark.parametrize("ohm", [5.0, 20.0])
def test_a_resistor_that_is_clearly_another_ends_the_check_before_anything_is_judged(
    ohm: float, tmp_path: Path
) -> None:
    run = checked(tmp_path, CHECK, ohm=ohm)
    assert figures(run) == []
    assert "not 10.0 Ω: is it the resistor?" in run.result.reason
    assert run.result.output_confirmed_off


def test_the_latch_holds_below_its_level_and_ends_the_run_above_it(tmp_path: Path) -> None:
    latch_v = LATCH_SHARE * CHECK.volts
    run = checked(tmp_path, msgspec.structs.replace(CHECK, latch_v=latch_v))
    assert (run.result.outcome, run.result.output_confirmed_off) == (Outcome.CEILING, True)
    assert "over-voltage latch tripped" in run.result.reason
    assert run.bench.extremes.max_volts < CHECK.volts


def test_the_over_current_latch_trips_as_well_and_the_next_run_begins_by_clearing_it(tmp_path: Path) -> None:
    bench = bench_with(10.0)
    latch_a = LATCH_SHARE * CHECK.amps
    run = checked(tmp_path, msgspec.structs.replace(CHECK, latch_a=latch_a), on=bench)
    assert (run.result.outcome, run.result.output_confirmed_off) == (Outcome.CEILING, True)
    assert "over-current latch tripped" in run.result.reason
    told = figures(checked(tmp_path, msgspec.structs.replace(CHECK, cleared=True), on=bench))
    assert [(event.values["what"], event.values["passed"]) for event in told] == [
        ("volts", True),
        ("amps", True),
        ("mode", True),
    ]


def test_nothing_in_a_check_passes_the_ceilings(tmp_path: Path) -> None:
    run = checked(tmp_path, CHECK)
    assert run.bench.extremes.max_volts <= CHECK.volts * 1.02
    assert run.bench.extremes.max_amps <= ROOM * CHECK.amps


def test_a_check_without_the_resistors_value_is_refused_with_the_output_never_on(tmp_path: Path) -> None:
    run = checked(tmp_path, None)
    assert run.result.outcome is Outcome.REFUSED
    assert run.bench.extremes.output_on_s == 0.0
