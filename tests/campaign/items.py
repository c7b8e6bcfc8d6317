"""What hangs on the leads and which supply drives it, drawn at random: motors, and all that only looks like one."""

import math
import random

from drivers.simulated.contact import ContactData, LiftData, ProtectorData
from drivers.simulated.joint import JointData
from drivers.simulated.loads import DriverData
from drivers.simulated.motor import MotorData
from drivers.simulated.scenario import DiodeData, ResistorData, Scenario
from drivers.simulated.supply_model import SupplyData

LOCKED_FOR_GOOD = 20.0
STALL_RATE_K_S, R_MOST_K_W, HOUSING_TIMES, C_LEAST_J_K, C_MOST_J_K = 60.0, 40.0, 10.0, 0.2, 10.0
"""The motors that the heat bound claims to cover, as the README says it; not the program's own constants."""
KINDS = {
    "free": 2, "stuck": 6, "locked": 4, "regrips": 2, "slips": 2, "lifts": 2, "protector": 2, "contact step": 2,
    "open": 1, "short": 1, "diode": 1, "diode across a motor": 1, "driver": 2,
}  # fmt: skip
"""How often each is drawn."""


def log_uniform(source: random.Random, low: float, high: float) -> float:
    return math.exp(source.uniform(math.log(low), math.log(high)))


def draw_scenario(source: random.Random) -> tuple[str, Scenario]:
    """A kind by its word, and an item of that kind on a supply."""
    kind = source.choices(list(KINDS), weights=list(KINDS.values()))[0]
    rated = log_uniform(source, 1.5, 24.0)
    ohms = log_uniform(source, 0.3, 40.0)
    while not 0.08 <= rated / ohms <= 10.0:
        rated, ohms = log_uniform(source, 1.5, 24.0), log_uniform(source, 0.3, 40.0)
    rated = round(rated, 1)
    motor = draw_motor(source, kind, rated, ohms)
    bare = kind in ("open", "short", "diode", "driver")
    driver = DriverData(starts_at_volts=0.5 * rated, stops_at_volts=0.4 * rated, watts=0.04 * rated)
    return kind, Scenario(
        item="bilge pump",
        story="drawn at random",
        rated_volts=rated,
        expected="not-freed",
        name="drawn",
        supply=draw_supply(source),
        motor=None if bare else motor,
        driver=driver if kind == "driver" else None,
        diode=DiodeData(way=source.choice((1, -1))) if kind.startswith("diode") else None,
        resistor=ResistorData(ohms=log_uniform(source, 0.01, 0.1)) if kind == "short" else None,
    )


def draw_motor(source: random.Random, kind: str, rated: float, ohms: float) -> MotorData:
    """Constants from what a motor is known by: stall, no-load speed, time constants, heating rate at stall."""
    stall_a = rated / ohms
    k = 0.9 * rated / log_uniform(source, 200.0, 1200.0)
    stall_nm = k * stall_a
    coulomb = source.uniform(0.03, 0.2) * stall_nm
    watts = rated * stall_a
    heats_k_s = log_uniform(source, 2.0, 58.0) if source.random() < 0.9 else source.uniform(62.0, 150.0)
    winding = max(0.2, watts / heats_k_s)
    return MotorData(
        ohms=ohms,
        henries=ohms * log_uniform(source, 2e-4, 2e-3),
        k=k,
        inertia=log_uniform(source, 0.02, 0.3) * k * k / ohms,
        viscous=source.uniform(0.0, 0.05) * k * stall_nm / rated,
        coulomb_nm=coulomb,
        static_nm=coulomb * source.uniform(1.1, 1.8),
        winding_j_per_k=winding,
        housing_j_per_k=winding * source.uniform(10.0, 30.0),
        winding_k_per_w=source.uniform(3.0, 38.0),
        ambient_c=source.uniform(10.0, 25.0),
        joint=draw_joint(source, kind),
        contact=draw_contact(source, kind),
    )


