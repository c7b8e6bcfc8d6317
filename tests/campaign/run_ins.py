"""Run-ins for the campaign, short ones, drawn as its start-up runs are and from a stream of their own."""

import random
from dataclasses import replace

from msgspec.structs import replace as of_limits

from benchlog.motor.heat import MOST_J_G_K, body_of
from benchlog.records import RunKind
from benchlog.recovery.start_test import RunIn
from tests.campaign.cases import Case
from tests.campaign.items import log_uniform
from tests.campaign.start_ups import draw_start_up

WEIGHED_SHARE, SHORT_SHARE = 0.5, 0.1


def draw_run_in(seed: int, number: int) -> Case:
    """The same for the same two numbers, on every machine. The mass is what the motor's true heat capacity allows."""
    case, source = draw_start_up(seed, number), random.Random(f"{seed}/{number}/run-in")
    assert case.start_test is not None
    asked = RunIn(
        volts=case.start_test.volts,
        amps=case.start_test.amps,
        at_most_s=log_uniform(source, 12.0, 40.0),
        pace_s=log_uniform(source, 0.02, 1.0),
        look_every_s=log_uniform(source, 5.0, 20.0),
        flat_for_s=source.choice((0.0, 10.0)),
        restart=source.random() < 0.7,
        mass_g=_mass_g(case) if source.random() < WEIGHED_SHARE else None,
    )
    # Most would be refused for less on-time than they ask for.
    short = source.random() < SHORT_SHARE
    layers = {layer: one if short else of_limits(one, on_s=None) for layer, one in case.layers.items()}
    return replace(case, kind=RunKind.RUN_IN, start_test=None, run_in=asked, layers=layers)


def _mass_g(case: Case) -> float | None:
    """What the motor weighs at least, by its heat; None where its ways out are worse than such a mass may have."""
    motor = case.scenario.motor
    if motor is None:
        return None
    mass_g = max(1.0, (motor.housing_j_per_k + motor.winding_j_per_k) / MOST_J_G_K)
    body = body_of(case.scenario.rated_volts**2 / motor.ohms, mass_g)
    fits = motor.winding_k_per_w <= body.through_k_w and motor.housing_k_per_w <= body.air_k_w
    return mass_g if fits else None
