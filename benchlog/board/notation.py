"""Values of parts as people write and read them: "4k7", "0,5 A", "100 nF", "2200 mAh"; from pico to giga.

Beside `quantities`, which has the prefixes of a supply and fixed digits: a part's value is nominal, "1.5 kΩ" and not
"1.50 kΩ". SI base units inside, but three units count as they are named: "%", "Ah" and "days".
"""

import re
from decimal import Decimal

from benchlog.quantities import parse

MOST_CHARACTERS = 40
_PREFIXES = {"p": -12, "n": -9, "u": -6, "µ": -6, "μ": -6, "m": -3, "": 0, "k": 3, "K": 3, "M": 6, "G": 9}
_WRITTEN = {-12: "p", -9: "n", -6: "µ", -3: "m", 0: "", 3: "k", 6: "M", 9: "G"}
_PLAIN = ("%", "days")
_SPELLED = {"Ω": "Ω|\u2126|[oO]hms?|R", "days": "days?|d"}
_NUMBER = r"([^a-zA-ZµμΩ\u2126%]+)"
_PREFIX = "([pnuµμmkKMG]?)"
_INSIDE = re.compile(r"(\d+)([pnuµμmkKMGR])(\d+)", re.ASCII)


def read(text: str, unit: str) -> float:
    """A number with an optional prefix and unit, comma or point, or with the prefix as the point ("4k7", "4R7").

    Raises ValueError where it is none in `unit`.
    """
    typed = text.strip()
    prefix = "" if unit in _PLAIN else _PREFIX
    spelled = _SPELLED.get(unit, re.escape(unit))
    wrong = ValueError(f'"{text[:MOST_CHARACTERS]}" is not a number in {unit}')
    if len(typed) > MOST_CHARACTERS:
        raise wrong
    bare = re.sub(rf"\s*({spelled})$", "", typed)
    inside = None if unit in _PLAIN else _INSIDE.fullmatch(bare)
    if inside is not None and (inside[2] != "R" or unit == "Ω"):
        number, letter = f"{inside[1]}.{inside[3]}", inside[2].replace("R", "")
    else:
        match = re.fullmatch(_NUMBER + (prefix or "()"), bare)
        if match is None:
            raise wrong
        number, letter = match[1], match[2]
    try:
        value = parse(number, unit)
    except ValueError as error:
        raise wrong from error
    return float(Decimal(repr(value)).scaleb(_PREFIXES[letter]))


def write(value: float, unit: str, digits: int = 3) -> str:
    """ "4.7 kΩ", "100 nF", "5 %": at most `digits` significant ones, no zeros behind them."""
    number, prefix = _split(value, unit, digits)
    return f"{number} {prefix}{unit}"


def write_two(first: float, word: str, second: float, unit: str, digits: int = 3) -> str:
    """ "1.2 and 1.8 kΩ", or "820 Ω and 1.2 kΩ": the unit once where it is the same."""
    (a, prefix), (b, other) = _split(first, unit, digits), _split(second, unit, digits)
    if first == 0 or prefix == other:
        return f"{a} {word} {b} {other}{unit}"
    return f"{a} {prefix}{unit} {word} {b} {other}{unit}"


def _split(value: float, unit: str, digits: int) -> tuple[str, str]:
    rounded = Decimal(f"{value:.{digits - 1}e}")
    if rounded == 0:
        return "0", ""
    power = 0 if unit in _PLAIN else min(9, max(-12, rounded.adjusted() // 3 * 3))
    return f"{rounded.scaleb(-power).normalize():f}", _WRITTEN[power]
