"""The vocabulary of a sequence, as data, and what makes one admissible.

A sequence is a TOML file: a probe, then steps in order. Volts and amps are given either outright or as a ratio:
volts of the motor's rated volts, amps of the stall current at rated volts (rated volts / probed resistance).
"""

import math
from importlib.resources import files
from typing import TypeAlias

import msgspec

from benchlog.errors import Refused
from benchlog.recovery.ceilings import Ceilings
from drivers.foreign import inert, toml

_TEXTS = ("name", "about", "text", "only_after")


class Probe(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A short, small, current-limited look at the winding."""

    levels_a: tuple[float, ...] = (0.02, 0.05, 0.1)
    compliance_v: float = 2.0
    on_s: float = 0.15
    off_s: float = 1.0


class Start(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, tag_field="kind", tag="start"):
    """A gentle start before any kick: a motor that turns here was not stuck."""

    name: str = "gentle start"
    voltage: float | None = None
    voltage_ratio: float | None = None
    on_s: float = 0.15


class Kicks(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, tag_field="kind", tag="kicks"):
    """A rung: the same kick, a few tries.

    `if_allowed`: left out where a ceiling is lower than it asks. `only_after`: left out where the hand or swap step of
    that name was skipped.
    """

    name: str
    voltage: float | None = None
    voltage_ratio: float | None = None
    current: float | None = None
    current_ratio: float | None = None
    on_s: float
    off_s: float
    tries: int
    if_allowed: bool = False
    only_after: str | None = None


class Hand(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, tag_field="kind", tag="hand"):
    """Something a person does between rungs, output off."""

    name: str
    text: str


class Swap(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, tag_field="kind", tag="swap"):
    """The leads are swapped by hand, output off, motor at rest. Never without a person."""

    name: str = "swap leads"
    text: str = "Swap the two motor leads. Not with a diode or a driver board across the motor."


Step: TypeAlias = Start | Kicks | Hand | Swap


class Sequence(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A whole recovery. `limit_s`: it ends by then, whatever is left to try."""

    name: str
    about: str = ""
    limit_s: float = 180.0
    probe: Probe = Probe()
    steps: tuple[Step, ...] = ()


def parse(text: str) -> Sequence:
    """TOML text to a Sequence. Raises Refused naming the place: "steps[3].voltage: …"."""
    try:
        sequence = msgspec.convert(toml(text), Sequence)
    except msgspec.ValidationError as error:
        what, _, place = inert(str(error)).partition(" - at `$")
        raise Refused(f"{place.rstrip('`').lstrip('.') or 'sequence'}: {what}") from error
    except ValueError as error:
        raise Refused(f"sequence: not TOML: {inert(str(error))}") from error
    problems = _shape_problems(sequence)
    if problems:
        raise Refused("; ".join(problems))
    return sequence


def built_in(name: str) -> Sequence:
    """A sequence that comes with the program. Raises Refused with the names there are."""
    folder = files("benchlog.recovery") / "sequences"
    names = sorted(entry.name.removesuffix(".toml") for entry in folder.iterdir() if entry.name.endswith(".toml"))
    if name not in names:
        raise Refused(f'sequence: there is none called "{name}"; there are: {", ".join(names)}')
    return parse((folder / f"{name}.toml").read_text(encoding="utf-8"))


def volts_of(step: Start | Kicks, rated_volts: float) -> float:
    """The step's volts. A checked step gives exactly one of voltage and voltage_ratio."""
    return step.voltage if step.voltage is not None else (step.voltage_ratio or 0.0) * rated_volts


def amps_of(step: Kicks, stall_amps: float) -> float:
    """The step's current limit, with the stall current at rated volts known."""
    return step.current if step.current is not None else (step.current_ratio or 0.0) * stall_amps


def above_ceilings(sequence: Sequence, rated_volts: float, ceilings: Ceilings) -> list[str]:
    """Every place of the sequence that asks for more than a ceiling, as sentences that name the place."""
    problems = []
    for index, step in enumerate(sequence.steps):
        if not isinstance(step, Start | Kicks) or (isinstance(step, Kicks) and step.if_allowed):
            continue
        volts = volts_of(step, rated_volts)
        if volts > ceilings.volts.value:
            field = "voltage" if step.voltage is not None else "voltage_ratio"
            problems.append(
                f"steps[{index}].{field}: {volts:g} V is above the {ceilings.volts.layer}'s ceiling of "
                f"{ceilings.volts.value:g} V"
            )
        if step.on_s > ceilings.on_s.value:
            problems.append(
                f"steps[{index}].on_s: {step.on_s:g} s is above the {ceilings.on_s.layer}'s ceiling of "
                f"{ceilings.on_s.value:g} s in a row"
            )
        if isinstance(step, Kicks) and step.current is not None and step.current > ceilings.amps.value:
            problems.append(
                f"steps[{index}].current: {step.current:g} A is above the {ceilings.amps.layer}'s ceiling of "
                f"{ceilings.amps.value:g} A"
            )
    return problems


_RANGES: dict[str, tuple[float, float]] = {
    "voltage": (0.01, 1e3),  # the ceilings decide; here only the absurd is named
    "voltage_ratio": (0.01, 2.0),
    "current": (0.001, 1e3),
    "current_ratio": (0.01, 1.5),
    "on_s": (0.02, 2.0),
    "off_s": (0.2, 600.0),
    "tries": (1, 60),
    "compliance_v": (0.1, 6.0),
    "limit_s": (1.0, 3600.0),
}
"""Field: (lowest, highest). Starting values of this project."""


def _shape_problems(sequence: Sequence) -> list[str]:
    problems = _range_problems("", sequence) + _range_problems("probe.", sequence.probe)
    if not sequence.probe.levels_a:
        problems.append("probe.levels_a: at least one level")
    for index, level in enumerate(sequence.probe.levels_a):
        if not (math.isfinite(level) and 0.001 <= level <= 1.0):
            problems.append(f"probe.levels_a[{index}]: {level} A is outside 0.001 to 1 A")
    if not sequence.steps:
        problems.append("steps: none")
    for index, step in enumerate(sequence.steps):
        problems += _range_problems(f"steps[{index}].", step)
        if isinstance(step, Kicks) and step.only_after not in (None, *_names_before(sequence, index)):
            problems.append(f'steps[{index}].only_after: no hand or swap step called "{step.only_after}" comes before')
        pairs = {Start: ("voltage",), Kicks: ("voltage", "current")}.get(type(step), ())
        for name in pairs:
            if (getattr(step, name) is None) == (getattr(step, f"{name}_ratio") is None):
                problems.append(f"steps[{index}]: exactly one of {name} and {name}_ratio")
    return problems


def _names_before(sequence: Sequence, index: int) -> list[str]:
    return [step.name for step in sequence.steps[:index] if isinstance(step, Hand | Swap)]


def _range_problems(place: str, part: msgspec.Struct) -> list[str]:
    problems = []
    for name in part.__struct_fields__:
        value = getattr(part, name)
        if name in _TEXTS and inert(lines := (value or "").replace("\n", "")) != lines:
            problems.append(f"{place}{name}: holds characters that can't be printed")
        if name in _RANGES and value is not None:
            low, high = _RANGES[name]
            if not (math.isfinite(value) and low <= value <= high):
                problems.append(f"{place}{name}: {value} is outside {low:g} to {high:g}")
    return problems
