"""Start-up runs for the campaign, from a stream of their own: what the other cases draw stays as it is."""

import random

from msgspec.structs import replace

from benchlog.records import RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.start_test import StartTest, Trigger
from drivers.simulated.scenario import Scenario, with_array
from tests.campaign.cases import Case, draw_layers, draw_reply
from tests.campaign.faults import draw_fault
from tests.campaign.items import draw_scenario, log_uniform

FREE_SHARE, ARRAY_SHARE, HOSTILE_SHARE = 0.45, 0.25, 0.1


def draw_start_up(seed: int, number: int) -> Case:
    """The same for the same two numbers, on every machine."""
    source = random.Random(f"{seed}/{number}/start-up")
    item, scenario = draw_scenario(source)
    free = source.random() < FREE_SHARE
    while free and item != "free":
        item, scenario = draw_scenario(source)
    layers = {layer: _room_for_a_start(source, one) for layer, one in draw_layers(source, scenario.rated_volts).items()}
    hostile = source.choice(("volts", "amps", "not a number")) if source.random() < HOSTILE_SHARE else "none"
    return Case(
        seed=seed,
        number=number,
        item=item,
        scenario=with_array(scenario) if source.random() < ARRAY_SHARE else scenario,
        layers=layers,
        sequence="",
        hostile=hostile,
        kind=RunKind.START_UP,
        unattended=True,
        latches=source.random() < 0.8,
        compound=source.random() < 0.75,
        exponents=source.random() < 0.2,
        reply_s=draw_reply(source),
        runs=2 if source.random() < 0.15 else 1,
        answer_first=True,
        faults=tuple(draw_fault(source) for _ in range(source.choices((0, 1, 2), weights=(4, 5, 1))[0])),
        unseen_s=log_uniform(source, 0.1, 60.0),
        start_test=draw_test(source, scenario, layers, hostile),
    )


def _room_for_a_start(source: random.Random, limits: Limits) -> Limits:
    """Most of what would refuse every test goes: a start is held for half a second or more."""
    short = limits.on_s is not None and limits.on_s < 0.8 and source.random() < 0.8
    return replace(limits, on_s=None) if short else limits


def draw_test(source: random.Random, scenario: Scenario, layers: dict[Layer, Limits], hostile: str) -> StartTest:
    """Mostly within the ceilings. Few starts and short rests: a run is some thousand readings."""
    rated = scenario.rated_volts
    ceiling = min(limits.volts or rated for limits in layers.values())
    stall_a = rated / scenario.motor.ohms if scenario.motor is not None else 1.0
    on_s = min((limits.on_s or 4.0 for limits in layers.values()), default=4.0)
    most_a = min(scenario.supply.amps_max, 20.0, *(limits.amps or 20.0 for limits in layers.values()))
    trigger = source.choices(list(Trigger), weights=(6, 2, 2))[0]
    volts = min(ceiling, scenario.supply.volts_max, rated * source.uniform(0.3, 1.2))
    level = {Trigger.OUTPUT_ON: None, Trigger.AMPS: source.uniform(0.02, 0.7) * stall_a}.get(
        trigger, source.uniform(0.2, 1.1) * volts
    )
    test = StartTest(
        name="drawn",
        volts=volts,
        amps=None if source.random() < 0.6 else min(most_a, log_uniform(source, 0.3, 1.5) * stall_a),
        on_s=min(max(0.5, log_uniform(source, 0.5, 3.0)), max(0.5, on_s * source.uniform(0.4, 1.2))),
        starts=source.randint(1, 3),
        rest_s=log_uniform(source, 0.5, 2.0),
        still_s=log_uniform(source, 2.0, 20.0),
        trigger=trigger,
        level=level,
        hysteresis=0.0 if level is None else level * source.uniform(0.05, 0.6),
        arm_s=source.uniform(1.0, 3.0),
        interleave=source.randint(1, 4) if trigger is Trigger.OUTPUT_ON else 1,
    )
    return _hostile(source, test, hostile, ceiling)


def _hostile(source: random.Random, test: StartTest, hostile: str, ceiling: float) -> StartTest:
    match hostile:
        case "volts":
            return replace(test, volts=ceiling * source.uniform(1.001, 2.0))
        case "amps":
            return replace(test, amps=source.uniform(20.01, 60.0))
        case "not a number":
            return replace(test, **{source.choice(("volts", "on_s")): float("nan")})
    return test
