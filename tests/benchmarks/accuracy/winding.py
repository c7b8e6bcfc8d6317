"""The probe: its verdict, its resistance, and what it puts into a motor."""

from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from benchlog.outcome import WindingVerdict
from benchlog.records import RunKind
from tests.benchmarks.accuracy.pool import each
from tests.benchmarks.accuracy.population import Drawn, draw, run
from tests.benchmarks.accuracy.rows import Row, rate

KINDS = ("locked", "locked", "free", "free", "open", "short", "diode", "electronic")
"""Half of them windings: held ones, and free ones that the probe may turn."""
RIGHT = {
    "locked": WindingVerdict.WINDING,
    "free": WindingVerdict.WINDING,
    "open": WindingVerdict.OPEN,
    "short": WindingVerdict.SHORT,
    "diode": WindingVerdict.DIODE,
    "electronic": WindingVerdict.ELECTRONIC,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Probed:
    """`ohm`: the true resistance at the angle and temperature of the probe."""

    kind: str
    number: int
    verdict: WindingVerdict
    ohm: float
    told_ohm: float | None
    low_ohm: float | None
    high_ohm: float | None
    joules: float
    why: str


def probe(asked: tuple[int, int], folder: Path) -> Probed:
    seed, number = asked
    kind = KINDS[number // 2 % len(KINDS)]
    drawn = _with_a_plain_contact(draw(seed, number, kind))
    ran = run(drawn, folder, RunKind.PROBE)
    result, motor = ran.result, drawn.scenario.motor
    return Probed(
        kind=kind,
        number=number,
        verdict=result.winding_verdict,
        ohm=motor.ohms if motor is not None else 0.0,
        told_ohm=result.resistance_ohm,
        low_ohm=result.resistance_low_ohm,
        high_ohm=result.resistance_high_ohm,
        joules=ran.energy_j,
        why=result.reason,
    )


def _with_a_plain_contact(drawn: Drawn) -> Drawn:
    # With a constant drop at the brushes V/I has no one value that could be right.
    return drawn if drawn.extras is None else replace(drawn, extras=replace(drawn.extras, brush_volts=0.0))


def measure(motors: int, seed: int, workers: int) -> list[Row]:
    return rows(each(probe, [(seed, number) for number in range(motors)], workers))


def rows(found: list[Probed]) -> list[Row]:
    """The table of what was found."""
    told = [one for one in found if one.told_ohm is not None and one.kind == "locked"]
    held = sum(one.low_ohm <= one.ohm <= one.high_ohm for one in told)  # type: ignore[operator]
    widths = [(one.high_ohm - one.low_ohm) / one.ohm for one in told]  # type: ignore[operator]
    locked = sum(one.kind == "locked" for one in found)
    right = sum(one.verdict is RIGHT[one.kind] for one in found)
    undecided = sum(one.verdict is WindingVerdict.UNDECIDED for one in found)
    wrong = [f"{one.number} {one.kind} {one.verdict}" for one in found if one.verdict is not RIGHT[one.kind]]
    windings = [one for one in found if one.kind in ("locked", "free")]
    return [
        Row(
            what="winding verdict right",
            goal="≥ 99.5 %",
            reached=rate(right, len(found)),
            count=len(found),
            note=f"{undecided} undecided; not right: {', '.join(wrong[:8]) or 'none'}",
        ),
        Row(
            what="resistance inside its 95 % interval, shaft held",
            goal="94 to 99 %",
            reached=rate(held, len(told)),
            count=len(told),
            note=f"stated for {len(told)} of {locked}; median width {100 * float(np.median(widths)):.2g} %, goal ≤ 4 %",
        ),
        Row(
            what="energy of a probe, into a winding",
            goal="≤ 0.5 J",
            reached=f"worst {max(one.joules for one in windings):.3f} J",
            count=len(windings),
            note=f"median {float(np.median([one.joules for one in windings])):.3f} J; "
            f"into anything else worst {max(one.joules for one in found):.2f} J",
        ),
    ]
