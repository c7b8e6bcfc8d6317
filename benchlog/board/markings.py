"""What a marking on a resistor or capacitor can mean: every reading, with the code that gives it.

Sources: IEC 60062 for digits, letters and tolerance letters (multipliers 8 and 9, capacitors and tolerances from
memory); the two-digit codes and letters of EIA-96. A number printed as such, and R as the point of picofarads, are
common practice without a source.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from benchlog.board.notation import write, write_two
from benchlog.board.series import COARSE, FINE, SERIES, lies_on, place
from benchlog.errors import Refused

THREE, FOUR, LETTER, R_NOTATION, EIA_96 = "three-digit", "four-digit", "letter code", "R-notation", "EIA-96"
JUMPER, AS_SUCH = "jumper", "printed as such"

EIA_96_POWERS = {"Z": -3, "Y": -2, "R": -2, "X": -1, "S": -1, "A": 0, "B": 1, "H": 1, "C": 2, "D": 3, "E": 4, "F": 5}
_DIGIT_POWERS = {**{str(power): power for power in range(8)}, "8": -2, "9": -1}
_POINTS: dict[str, dict[str, tuple[int, ...]]] = {
    "Ω": {"L": (-3,), "R": (0,), "K": (3,), "k": (3,), "M": (6,), "m": (6, -3), "G": (9,), "T": (12,)},
    "F": {"p": (-12,), "P": (-12,), "R": (-12,), "n": (-9,), "N": (-9,), "µ": (-6,), "m": (-3,)},
}
"""Letters in place of the point, and their powers of ten. A small m on a resistor may be a mega typed small."""
_EITHER_SHARE = {"B": 0.1, "C": 0.25, "D": 0.5, "F": 1, "G": 2, "J": 5, "K": 10, "M": 20, "N": 30}
TOLERANCES: dict[str, tuple[float, float]] = {
    **{letter: (-share, share) for letter, share in _EITHER_SHARE.items()},
    "Q": (-10, 30),
    "T": (-10, 50),
    "S": (-20, 50),
    "Z": (-20, 80),
}
"""% below and above; the last four are of capacitors only."""
_PICO_LETTERS = "BCDFG"
_PICO_BELOW = 10e-12
"""F: below this, these letters count in pF."""

_MOST = 12
_KNOWN = {
    "Ω": "three or four digits, a letter as the point (4K7, R47), or two digits and a letter of EIA-96",
    "F": "two to four digits or a letter as the point (4n7), each with a tolerance letter behind it or none",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One meaning of a marking. `value`, `low`, `high` in `unit` (Ω or F); the limits where a tolerance is marked."""

    value: float
    unit: str
    code: str
    tolerance: str = ""
    low: float | None = None
    high: float | None = None

    @property
    def fine(self) -> bool:
        """Whether its code is one of parts to 1 %."""
        return self.code in (FOUR, EIA_96)

    @property
    def text(self) -> str:
        """ "1.5 kΩ (E12 and E24; neighbours 1.2 and 1.8 kΩ)"."""
        if self.value == 0:
            return f"0 {self.unit} (jumper)"
        at = place(self.value, fine=self.fine)
        tolerance = f" {self.tolerance}" if self.tolerance else ""
        having = " and ".join(at.series) or f"on none of {', '.join((*COARSE, *FINE))}"
        around = write_two(at.below, "and", at.above, self.unit, 6)
        of = "" if at.series else f"{at.of} "
        return f"{write(self.value, self.unit, 6)}{tolerance} ({having}; {of}neighbours {around})"


def readings(marking: str, *, capacitor: bool = False) -> tuple[Reading, ...]:
    """Every reading, the likeliest first. Raises Refused where no code gives one."""
    code, unit = marking.strip().replace("u", "µ").replace("μ", "µ"), "F" if capacitor else "Ω"
    if not code or len(code) > _MOST:
        raise Refused(f"marking: it has 1 to {_MOST} characters, not {len(code)}")
    found = tuple(_of_capacitor(code) if capacitor else _of_resistor(code))
    if not found:
        raise Refused(f'marking: "{marking.strip()}" is in no code known here: {_KNOWN[unit]}')
    return found


def _of_resistor(code: str) -> Iterator[Reading]:
    if re.fullmatch(r"0{1,4}|0*R0*", code.upper()) and "0" in code:
        yield Reading(value=0.0, unit="Ω", code=JUMPER)
        return
    yield from _lettered(code, "Ω")
    yield from _digits(code, "Ω", 0)
    match = re.fullmatch(rf"([0-9]{{2}})([{''.join(EIA_96_POWERS)}])", code.upper())
    if match and 1 <= int(match[1]) <= 96:
        value = float(f"{SERIES['E96'][int(match[1]) - 1]}e{EIA_96_POWERS[match[2]]}")
        yield from _with_tolerance(value, "Ω", EIA_96, "F")


def _of_capacitor(code: str) -> Iterator[Reading]:
    yield from _lettered(code, "F")
    yield from _digits(code, "F", -12)


def _lettered(code: str, unit: str) -> Iterator[Reading]:
    match = re.fullmatch(r"([0-9]{0,4})([A-Za-zµ])([0-9]{0,4})([A-Za-z]?)", code)
    if match is None or not 1 <= len(match[1] + match[3]) <= 4 or not int(match[1] + match[3]):
        return
    letter = match[2].replace("r", "R")
    for power in _POINTS[unit].get(letter, ()):
        value = float(f"{match[1] or 0}.{match[3] or 0}e{power}")
        yield from _with_tolerance(value, unit, R_NOTATION if letter == "R" else LETTER, match[4])


def _digits(code: str, unit: str, power: int) -> Iterator[Reading]:
    """Significant digits and a power of ten; or, where that is a usual value, the number as such."""
    match = re.fullmatch(r"([1-9][0-9]{0,3})([A-Za-z]?)", code)
    if match is None:
        return
    digits, letter = match[1], match[2]
    if len(digits) >= 3:
        value = float(f"{digits[:-1]}e{_DIGIT_POWERS[digits[-1]] + power}")
        yield from _with_tolerance(value, unit, THREE if len(digits) == 3 else FOUR, letter)
    as_such = float(f"{digits}e{power}")
    if (unit == "F" or len(digits) >= 3) and lies_on(as_such, "E24"):
        yield from _with_tolerance(as_such, unit, AS_SUCH, letter)


def _with_tolerance(value: float, unit: str, code: str, letter: str) -> Iterator[Reading]:
    """The reading with what its last letter says; none where that is no tolerance letter."""
    if not letter:
        yield Reading(value=value, unit=unit, code=code)
        return
    letter = letter.upper()
    if letter not in (TOLERANCES if unit == "F" else _EITHER_SHARE):
        return
    below, above = TOLERANCES[letter]
    if unit == "F" and value < _PICO_BELOW and letter in _PICO_LETTERS:
        words, low, high = f"± {above:g} pF", value + below * 1e-12, value + above * 1e-12
    else:
        words = f"± {above:g} %" if above == -below else f"−{-below:g} to +{above:g} %"
        low, high = value * (1 + below / 100), value * (1 + above / 100)
    yield Reading(value=value, unit=unit, code=code, tolerance=words, low=max(low, 0.0), high=high)
