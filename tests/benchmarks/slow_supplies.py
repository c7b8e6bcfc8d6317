"""How the recovery ends on supplies that are slow: the shipped ladder on motors drawn at random and as shipped.

    python -m tests.benchmarks.slow_supplies [--motors 60] [--seed 11] [--on terse-serial]

A third of the motors drawn turn freely, a third are stuck and can be freed, a third are locked for good. Virtual time.
"""

import argparse
import random
import tempfile
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from msgspec.structs import replace

from benchlog.bench.journal import read_journal
from benchlog.outcome import Outcome
from benchlog.records import EventKind
from benchlog.recovery.ceilings import Layer, Limits
from demo_db.virtual import VirtualBench
from drivers.dialect import Dialect, shipped
from drivers.scpi_supply import ScpiSupply
from drivers.simulated.bench import Bench
from drivers.simulated.joint import JointData
from drivers.simulated.quirks import Quirks, together
from drivers.simulated.scenario import Scenario, load, with_ranges
from drivers.supply import Supply
from tests.benchmarks.accuracy.population import draw
from tests.conftest import BEGAN

SUPPLIES: dict[str, tuple[str, tuple[str, ...]]] = {
    "quick": ("scpi-1999", ()),
    "terse-serial": ("terse-serial", ()),
    "90 ms a reply": ("scpi-1999", ("slow",)),
    "90 ms, one by one": ("scpi-1999", ("slow", "no-compound")),
    "terse, 90 ms": ("terse-serial", ("slow",)),
}
SHIPPED = ("free", "stuck-soft", "stuck-hard", "hopeless", "locked-hot", "grips-again-at-rest")
KINDS = ("free", "stuck", "locked")
MOST_A = 5.0
"""A that a terse supply has to say in five characters."""


class SlowBench(VirtualBench):
    """A virtual bench whose supply speaks a dialect, with habits."""

    def __init__(self, scenario: Scenario, *, seed: int, speaks: Dialect, quirks: Quirks) -> None:
        super().__init__(scenario, seed=seed, began=BEGAN)
        self.bench = Bench(scenario, seed, speaks=speaks, quirks=quirks)
        self._described = quirks.described(speaks)

    def open_supply(self) -> Supply:
        return ScpiSupply(self.open_session, self._described, self.clock.now, wait=self.clock.wait)


class Case(NamedTuple):
    """`on`: which supply; `kind`: of the motor; `scenario`: it, `seed`: of the bench."""

    on: str
    kind: str
    scenario: Scenario
    seed: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """`widths_s`: of the kicks as filed. `loose`: nothing held the shaft at the end, as the simulation knows."""

    case: Case
    outcome: Outcome
    reason: str
    widths_s: tuple[float, ...]
    kicks: int
    loose: bool

    @property
    def wrong(self) -> bool:
        """Whether a motor that nothing holds was said not to run."""
        return self.loose and self.outcome is Outcome.STILL_STUCK


def bench_of(case: Case) -> SlowBench:
    dialect, habits = SUPPLIES[case.on]
    return SlowBench(case.scenario, seed=case.seed, speaks=shipped(dialect), quirks=together(habits))


def run(case: Case) -> Told:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "run.journal"
        bench = bench_of(case)
        ran = bench.run(bench.request(path, layers=_layers(case.scenario)))
        events = read_journal(path).events
    return Told(
        case=case,
        outcome=ran.result.outcome,
        reason=ran.result.reason,
        widths_s=tuple(float(str(e.values["seconds"])) for e in events if e.kind is EventKind.KICK),
        kicks=ran.result.kicks,
        loose=bench.bench.motor is not None
        and (bench.bench.motor.joint is None or not bench.bench.motor.joint.holding),
    )


def _layers(scenario: Scenario) -> dict[Layer, Limits]:
    """A supply that does not tell its range gets the amps that it has as a ceiling, as a person would give it."""
    return {Layer.JOB: Limits(volts=scenario.rated_volts, amps=MOST_A)}


def cases(on: str, motors: int, seed: int) -> Iterator[Case]:
    for name in SHIPPED:
        yield Case(on, name, with_ranges(load(name), shipped(SUPPLIES[on][0])), seed)
    for number in range(motors):
        kind = KINDS[number % len(KINDS)]
        drawn = draw(seed, number, "locked" if kind == "locked" else "free")
        scenario, source = drawn.scenario, random.Random(f"{seed}/{number}/joint")
        if kind == "stuck":
            assert scenario.motor is not None
            joint = JointData(breaks_at=source.uniform(0.5, 0.95), wears=0.05, residue=source.uniform(0.0, 0.2))
            scenario = replace(scenario, motor=replace(scenario.motor, joint=joint))
        scenario = replace(scenario, supply=replace(scenario.supply, amps_max=MOST_A))
        yield Case(on, kind, scenario, drawn.seed)


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.slow_supplies", description=__doc__)
    parser.add_argument("--motors", type=int, default=60)
    parser.add_argument("--seed", type=int, default=11)
    parser.add_argument("--on", choices=list(SUPPLIES), action="append")
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--told", action="store_true", help="every run's own words as well")
    asked = parser.parse_args()
    print("| supply | motor | how it ended | loose, said still stuck | kicks, s wide |\n|---|---|---|---|---|")
    for on in asked.on or SUPPLIES:
        with ProcessPoolExecutor(asked.workers) as pool:
            told = list(pool.map(run, cases(on, asked.motors, asked.seed)))
        for kind in dict.fromkeys(one.case.kind for one in told):
            of_kind = [one for one in told if one.case.kind == kind]
            ends = ", ".join(f"{word} {n}" for word, n in Counter(one.outcome for one in of_kind).most_common())
            widths = [width for one in of_kind for width in one.widths_s]
            wide = f"{min(widths):.2f} to {max(widths):.2f}" if widths else "none"
            print(
                f"| {on} | {kind} ({len(of_kind)}) | {ends} | {sum(one.wrong for one in of_kind)} | {wide} |",
                flush=True,
            )
        if asked.told:
            for one in told:
                print(f"  {one.case.kind} {one.case.seed}: {one.outcome}, {one.kicks} kicks: {one.reason}")


if __name__ == "__main__":
    main()
