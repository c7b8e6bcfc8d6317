"""What a parameter's text says: a number with or without unit, a limit by name, on or off.

Source: IEEE 488.2-1992 decimal numeric program data and SCPI-1999 numeric parameters, as published.
"""

import re
from dataclasses import dataclass

from drivers.simulated.status import Refusal

_NUMBER = re.compile(r"[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[Ee][+-]?[0-9]+)?")
_SCALES = {
    "V": {"V": 1.0, "MV": 1e-3, "UV": 1e-6, "KV": 1e3},
    "A": {"A": 1.0, "MA": 1e-3, "UA": 1e-6, "KA": 1e3},
    "S": {"S": 1.0, "MS": 1e-3, "US": 1e-6},
}
_LIMITS = {"MIN": "MIN", "MINIMUM": "MIN", "MAX": "MAX", "MAXIMUM": "MAX", "DEF": "DEF", "DEFAULT": "DEF"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """What a numeric parameter may be. `unit` "V", "A", "S", or "" for a bare number."""

    lowest: float
    highest: float
    default: float
    unit: str = ""

    def named(self, word: str) -> float | None:
        """The value behind MIN, MAX or DEF; None for any other word."""
        match _LIMITS.get(word.upper()):
            case "MIN":
                return self.lowest
            case "MAX":
                return self.highest
            case "DEF":
                return self.default
            case _:
                return None


def single(text: str) -> str:
    """The one parameter there has to be. Raises Refusal -109 for none, -108 for more."""
    if not text:
        raise Refusal(-109)
    if "," in text:
        raise Refusal(-108, text)
    return text


def none(text: str) -> None:
    """Raises Refusal -108 if there is a parameter."""
    if text:
        raise Refusal(-108, text)


def number(text: str, allowed: Range) -> float:
    """A number within range, in base units. Raises Refusal -102, -104, -108, -109, -131 or -222."""
    text = single(text)
    named = allowed.named(text)
    if named is not None:
        return named
    found = _NUMBER.match(text)
    if found is None:
        raise Refusal(-104 if text[0].isalpha() else -102, text)
    rest = text[found.end() :].strip()
    scale = 1.0
    if rest:
        if not rest.isalpha():
            raise Refusal(-102, text)
        known = _SCALES.get(allowed.unit, {}).get(rest.upper())
        if known is None:
            raise Refusal(-131, text)
        scale = known
    value = float(found[0]) * scale
    if not allowed.lowest <= value <= allowed.highest:
        raise Refusal(-222, text)
    return value


def switch(text: str) -> bool:
    """ON, OFF or a number, of which everything that does not round to zero is on. Raises Refusal like `number`."""
    text = single(text)
    match text.upper():
        case "ON":
            return True
        case "OFF":
            return False
    return round(number(text, Range(lowest=-32767, highest=32767, default=0))) != 0
