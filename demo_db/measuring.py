"""Lots of the demo ledger: units measured one after the other, limits from the good ones, all judged by them."""

from datetime import datetime
from pathlib import Path
from uuid import UUID, uuid5

import msgspec

from benchlog.clock import VirtualClock
from benchlog.ledger.captured import captured_of_lot
from benchlog.ledger.filing import file_journal
from benchlog.ledger.judging_runs import judge_captured
from benchlog.ledger.known_good import keep_limits, kept_limits
from benchlog.ledger.lots import add_unit, keep_check, keep_judged, open_lot, set_limits
from benchlog.ledger.start_tests import lock
from benchlog.ledger.store import Ledger
from benchlog.motor.limits import limits_from
from benchlog.records import RunKind
from demo_db.lots import DemoLot, DemoUnit, demo_test
from demo_db.virtual import VirtualBench
from drivers.simulated.scenario import Scenario, load

_NAMES = UUID("a8f0c7b2-90a4-4c39-8d6e-1f50b6f1e7d4")


def variant(name: str, motor: dict[str, float]) -> Scenario:
    """A scenario with fields of its motor multiplied. Raises ValueError where it has no motor."""
    scenario = load(name)
    if not motor:
        return scenario
    if scenario.motor is None:
        raise ValueError(f"{name} has no motor")
    changed = {field: getattr(scenario.motor, field) * factor for field, factor in motor.items()}
    return msgspec.structs.replace(scenario, motor=msgspec.structs.replace(scenario.motor, **changed))


def measure_lot(ledger: Ledger, clock: VirtualClock, began: datetime, told: DemoLot) -> None:
    """A whole lot. `began`: when the clock was at zero."""

    def until(at: datetime) -> None:
        clock.wait((at - began).total_seconds())

    until(told.opened)
    test = lock(ledger, demo_test(), told.operator)
    about = {name: getattr(told, name) for name in ("operator", "leads", "fixture", "ambient_c", "load_state")}
    lot = open_lot(ledger, name=told.name, item=told.item, motor=told.motor, test_id=test.id, **about)
    for check in told.checks:
        until(check.at)
        keep_check(ledger, lot, check.kind.value, check.value, check.unit, True, told.operator)
    good = {unit.serial for unit in told.units if unit.good}
    runs: dict[int, tuple[int, bool]] = {}
    for unit in told.units:
        until(unit.at)
        key = add_unit(ledger, lot, unit.serial).id
        run = _measure(ledger, told, unit, job=lot.job.id, key=key)
        runs[run] = (key, unit.serial in good)
    until(told.limits_at)
    captured = captured_of_lot(ledger, lot)
    known = [one for one in captured if runs[one.run.id][1]]
    limits = limits_from(
        [one.figures for one in known],
        [one.curves for one in known],
        test=test.test.name,
        version=test.test.version,
        runs=[one.run.id for one in known],
    )
    kept = kept_limits(ledger, keep_limits(ledger, limits, told.operator))
    set_limits(ledger, lot, kept.id)
    for one in captured:
        keep_judged(ledger, runs[one.run.id][0], one.run.id, judge_captured(ledger, one, kept))


def _measure(ledger: Ledger, lot: DemoLot, unit: DemoUnit, *, job: int, key: int) -> int:
    """The run's key."""
    bench = VirtualBench(variant(unit.scenario, unit.motor), seed=unit.seed, began=unit.at)
    uid = uuid5(_NAMES, f"job {job}, unit {unit.serial}").hex
    request = bench.request(
        Path(f"{uid}.journal"),
        RunKind.START_UP,
        job=job,
        unit=key,
        load_state=lot.load_state,
        ambient_c=lot.ambient_c,
        start_test=demo_test(),
    )
    return file_journal(ledger, bench.run(request).journal).run
