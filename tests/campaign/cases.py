"""One case: item, supply, ceilings, sequence, kind of run and faults, all of it from one seed and number."""

import random
from dataclasses import dataclass, replace

from benchlog.records import RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.start_test import RunIn, StartTest
from drivers.dialect import Dialect
from drivers.simulated.scenario import Scenario
from tests.campaign.faults import Fault, draw_fault
from tests.campaign.items import draw_scenario, log_uniform

AMBIENT_C = 25.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """`sequence`: TOML text for the parser. `hostile`: none, "volts", "amps" or "not a number" is asked of it.

    `latches`: whether the instrument knows its protections; `compound`: takes several units in one message;
    `exponents`: writes its numbers as 1.200E+01. `reply_s`: latency of every reply; None: the usual.
    `unseen_s`: between two runs an output that was left on stays so for as long.
    `start_test`: of a run that captures starts, see start_ups.py, `run_in`: run_ins.py; its `sequence` is empty.
    `dialect`, `quirks` by name, `output`: what the supply speaks, None: the strict SCPI instrument, with one output.
    `holds`, `answers_s`: of a run with the hand on the shaft, s after its question: key down, and when it is answered.
    """

    seed: int
    number: int
    item: str
    scenario: Scenario
    layers: dict[Layer, Limits]
    sequence: str
    hostile: str
    kind: RunKind
    unattended: bool
    latches: bool
    compound: bool
    exponents: bool
    reply_s: float | None
    runs: int
    unseen_s: float
    answer_first: bool
    faults: tuple[Fault, ...]
    holds: tuple[tuple[float, float], ...] = ()
    answers_s: float = 0.0
    start_test: StartTest | None = None
    run_in: RunIn | None = None
    dialect: Dialect | None = None
    quirks: tuple[str, ...] = ()
    output: int = 1


def draw_case(seed: int, number: int) -> Case:
    """The same for the same two numbers, on every machine."""
    source = random.Random(f"{seed}/{number}")
    item, scenario = draw_scenario(source)
    layers = draw_layers(source, scenario.rated_volts)
    sequence, hostile = draw_sequence(source, layers)
    case = Case(
        seed=seed,
        number=number,
        item=item,
        scenario=scenario,
        layers=layers,
        sequence=sequence,
        hostile=hostile,
        kind=source.choices([RunKind.PROBE, RunKind.RECOVERY, RunKind.PROOF], weights=[1, 7, 2])[0],
        unattended=source.random() < 0.7,
        latches=source.random() < 0.8,
        compound=source.random() < 0.75,
        exponents=source.random() < 0.2,
        reply_s=draw_reply(source),
        runs=2 if source.random() < 0.15 else 1,
        answer_first=source.random() < 0.7,
        faults=tuple(draw_fault(source) for _ in range(source.choices((0, 1, 2), weights=(3, 5, 2))[0])),
        unseen_s=log_uniform(source, 0.1, 60.0),
    )
    return _with_hands(random.Random(f"{seed}/{number}/hold"), case)


def _with_hands(source: random.Random, case: Case) -> Case:
    """Some of the cases become runs with the hand on the shaft."""
    if source.random() > 0.08:
        return case
    holds, at_s = [], 0.0
    for _ in range(source.randint(1, 3)):
        down_s = at_s + log_uniform(source, 0.05, 1.5)
        at_s = down_s + log_uniform(source, 0.03, 3.0)
        holds.append((down_s, at_s))
    answers_s = at_s + source.uniform(-0.5, 1.0)
    return replace(case, kind=RunKind.HAND, unattended=False, holds=tuple(holds), answers_s=answers_s)


def draw_reply(source: random.Random) -> float | None:
    """s. Few are very fast: those give thousands of readings, and a slow supply is the harder one to hold."""
    return source.choices(
        (None, source.uniform(0.01, 0.09), log_uniform(source, 0.002, 0.01), log_uniform(source, 4e-4, 2e-3)),
        weights=(35, 54, 10, 1),
    )[0]


def draw_layers(source: random.Random, rated: float) -> dict[Layer, Limits]:
    """The job's volts always, as the program asks for them; the rest here and there."""
    layers = {Layer.JOB: draw_limits(source, volts=round(rated * source.choice((1.0, 1.0, 1.3, 1.6, 0.7)), 3))}
    if source.random() < 0.4:
        layers[Layer.OWNER] = draw_limits(source, volts=rated * source.uniform(0.8, 2.0))
    return layers


def draw_limits(source: random.Random, volts: float) -> Limits:
    def maybe(value: float) -> float | None:
        return value if source.random() < 0.35 else None

    return Limits(
        volts=volts,
        amps=maybe(log_uniform(source, 0.05, 12.0)),
        energy_j=maybe(log_uniform(source, 2.0, 800.0)),
        locked_s=maybe(source.uniform(0.5, 5.0)),
        winding_c=maybe(source.uniform(45.0, 100.0)),
        on_s=maybe(log_uniform(source, 0.2, 6.0)),
        kicks=None if source.random() < 0.7 else source.randint(1, 8),
    )


def draw_sequence(source: random.Random, layers: dict[Layer, Limits]) -> tuple[str, str]:
    """TOML text, and what of it is hostile. Ends early, so that a run is a few hundred readings."""
    head = [
        'name = "drawn"',
        f"limit_s = {source.uniform(16.5, 22.0):.2f}",
        "[probe]",
        f"on_s = {source.uniform(0.05, 0.15):.3f}",
        f"off_s = {source.uniform(0.2, 0.6):.2f}",
    ]
    hostile = source.choices(("none", "volts", "amps", "not a number"), weights=(17, 1, 1, 1))[0]
    steps = ['[[steps]]\nkind = "start"\nvoltage_ratio = 0.5'] if source.random() < 0.7 else []
    for _ in range(source.randint(1, 3)):
        steps.append(draw_kicks(source))
        if source.random() < 0.3:
            steps.append(
                source.choice(('[[steps]]\nkind = "swap"', '[[steps]]\nkind = "hand"\nname = "turn"\ntext = "t"'))
            )
    ceiling = min(limits.volts or 42.4 for limits in layers.values())
    match hostile:
        case "volts":
            steps.append(kicks_text(volts=f"voltage = {ceiling * source.uniform(1.001, 2.0):.4f}"))
        case "amps":
            steps.append(kicks_text(amps=f"current = {source.uniform(20.01, 60.0):.3f}"))
        case "not a number":
            steps.append(kicks_text(volts=f"voltage = {source.choice(('nan', 'inf', '-inf'))}"))
    return "\n".join([*head, *steps]), hostile


def draw_kicks(source: random.Random) -> str:
    return kicks_text(
        volts=f"voltage_ratio = {source.choice((0.5, 0.6, 0.7)):g}"
        if source.random() < 0.4
        else f"voltage_ratio = {source.uniform(0.4, 1.6):.3f}\nif_allowed = true",
        amps=f"current_ratio = {source.uniform(0.3, 1.5):.3f}",
        on_s=log_uniform(source, 0.05, 1.5),
        tries=source.randint(1, 3),
    )


def kicks_text(
    *, volts: str = "voltage_ratio = 0.5", amps: str = "current_ratio = 1.0", on_s: float = 0.2, tries: int = 1
) -> str:
    return (
        f'[[steps]]\nkind = "kicks"\nname = "drawn"\n{volts}\n{amps}\non_s = {on_s:.3f}\noff_s = 0.3\ntries = {tries}'
    )
