"""Small calculations about a board, each as data: what goes in, what comes out, the formula, where it is from.

A window or a terminal shows any of them from its description. Numbers are in the unit named beside them, without a
prefix (Ω, V, A, C, F, s, W; also %, Ah, days). Limits of a result are its least and most over all corners of what is
uncertain; every formula here is monotone in each of those, so the corners hold them.
"""

import itertools
import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from benchlog.board.notation import write, write_two
from benchlog.board.series import at_least
from benchlog.errors import Refused

MOST_VOLTS = 42.4
"""V: the program's own bound, also for what is only computed."""
CHARGER_VOLTS, CHARGER_SHARE = 1200.0, 0.10
DAYS_A_MONTH = 30.0
_HOURS_A_DAY = 24.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Input:
    """What is asked. Within `low` to `high`, both included, in `unit`. Without a default it must be given, unless
    `optional`."""

    name: str
    words: str
    unit: str
    low: float
    high: float
    default: float | None = None
    optional: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """One figure with its limits, in `unit`; the limits are equal to it where nothing is uncertain."""

    name: str
    unit: str
    value: float
    low: float
    high: float

    @property
    def text(self) -> str:
        """ "output 3.84 V (3.64 to 4.04 V)"."""
        around = "" if self.low == self.high else f" ({write_two(self.low, 'to', self.high, self.unit)})"
        return f"{self.name} {write(self.value, self.unit)}{around}"


Spread = tuple[float, float, float]
Found = tuple[tuple[Spread, ...], tuple[str, ...]]
Work = Callable[[Mapping[str, float]], Found]


@dataclass(frozen=True, slots=True, kw_only=True)
class Calculator:
    """One calculation. `gives`: name and unit of each result, in the order in which `work` computes them.

    `work` takes the inputs by name and gives value, least and most of each result, and remarks. It raises Refused for
    inputs that do not fit each other. `cautions` are shown beside every use.
    """

    name: str
    words: str
    inputs: tuple[Input, ...]
    gives: tuple[tuple[str, str], ...]
    formula: str
    source: str
    work: Work
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Calculation:
    """What came out of one calculator, and what went in, defaults too."""

    calculator: Calculator
    given: dict[str, float]
    results: tuple[Result, ...]
    remarks: tuple[str, ...]

    @property
    def text(self) -> str:
        """One line for a finding: the results with limits, what they are from, and the remarks."""
        inputs = ", ".join(
            f"{one.name} {write(self.given[one.name], one.unit, 6)}"
            for one in self.calculator.inputs
            if one.name in self.given
        )
        results = ", ".join(one.text for one in self.results)
        return ". ".join((f"{self.calculator.words}: {results}; from {inputs}", *self.remarks))


def calculate(name: str, given: Mapping[str, float]) -> Calculation:
    """Raises Refused for a calculator or input that is none, a missing input, or one out of its range."""
    calculator = CALCULATORS.get(name)
    if calculator is None:
        raise Refused(f'calculate: "{name[:40]}" is none of {", ".join(CALCULATORS)}')
    known = {one.name: one for one in calculator.inputs}
    for key in given:
        if key not in known:
            raise Refused(f'{name}: "{key[:40]}" is none of its inputs: {", ".join(known)}')
    values: dict[str, float] = {}
    for one in calculator.inputs:
        value = given.get(one.name, one.default)
        if value is None:
            if one.optional:
                continue
            raise Refused(f"{name}: {one.name} is missing ({one.words}, {span(one)})")
        if not one.low <= value <= one.high:
            raise Refused(f"{name}: {one.name}: {write(value, one.unit, 6)} is not within {span(one)}")
        values[one.name] = value
    figures, remarks = calculator.work(values)
    results = tuple(
        Result(name=label, unit=unit, value=value, low=low, high=high)
        for (label, unit), (value, low, high) in zip(calculator.gives, figures, strict=True)
    )
    return Calculation(calculator=calculator, given=values, results=results, remarks=remarks)


def span(one: Input) -> str:
    """ "100 mΩ to 100 MΩ"."""
    return write_two(one.low, "to", one.high, one.unit, 6)


def _limits(formula: Callable[..., float], *uncertain: tuple[float, float]) -> Spread:
    """The formula at its values, and its least and most where each may be off by its share."""
    corners = [formula(*c) for c in itertools.product(*((v * (1 - share), v * (1 + share)) for v, share in uncertain))]
    value = formula(*(v for v, _ in uncertain))
    return value, min(corners), max(corners)


def _exact(value: float) -> Spread:
    return value, value, value


