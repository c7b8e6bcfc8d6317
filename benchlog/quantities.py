"""Numbers as people write and read them; SI base units inside.

`parse` takes what a person types in any locale ("0.5", "0,5", "500m", "500 mA"); `strict` takes what a file or a
command line may say (a point, no unit); `show` writes engineering notation with a space and the unit.
"""

import math
import re

from benchlog.errors import Refused

_PREFIXES = {"": 1.0, "m": 1e-3, "u": 1e-6, "µ": 1e-6, "μ": 1e-6, "k": 1e3}
_TYPED = re.compile(
    r"([+-]?)(\d+(?:[.,]\d*)?|[.,]\d+)\s*([munµμk]?)\s*([Vv]|[Aa]|\u03a9|\u2126|[Oo]hm|s|[Ww]|[Jj]|°C)?\s*", re.ASCII
)
_UNITS = {"v": "V", "a": "A", "\u2126": "Ω", "ohm": "Ω", "Ohm": "Ω", "w": "W", "j": "J"}
"""As people type them; U+2126 is the ohm sign of old character sets, which looks like the letter."""
_STRICT = re.compile(r"[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,2})?", re.ASCII)


def strict(text: str, name: str) -> float:
    """A plain decimal with a point. Raises Refused naming `name` for anything else ("3,0", "nan", "inf", "")."""
    if not _STRICT.fullmatch(text.strip()):
        hint = " (write it with a point)" if re.fullmatch(r"\d+,\d+", text.strip()) else ""
        if unit := re.fullmatch(r"(\d+(?:[.,]\d+)?)\s*(?:V|A|Ω|ohm|s|W|%)", text.strip()):
            hint = f" (write it without a unit: {unit[1].replace(',', '.')})"
        raise Refused(f'{name}: "{text[:40]}" is not a number{hint}')
    return float(text)


def parse(text: str, unit: str) -> float:
    """A number with an optional SI prefix and unit, comma or point. Raises ValueError where it is not one."""
    match = _TYPED.fullmatch(plain_digits(text.strip()))
    if match is None or match[3] == "n" or (match[4] is not None and _UNITS.get(match[4], match[4]) != unit):
        raise ValueError(f'"{text[:40]}" is not a number in {unit}')
    return float(f"{match[1]}{match[2].replace(',', '.')}") * _PREFIXES[match[3]]


def plain_digits(text: str) -> str:
    """Digits of other scripts as 0 to 9, their decimal mark as a point, and every space and minus as it is typed."""
    return text.translate(_PLAIN)


_PLAIN = {ord(zero) + value: str(value) for zero in "٠۰" for value in range(10)}
_PLAIN |= {ord("٫"): ".", ord("\u2212"): "-", ord("\u00a0"): " ", ord("\u202f"): " "}
_PLAIN |= dict.fromkeys((0x061C, 0x200E, 0x200F), "")
"""The marks of direction that come along with a number copied out of right-to-left text say nothing of its value."""


def show(value: float | None, unit: str, digits: int = 3) -> str:
    """Engineering notation: "350 mA", "2.05 Ω"; "—" where nothing was measured. `digits`: significant ones."""
    if value is None or not math.isfinite(value):
        return "—"
    if value == 0:
        return f"0 {unit}"
    power = 0 if unit in ("°C", "s") else min(6, max(-6, 3 * math.floor(math.log10(abs(value)) / 3)))
    scaled = value / 10.0**power
    if (
        round(abs(scaled), max(0, digits - 1 - math.floor(math.log10(abs(scaled))))) >= 1000
        and power < 6
        and unit != "s"
    ):
        power += 3
        scaled = value / 10.0**power
    places = max(0, digits - 1 - math.floor(math.log10(abs(scaled))))
    prefix = {-6: "µ", -3: "m", 0: "", 3: "k", 6: "M"}[power]
    return f"{scaled:.{min(places, digits)}f} {prefix}{unit}"


def show_fine(value: float | None, unit: str) -> str:
    """As `show`, and what lasts less than a second in ms: "240 ms"."""
    if unit == "s" and value is not None and abs(value) < 1:
        return f"{value * 1e3:.3g} ms"
    return show(value, unit)


def wilson(hits: int, count: int) -> tuple[float, float]:
    """95 % limits of a share of `hits` in `count`, 0 to 1. Wilson's score interval. Raises ValueError for no count."""
    if not 0 <= hits <= count or count == 0:
        raise ValueError(f"{hits} of {count} is no share")
    z = 1.959963984540054
    middle = (hits + z * z / 2) / (count + z * z)
    half = z / (count + z * z) * math.sqrt(hits * (count - hits) / count + z * z / 4)
    return max(0.0, middle - half), min(1.0, middle + half)
