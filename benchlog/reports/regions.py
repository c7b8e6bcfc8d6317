"""How numbers and paper are where this computer is: decimal mark and paper size, by the name of a locale.

Source of both tables: CLDR, from memory; the tests hold them against Qt's copy of CLDR.
"""

import os
import sys
from collections.abc import Mapping
from enum import StrEnum

import msgspec


class Paper(StrEnum):
    """What a printer holds. Sizes in mm are in `PAPER_MM`."""

    A4 = "A4"
    LETTER = "Letter"


PAPER_MM: dict[Paper, tuple[float, float]] = {Paper.A4: (210.0, 297.0), Paper.LETTER: (215.9, 279.4)}
"""Width and height, mm. Source: ISO 216; ANSI/ASME Y14.1 size A."""

_LETTER = frozenset(["US", "CA", "MX", "PH", "PR", "CL", "CO", "CR", "GT", "NI", "PA", "SV", "VE", "BZ"])
_COMMA = frozenset(
    [
        "af",
        "az",
        "be",
        "bg",
        "bs",
        "ca",
        "cs",
        "da",
        "de",
        "el",
        "es",
        "et",
        "eu",
        "fi",
        "fr",
        "gl",
        "hr",
        "hu",
        "hy",
        "id",
        "is",
        "it",
        "ka",
        "kk",
        "lt",
        "lv",
        "mk",
        "nb",
        "nl",
        "nn",
        "no",
        "pl",
        "pt",
        "ro",
        "ru",
        "sk",
        "sl",
        "sq",
        "sr",
        "sv",
        "tr",
        "uk",
        "vi",
    ]
)
_POINT_AFTER_ALL = frozenset(
    [
        "de_CH",
        "de_LI",
        "it_CH",
        "es_DO",
        "es_GT",
        "es_HN",
        "es_MX",
        "es_NI",
        "es_PA",
        "es_PE",
        "es_PR",
        "es_SV",
        "es_US",
    ]
)
_COMMA_AFTER_ALL = frozenset(("en_AT", "en_BE", "en_DE", "en_DK", "en_FI", "en_NL", "en_SE", "en_SI", "en_ZA"))


class Region(msgspec.Struct, frozen=True, kw_only=True):
    """`decimal`: "." or ",". `paper`: what its printers hold."""

    decimal: str = "."
    paper: Paper = Paper.A4


def region_of(numbers: str, paper: str = "") -> Region:
    """By the names of locales ("de_DE.UTF-8", "es-MX"); `paper`: of another one for the paper. Unknown: "." and A4."""
    language, territory = _parts(numbers)
    place = f"{language}_{territory}"
    comma = place in _COMMA_AFTER_ALL or (language in _COMMA and place not in _POINT_AFTER_ALL)
    _, sheet = _parts(paper or numbers)
    return Region(decimal="," if comma else ".", paper=Paper.LETTER if sheet in _LETTER else Paper.A4)


def here(environment: Mapping[str, str] | None = None) -> Region:
    """Of this computer's user."""
    told = os.environ if environment is None else environment
    everywhere = told.get("LC_ALL", "")
    usual = told.get("LANG", "") or _of_windows()
    numbers = everywhere or told.get("LC_NUMERIC", "") or usual
    return region_of(numbers, everywhere or told.get("LC_PAPER", "") or usual)


def _parts(name: str) -> tuple[str, str]:
    plain = name.partition(".")[0].partition("@")[0].replace("-", "_")
    words = plain.split("_")
    territory = next((word.upper() for word in words[1:] if len(word) == 2), "")
    return words[0].lower(), territory


def _of_windows() -> str:
    if sys.platform == "win32":
        import ctypes
        import locale

        return locale.windows_locale.get(ctypes.windll.kernel32.GetUserDefaultUILanguage(), "")
    return ""
