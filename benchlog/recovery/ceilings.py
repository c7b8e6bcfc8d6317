"""Hard limits, the layers they come from, and their intersection.

A command above a ceiling is refused, never clamped. The effective ceiling of each quantity is the lowest that any
layer gives, and it is shown with the layer it comes from.
"""

import math
from collections.abc import Mapping
from enum import StrEnum

import msgspec

PROGRAM_VOLTS = 42.4
"""V DC. Source: IEC 60335-1 8.1.4 (as quoted in published texts): above it the program refuses."""


class Layer(StrEnum):
    """Who set a ceiling, from the widest to the narrowest."""

    PROGRAM = "program"
    OWNER = "owner"
    SUPPLY = "supply"
    MOTOR = "motor"
    JOB = "job"
    STEP = "step"


class Limits(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One layer's ceilings; None where the layer says nothing.

    volts V · amps A · energy_j J in any 60 s · locked_s s locked in any 60 s · winding_c °C · on_s s in a row with
    volts set and the output on · kicks a job and day.
    Every value is finite and above zero, or ValueError.
    """

    volts: float | None = None
    amps: float | None = None
    energy_j: float | None = None
    locked_s: float | None = None
    winding_c: float | None = None
    on_s: float | None = None
    kicks: int | None = None

    def __post_init__(self) -> None:
        for name in self.__struct_fields__:
            value = getattr(self, name)
            if value is not None and not (math.isfinite(value) and value > 0):
                raise ValueError(f"{name}: {value} is not a finite number above zero")


class Bound(msgspec.Struct, frozen=True, kw_only=True):
    """One effective ceiling and the layer it comes from."""

    value: float
    layer: Layer


MOST_ON_S = 90_000.0
"""s: a motor is run in for a day at the most; what else a run does ends with its sequence. Starting value."""


class Ceilings(msgspec.Struct, frozen=True, kw_only=True):
    """The intersection of all layers. Every quantity has a bound, because the program's own layer is complete.

    on_s has a default: journals and runs of a time before there was one are read with it.
    """

    volts: Bound
    amps: Bound
    energy_j: Bound
    locked_s: Bound
    winding_c: Bound
    on_s: Bound = Bound(value=MOST_ON_S, layer=Layer.PROGRAM)
    kicks: Bound


PROGRAM = Limits(
    volts=PROGRAM_VOLTS, amps=20.0, energy_j=1000.0, locked_s=3.0, winding_c=140.0, on_s=MOST_ON_S, kicks=60
)
"""The program's own layer. Volts: see PROGRAM_VOLTS. winding_c: class F, 155 °C (IEC 60085 table 1) less 15 K between
hot spot and average: magnets, adhesives and plastics bear no more whatever the insulation does (common practice, no
source). locked_s, kicks: common practice, no source; starting values of this project. amps, energy_j, on_s: starting
values of this project."""
CLASS_A = Limits(winding_c=90.0)
"""The motor's layer where nothing else is known of it: class A, 105 °C less 15 K."""


def intersect(layers: Mapping[Layer, Limits]) -> Ceilings:
    """The lowest of each quantity over the program's layer, the motor's (class A unless it is given) and `layers`.

    Of equal ones the widest layer is named.
    """
    layers = {Layer.MOTOR: CLASS_A} | dict(layers)
    ordered = {Layer.PROGRAM: PROGRAM} | {layer: layers[layer] for layer in Layer if layer in layers}
    bounds: dict[str, Bound] = {}
    for layer, limits in ordered.items():
        for name in Limits.__struct_fields__:
            value = getattr(limits, name)
            if value is not None and (name not in bounds or value < bounds[name].value):
                bounds[name] = Bound(value=value, layer=layer)
    return Ceilings(**bounds)
