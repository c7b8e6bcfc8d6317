"""Stuck motors that look like running ones, running ones, and what the shipped recovery says of them."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from benchlog.outcome import Outcome
from benchlog.records import Event, EventKind
from tests.benchmarks.accuracy.pool import each
from tests.benchmarks.accuracy.population import STUCK, draw, run
from tests.benchmarks.accuracy.rows import Row, rate

STUCK_TIMES = 3
"""Stuck motors for each that runs: the rate to be shown is small."""
CREEP_TIMES = 10
GOES = (Outcome.FREED, Outcome.RUNS)
WRONG = (Outcome.STILL_STUCK, Outcome.OPEN, Outcome.SHORT, Outcome.DIODE, Outcome.ELECTRONIC)
"""Of a motor that runs. Undetermined is not wrong; a trip is shown as what it is."""
RATES = ((5.0, 10.0), (10.0, 30.0), (30.0, 101.0))
"""Readings a second, from and below."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What was said of a motor. `first`: it turns, by the first hold after a kick; `decidable`: as the goal has it."""

    kind: str
    number: int
    outcome: Outcome
    reason: str
    first: bool
    decidable: bool
    readings_per_s: float
    second: bool


def tell(asked: tuple[int, int, str], folder: Path) -> Told:
    seed, number, kind = asked
    drawn = draw(seed, number, kind)
    ran = run(drawn, folder)
    rated, motor = drawn.scenario.rated_volts, drawn.scenario.motor
    assert motor is not None
    no_load_a = rated / motor.ohms / max(drawn.ratio, 1.0)
    supply = drawn.scenario.supply
    u_amps = supply.noise_a + max(supply.step_a, 0.0) / 12**0.5 + 0.003
    decidable = (
        drawn.reply_s <= 0.1
        and no_load_a > max(0.03, 2.8 * u_amps + 0.005)
        and 0.03 <= drawn.tau_s <= 0.7
        and drawn.tau_s * (0.7 * drawn.ratio - 1) > 0.04
    )
    return Told(
        kind=kind,
        number=number,
        outcome=ran.result.outcome,
        reason=ran.result.reason,
        first=_at_first_hold(ran.journal.events),
        decidable=decidable,
        readings_per_s=1 / drawn.reply_s,
        second=drawn.second,
    )


def _at_first_hold(events: Sequence[Event]) -> bool:
    """Whether a full hold said that it turns: the first one at the rated volts, after a kick, or one before it."""
    kicked = False
    for event in events:
        kicked |= event.kind is EventKind.KICK
        if event.kind is EventKind.LOOK and event.text.startswith("Held"):
            if "a turning rotor" in event.text:
                return True
            if kicked:
                return False
    return False


def measure(motors: int, seed: int, workers: int) -> list[Row]:
    """`motors`: stuck ones; a third as many run, a tenth creep."""
    return rows(each(tell, to_tell(motors, seed), workers))


def to_tell(motors: int, seed: int) -> list[tuple[int, int, str]]:
    """Seed, number, kind of every motor."""
    stuck = [(seed, number, STUCK[number // 2 % len(STUCK)]) for number in range(motors)]
    running = [(seed, number, "free") for number in range(motors // STUCK_TIMES)]
    creeping = [(seed, number, "creeping") for number in range(motors // CREEP_TIMES)]
    return [*stuck, *running, *creeping]


def rows(found: list[Told]) -> list[Row]:
    """The table of what was said."""
    of = {kind: [one for one in found if one.kind == kind] for kind in (*STUCK, "free", "creeping")}
    still, free = [one for kind in STUCK for one in of[kind]], of["free"]
    return [
        *(_said_wrongly(what, goal, ones) for what, goal, ones in _not_turning(still, of)),
        _found(
            "running motor recognised at the first hold after a kick, or before, where decidable",
            "≥ 99 %",
            free,
            decidable=True,
        ),
        _found("running motor recognised at the first hold after a kick, or before, all", "≥ 95 %", free),
        *(
            _found(f"the same at {low:g} to {high:.0f} readings/s", "", _at(free, low, high), decidable=decidable)
            for low, high in RATES
            for decidable in (False, True)
        ),
        Row(
            what="running motor ends as freed or runs, its start from rest included",
            goal="none set",
            reached=rate(sum(one.outcome in GOES for one in free), len(free)),
            count=len(free),
            note=_outcomes(free),
        ),
        Row(
            what="running motor said not to run",
            goal="never",
            reached=rate(sum(one.outcome in WRONG for one in free), len(free)),
            count=len(free),
            note=_named([one for one in free if one.outcome in WRONG]),
        ),
    ]


def _not_turning(still: list[Told], of: dict[str, list[Told]]) -> list[tuple[str, str, list[Told]]]:
    rows = [("“freed” or “runs” said of a motor that does not turn", "≤ 1 in 1,000", still)]
    rows += [(f"the same, {kind}", "", of[kind]) for kind in STUCK]
    rows.append(("the same, creeping (friction 80 to 97 % of stall)", "none set", of["creeping"]))
    return rows


def _said_wrongly(what: str, goal: str, ones: list[Told]) -> Row:
    wrong = [one for one in ones if one.outcome in GOES]
    once = sum(one.first for one in ones)
    return Row(
        what=what,
        goal=goal,
        reached=rate(len(wrong), len(ones), per=1000),
        count=len(ones),
        note=f"{_named(wrong)}; {once} passed one hold; {_outcomes(ones)}",
    )


def _found(what: str, goal: str, free: list[Told], *, decidable: bool = False) -> Row:
    ones = [one for one in free if one.decidable] if decidable else free
    by_solver = [sum(one.first for one in ones if one.second is second) for second in (False, True)]
    of_solver = [sum(one.second is second for one in ones) for second in (False, True)]
    return Row(
        what=what + (", decidable" if decidable and not goal else ""),
        goal=goal,
        reached=rate(sum(one.first for one in ones), len(ones)),
        count=len(ones),
        note=f"first solver {by_solver[0]} of {of_solver[0]}, second {by_solver[1]} of {of_solver[1]}; "
        f"not: {_named([one for one in ones if not one.first])}",
    )


def _at(ones: list[Told], low: float, high: float) -> list[Told]:
    return [one for one in ones if low <= one.readings_per_s < high]


def _outcomes(ones: list[Told]) -> str:
    return ", ".join(f"{outcome} {count}" for outcome, count in Counter(str(one.outcome) for one in ones).most_common())


def _named(ones: list[Told]) -> str:
    return ", ".join(f"{one.number} {one.kind} {one.outcome}" for one in ones[:12]) or "none"