def _divider(given: Mapping[str, float]) -> Found:
    volts, share = given["supply"], given["tolerance"] / 100
    both = ((given["upper"], share), (given["lower"], share))
    return (
        _limits(lambda upper, lower: volts * lower / (upper + lower), *both),
        _limits(lambda upper, lower: volts / (upper + lower), *both),
        _limits(lambda upper, lower: upper * lower / (upper + lower), *both),
    ), ()


def _led(given: Mapping[str, float]) -> Found:
    volts, forward, amps = given["supply"], given["forward"], given["current"]
    spread = (forward, given["forward-spread"] / 100)
    if volts <= forward:
        raise Refused(f"led: the supply's {write(volts, 'V')} is not above the LED's {write(forward, 'V')}")
    exact = (volts - forward) / amps
    chosen = at_least(exact, "E24")
    resistor = (chosen, given["tolerance"] / 100)
    current = _limits(lambda ohm, on: max(0.0, volts - on) / ohm, resistor, spread)
    power = _limits(lambda ohm, on: max(0.0, volts - on) ** 2 / ohm, resistor, spread)
    remarks = [
        f"Rate the resistor for {write(2 * power[2], 'W')} or more: twice its power (common practice, no source)"
    ]
    if current[1] == 0:
        remarks.append("It may stay dark: the LED may need all of the supply's volts")
    return (_exact(exact), _exact(chosen), current, power), tuple(remarks)


def _gate(given: Mapping[str, float]) -> Found:
    volts, share = given["drive"], given["tolerance"] / 100
    both = ((given["resistor"], share), (given["pulldown"], share))
    farad = given["charge"] / volts
    return (
        _limits(lambda series, down: volts * down / (series + down), *both),
        _exact(farad),
        _limits(lambda series, down: series * down / (series + down) * farad, *both),
        _limits(lambda down: down * farad, both[1]),
        _limits(lambda series: volts / series, both[0]),
    ), ()


def _charger_amps(ohm: float, tolerance: float) -> Spread:
    relation = (CHARGER_VOLTS, CHARGER_SHARE)
    return _limits(lambda volts, program: volts / program, relation, (ohm, tolerance / 100))


def _charge_current(given: Mapping[str, float]) -> Found:
    amps = _charger_amps(given["resistor"], given["tolerance"])
    remarks = [_against_the_cell(amps, given.get("cell-limit"))]
    if math.isclose(given["resistor"], 1500.0, rel_tol=0.01):
        remarks.append("1.5 kΩ is commonly read as about 700 mA (common practice, no source): 12 % below this relation")
    return (amps,), tuple(remarks)


def _charge_resistor(given: Mapping[str, float]) -> Found:
    exact = CHARGER_VOLTS / given["current"]
    chosen = at_least(exact, "E24")
    amps = _charger_amps(chosen, given["tolerance"])
    limit = given.get("cell-limit")
    if limit is not None and amps[2] > limit:
        raise Refused(
            f"charge-resistor: up to {write(amps[2], 'A')} could flow with {write(chosen, 'Ω')}, above the cell's "
            f"{write(limit, 'A')}"
        )
    return (_exact(exact), _exact(chosen), amps), (_against_the_cell(amps, limit),)


def _against_the_cell(amps: Spread, limit: float | None) -> str:
    if limit is None:
        return "Not compared with the cell: its own largest charge current was not given"
    if amps[2] > limit:
        return f"TOO MUCH for the cell: up to {write(amps[2], 'A')} against its {write(limit, 'A')}"
    return f"Within the cell's {write(limit, 'A')}"


def _days(given: Mapping[str, float]) -> Found:
    usable, share = given["usable"] / 100, given["tolerance"] / 100
    rate = -math.log1p(-given["self-discharge"] / 100) / DAYS_A_MONTH

    def lasts(capacity: float, draw: float) -> float:
        a_day = draw * _HOURS_A_DAY
        if rate == 0:
            return usable * capacity / a_day
        return math.log1p(rate * usable * capacity / (a_day + rate * capacity * (1 - usable))) / rate

    return (_limits(lasts, (given["capacity"], share), (given["draw"], share)),), ()


def _ohm(name: str, words: str) -> Input:
    return Input(name=name, words=words, unit="Ω", low=0.1, high=100e6)


def _volts(name: str, words: str) -> Input:
    return Input(name=name, words=words, unit="V", low=0.1, high=MOST_VOLTS)


def _share(name: str, words: str, default: float, low: float = 0.0, high: float = 50.0) -> Input:
    return Input(name=name, words=words, unit="%", low=low, high=high, default=default)