def draw_joint(source: random.Random, kind: str) -> JointData | None:
    match kind:
        case "stuck":
            return JointData(
                breaks_at=source.uniform(0.3, 1.3),
                wears=source.uniform(0.0, 0.2),
                residue=source.uniform(0.0, 0.3),
                residue_turns=source.uniform(3.0, 30.0),
            )
        case "regrips":
            return JointData(breaks_at=source.uniform(0.3, 0.9), regrips_s=source.uniform(0.2, 3.0))
        case "slips" | "contact step":
            return JointData(breaks_at=source.uniform(0.3, 0.9), slips_rad=source.uniform(0.05, 0.6))
        case "locked" | "lifts" | "protector":
            return JointData(breaks_at=LOCKED_FOR_GOOD)
    return None


def draw_contact(source: random.Random, kind: str) -> ContactData | None:
    match kind:
        case "lifts":
            return ContactData(lift=LiftData(per_s=log_uniform(source, 0.3, 8.0)))
        case "protector":
            opens_s, open_ohm = source.uniform(0.3, 3.0), log_uniform(source, 200.0, 5000.0)
            return ContactData(protector=ProtectorData(opens_s=opens_s, open_ohm=open_ohm))
        case "contact step":
            return ContactData(step=source.uniform(0.2, 1.0), step_at_rad=source.uniform(0.01, 0.3))
    return ContactData(ripple=source.uniform(0.0, 0.08)) if source.random() < 0.4 else None


def draw_supply(source: random.Random) -> SupplyData:
    step = source.choice((0.001, 0.001, 0.01))
    return SupplyData(
        volts_max=source.choice((16.0, 30.0, 32.0, 60.0)),
        amps_max=source.choice((1.0, 3.0, 5.0, 10.0)),
        farads=log_uniform(source, 10e-6, 470e-6),
        preload_ohm=log_uniform(source, 300.0, 3000.0),
        bleed_ohm=log_uniform(source, 500.0, 5000.0),
        setpoint_lag_s=log_uniform(source, 0.0005, 0.003 if source.random() < 0.85 else 0.1),
        slew_v_per_s=log_uniform(source, 1000.0, 20000.0),
        limit_headroom=source.choice((0.0, 0.05, 0.1)),
        noise_v=source.uniform(0.0, 0.003),
        noise_a=source.uniform(0.0, 0.002),
        step_v=step,
        step_a=step if step < 0.01 else source.choice((0.001, 0.01)),
        offset_v=source.uniform(0.0, 0.01),
        offset_a=source.uniform(0.0, 0.004),
        gain=source.uniform(0.0, 0.002),
    )


def inside_heat_limits(scenario: Scenario, ambient_c: float) -> bool:
    """Whether the motor is one that the heat bound claims to cover."""
    motor = scenario.motor
    if motor is None:
        return False
    least = min(C_MOST_J_K, max(C_LEAST_J_K, scenario.rated_volts**2 / motor.ohms / STALL_RATE_K_S))
    return (
        motor.winding_j_per_k >= least
        and motor.winding_k_per_w <= R_MOST_K_W
        and motor.housing_j_per_k >= HOUSING_TIMES * least
        and motor.ambient_c <= ambient_c
    )


def capacitor_overshoot(scenario: Scenario) -> float:
    """Share by which the output capacitor and the winding's inductance carry the current past a limit that binds.

    Source: overshoot of a second-order system, exp(-pi z / sqrt(1 - z**2)); z = R/2 sqrt(C/L) for a current source
    into C in parallel with L and R in series. Textbook, from memory.
    """
    motor = scenario.motor
    if motor is None:
        return 0.0
    damping = 0.5 * motor.ohms * math.sqrt(scenario.supply.farads / motor.henries)
    return math.exp(-math.pi * damping / math.sqrt(1 - damping**2)) if damping < 1 else 0.0


def draws_evenly(kind: str, scenario: Scenario) -> bool:
    """Whether the load never grows by itself from one instant to the next, so that the supply's limit binds it."""
    return kind in ("free", "stuck", "locked", "regrips", "open", "short") and (
        scenario.motor is None or scenario.motor.contact is None
    )
