"""Stuck motors that look like running ones, running ones, and what the shipped recovery says of them."""

from dataclasses import dataclass
from pathlib import Path

from benchlog.outcome import Outcome
from benchlog.records import EventKind
from tests.benchmarks.accuracy.pool import each
from tests.benchmarks.accuracy.population import STUCK, draw, run
from tests.benchmarks.accuracy.rows import Row, rate

STUCK_TIMES = 3
"""Stuck motors for every two that run: the rate to be shown is small."""
GOES = (Outcome.FREED, Outcome.RUNS)
SAID_UNSURE = (Outcome.UNDETERMINED,)


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What was said of a motor. `first`: already at the first full look; `decidable`: as the goal has it."""

    kind: str
    number: int
    outcome: Outcome
    reason: str
    first: bool
    turned: bool
    decidable: bool
    readings_per_s: float


def tell(asked: tuple[int, int, str], folder: Path) -> Told:
    seed, number, kind = asked
    drawn = draw(seed, number, kind)
    ran = run(drawn, folder)
    held = [event for event in ran.journal.events if event.kind is EventKind.LOOK and event.text.startswith("Held")]
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
        first=bool(held) and "a turning rotor" in held[0].text,
        turned=ran.max_speed > 0.0,
        decidable=decidable,
        readings_per_s=1 / drawn.reply_s,
    )


def measure(motors: int, seed: int, workers: int) -> list[Row]:
    """`motors`: stuck ones; two thirds as many run."""
    stuck = [(seed, number, STUCK[number // 2 % len(STUCK)]) for number in range(motors)]
    running = [(seed, number, "free") for number in range(2 * motors // STUCK_TIMES)]
    creeping = [(seed, number, "creeping") for number in range(motors // 10)]
    found = each(tell, [*stuck, *running, *creeping], workers)
    of = {kind: [one for one in found if one.kind == kind] for kind in (*STUCK, "free", "creeping")}
    still = [one for kind in STUCK for one in of[kind]]
    rows = [
        Row(
            what="“freed” or “runs” said of a motor that does not turn",
            goal="≤ 1 in 1,000",
            reached=rate(sum(one.outcome in GOES for one in still), len(still), per=1000),
            count=len(still),
            note="; ".join(
                f"{kind} {sum(one.outcome in GOES for one in of[kind])} of {len(of[kind])}" for kind in STUCK
            ),
        ),
        Row(
            what="the same of one that creeps (friction 80 to 97 % of stall)",
            goal="none set",
            reached=rate(sum(one.outcome in GOES for one in of["creeping"]), len(of["creeping"]), per=1000),
            count=len(of["creeping"]),
        ),
    ]
    decidable = [one for one in of["free"] if one.decidable]
    for what, goal, ones in (
        ("running motor found, where it is decidable", "≥ 99 %", decidable),
        ("running motor found, all", "≥ 95 %", of["free"]),
    ):
        missed = [f"{one.number} {one.outcome}" for one in ones if one.outcome not in GOES]
        rows.append(
            Row(
                what=what,
                goal=goal,
                reached=rate(sum(one.outcome in GOES for one in ones), len(ones)),
                count=len(ones),
                note=f"at the first full look {rate(sum(one.first for one in ones), len(ones))}; "
                f"not found: {', '.join(missed[:6]) or 'none'}",
            )
        )
    wrong = [one for one in of["free"] if one.outcome not in (*GOES, *SAID_UNSURE)]
    rows.append(
        Row(
            what="running motor told as something else than undetermined where it is not found",
            goal="never",
            reached=rate(len(wrong), len(of["free"])),
            count=len(of["free"]),
            note=", ".join(f"{one.number} {one.outcome}" for one in wrong[:8]) or "none",
        )
    )
    return rows