_RESISTORS = _share("tolerance", "of the resistors", 5.0)
_PROGRAM = _share("tolerance", "of the resistor; 0 as measured", 0.0)
_CELL_LIMIT = Input(
    name="cell-limit",
    words="largest charge current by the cell's own data",
    unit="A",
    low=0.001,
    high=100.0,
    optional=True,
)
_CELL = (
    "A swollen, dented, leaking or warm cell is not charged and not opened: the job is refused",
    "Never above the charge current and end voltage of the cell's own data, nor outside its temperatures",
    "Local rules and licensed practice come first",
)
_CHARGER_SOURCE = (
    "relation and ± 10 % as published for the common linear charger with a 1200 V/R program pin, 1.2 to 10 kΩ; other "
    "parts have other relations: read the part's own data"
)

CALCULATORS: dict[str, Calculator] = {
    one.name: one
    for one in (
        Calculator(
            name="divider",
            words="Divider",
            inputs=(
                _volts("supply", "across both resistors"),
                _ohm("upper", "from the supply to the output"),
                _ohm("lower", "from the output to ground"),
                _RESISTORS,
            ),
            gives=(("output", "V"), ("current", "A"), ("source resistance", "Ω")),
            formula="output = supply · lower / (upper + lower), nothing drawn from it",
            source="Ohm's and Kirchhoff's laws",
            work=_divider,
        ),
        Calculator(
            name="led",
            words="Series resistor of an LED",
            inputs=(
                _volts("supply", "across LED and resistor, at its highest"),
                _volts("forward", "of the LED, or of all in the chain"),
                Input(name="current", words="through the LED", unit="A", low=1e-4, high=3.0),
                _share("forward-spread", "of the forward voltage; starting value of this project", 10.0),
                _RESISTORS,
            ),
            gives=(("exactly", "Ω"), ("next E24 up", "Ω"), ("current with it", "A"), ("power in it", "W")),
            formula="R = (supply − forward) / current; P = (supply − forward)² / R of the next E24 up",
            source="Ohm's and Kirchhoff's laws; IEC 60063 for E24",
            work=_led,
        ),
        Calculator(
            name="gate",
            words="Gate resistor and pulldown",
            inputs=(
                _volts("drive", "from the driver, on"),
                _ohm("resistor", "from the driver to the gate"),
                _ohm("pulldown", "from the gate to the source"),
                Input(name="charge", words="gate charge at the drive's volts", unit="C", low=1e-11, high=1e-5),
                _RESISTORS,
            ),
            gives=(
                ("gate", "V"),
                ("capacitance", "F"),
                ("time constant", "s"),
                ("time constant with the driver open", "s"),
                ("peak current", "A"),
            ),
            formula="gate = drive · pulldown / (resistor + pulldown); C = charge / drive; τ = C · (resistor ‖ "
            "pulldown); driver open: τ = C · pulldown; peak = drive / resistor",
            source="Ohm's and Kirchhoff's laws; one C for all of the charge is an approximation (common practice, no "
            "source), and its limits are those of the resistors alone",
            work=_gate,
        ),
        Calculator(
            name="charge-current",
            words="Charge current of a linear lithium charger",
            inputs=(
                Input(name="resistor", words="at the program pin", unit="Ω", low=1200.0, high=10e3),
                _PROGRAM,
                _CELL_LIMIT,
            ),
            gives=(("current", "A"),),
            formula="I = 1200 V / R, ± 10 %",
            source=_CHARGER_SOURCE,
            work=_charge_current,
            cautions=_CELL,
        ),
        Calculator(
            name="charge-resistor",
            words="Program resistor of a linear lithium charger",
            inputs=(
                Input(name="current", words="wanted", unit="A", low=0.12, high=1.0),
                _PROGRAM,
                _CELL_LIMIT,
            ),
            gives=(("exactly", "Ω"), ("next E24 up", "Ω"), ("current with it", "A")),
            formula="R = 1200 V / I; I = 1200 V / R ± 10 % with the next E24 up",
            source=_CHARGER_SOURCE,
            work=_charge_resistor,
            cautions=_CELL,
        ),
        Calculator(
            name="days",
            words="Days between charges",
            inputs=(
                Input(name="capacity", words="of the full cell or battery", unit="Ah", low=0.001, high=1000.0),
                Input(name="draw", words="average, day and night", unit="A", low=1e-6, high=100.0),
                _share("usable", "of the capacity; starting value of this project", 80.0, 10.0, 100.0),
                _share("self-discharge", "of what is held, in 30 days; starting value of this project", 3.0),
                _share("tolerance", "of capacity and draw each; starting value of this project", 10.0),
            ),
            gives=(("lasts", "days"),),
            formula="ln(1 + k · usable · capacity / (draw + k · capacity · (1 − usable))) / k, with k = −ln(1 − "
            "self-discharge) / 30 days; without self-discharge usable · capacity / draw",
            source="charge balance dQ/dt = −draw − k Q, solved in closed form",
            work=_days,
            cautions=("A label gives the capacity of a new cell: an old or cold one holds less", *_CELL),
        ),
    )
}
