"""Scenarios: what hangs on which supply, as TOML files, checked when loaded."""

import random
from importlib.resources import files
from pathlib import Path
from typing import Literal, TypeAlias

import msgspec

from drivers.dialect import Dialect
from drivers.foreign import inert, toml
from drivers.simulated.loads import DriverData
from drivers.simulated.motor import MotorData
from drivers.simulated.supply_model import ArrayData, SupplyData

Expected: TypeAlias = Literal["freed", "runs", "still-stuck", "open", "short", "diode", "electronic", "not-freed"]


class DiodeData(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A diode across the leads; `way` +1 conducts in the polarity first applied, -1 after the leads are swapped."""

    way: Literal[1, -1] = 1


class ResistorData(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A plain resistance across the leads."""

    ohms: float


class Scenario(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One item on one supply. Nothing of motor, driver, diode and resistor: the leads are open.

    `expected`: how the main job ends with the ceilings at rated volts; "not-freed": any end that is neither freed nor
    runs. `look_alike`: a locked motor that imitates motion, for tests.
    """

    item: str
    story: str
    rated_volts: float
    expected: Expected
    look_alike: bool = False
    supply: SupplyData = SupplyData()
    motor: MotorData | None = None
    driver: DriverData | None = None
    diode: DiodeData | None = None
    resistor: ResistorData | None = None
    name: str = ""


def with_array(scenario: Scenario) -> Scenario:
    """The same on a supply that has a measurement array as well."""
    supply = msgspec.structs.replace(scenario.supply, array=ArrayData())
    return msgspec.structs.replace(scenario, supply=supply)


def with_ranges(scenario: Scenario, dialect: Dialect) -> Scenario:
    """The same on a supply with the ranges of the dialect's first output, where the dialect itself says them."""
    if dialect.ranges is None:
        return scenario
    volts, amps = dialect.ranges.volts_max[0], dialect.ranges.amps_max[0]
    return msgspec.structs.replace(
        scenario, supply=msgspec.structs.replace(scenario.supply, volts_max=volts, amps_max=amps)
    )


UNIT_SPREAD = {"ohms": 0.02, "k": 0.02, "coulomb_nm": 0.08, "static_nm": 0.08}
"""By how large a share motors of one kind may differ either way. Invented."""


def unit(scenario: Scenario, source: random.Random) -> Scenario:
    """One of several of that kind: its motor a little different from the next one's."""
    motor = scenario.motor
    if motor is None:
        return scenario
    drawn = {name: getattr(motor, name) * source.uniform(1.0 - by, 1.0 + by) for name, by in UNIT_SPREAD.items()}
    drawn["static_nm"] = max(drawn["static_nm"], drawn["coulomb_nm"])
    return msgspec.structs.replace(scenario, motor=msgspec.structs.replace(motor, **drawn))


class BadScenario(ValueError):
    """A scenario that cannot be used; says which file and where in it."""


def names(*, look_alikes: bool = False) -> tuple[str, ...]:
    """Names of the scenarios that come with the program, or of the look-alikes for tests instead."""
    return tuple(name for name in _file_names() if load(name).look_alike is look_alikes)


def load(name_or_path: str) -> Scenario:
    """A scenario by name, or from a file if the text ends in ".toml". Raises BadScenario."""
    if name_or_path.endswith(".toml"):
        path = Path(name_or_path)
        try:
            return parse(path.read_text(encoding="utf-8"), name=path.stem)
        except (OSError, UnicodeDecodeError) as error:
            raise BadScenario(f"{path.name}: {error}") from error
    known = _file_names()
    if name_or_path not in known:
        raise BadScenario(f'there is no scenario called "{name_or_path}"; there are: {", ".join(known)}')
    text = (files("drivers.simulated") / "scenarios" / f"{name_or_path}.toml").read_text(encoding="utf-8")
    return parse(text, name=name_or_path)


def parse(text: str, *, name: str) -> Scenario:
    """TOML text to a Scenario. Raises BadScenario that names the place: "free.toml: motor.ohms: …"."""
    try:
        scenario = msgspec.convert({**toml(text), "name": name}, Scenario)
    except msgspec.ValidationError as error:
        what, _, place = inert(str(error)).partition(" - at `$")
        raise BadScenario(f"{name}.toml: {place.rstrip('`').lstrip('.') or 'top level'}: {what}") from error
    except ValueError as error:
        raise BadScenario(f"{name}.toml: not TOML: {inert(str(error))}") from error
    problems = _problems(scenario)
    if problems:
        raise BadScenario(f"{name}.toml: {'; '.join(problems)}")
    return scenario


_MAY_BE_ZERO = {
    "viscous", "coulomb_nm", "static_nm", "copper_per_k", "wears", "residue", "ripple", "step", "step_at_rad",
    "limit_headroom", "noise_v", "noise_a", "offset_v", "offset_a", "gain", "clients", "ignore_off",
    "volts_on_terminals", "ambient_c",
}  # fmt: skip
"""Fields that may be 0; every other number has to be above it."""


def _file_names() -> tuple[str, ...]:
    folder = files("drivers.simulated") / "scenarios"
    return tuple(sorted(entry.name.removesuffix(".toml") for entry in folder.iterdir() if entry.name.endswith(".toml")))


def _problems(part: msgspec.Struct, place: str = "") -> list[str]:
    problems = []
    for field in part.__struct_fields__:
        value = getattr(part, field)
        if isinstance(value, msgspec.Struct):
            problems += _problems(value, f"{place}{field}.")
        elif isinstance(value, float | int) and not isinstance(value, bool) and field != "way":
            zero_too = field in _MAY_BE_ZERO
            if not ((value >= 0 if zero_too else value > 0) and value < 1e9):
                problems.append(f"{place}{field}: {value:g} has to be {'0 or ' if zero_too else ''}above 0")
    return problems
