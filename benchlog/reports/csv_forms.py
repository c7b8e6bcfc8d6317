"""A table as comma-separated values in two forms, from columns that are described once.

The data form, for programs: RFC 4180 in UTF-8, commas, CR LF, a header line of names, "." as the decimal mark, every
text exactly as it is. `csvw` describes it. The spreadsheet form, for people: titles with units, the decimal mark and
the separator of a locale, a byte order mark, instants without their "T", and no cell that a spreadsheet would run:
`harmless` puts an apostrophe before a text that looks like a formula. Whoever needs that text exactly takes the data
form. Numbers stay numbers in both. What is not known is an empty cell.
"""

import csv
import math
import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import TextIO, TypeAlias

from benchlog.errors import Refused

Value: TypeAlias = str | float | bool | None
"""Of a cell: a text, a number, yes or no, or nothing."""


class Datatype(StrEnum):
    """Of a column, by its CSVW name. BOOLEAN is written 1 or 0; INSTANT is ISO 8601 with a trailing Z."""

    STRING = "string"
    INTEGER = "integer"
    DOUBLE = "double"
    BOOLEAN = "boolean"
    INSTANT = "dateTime"


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """`name`: for programs; `title`: for people. `unit`: as in `csvw.UNIT_CODES`.

    `places`: decimal places of a DOUBLE; None for the fewest digits that read back equal.
    """

    name: str
    title: str
    datatype: Datatype
    unit: str = ""
    places: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """How a table is written. DATA, or what `spreadsheet` gives."""

    separator: str = ","
    decimal_mark: str = "."
    for_people: bool = False


DATA = Form()

_COMMA = (
    "bg bs ca cs da de el es et eu fi fr gl hr hu id is it lb lt lv mk nb nl nn no pl pt ro ru sk sl sq sr sv tr uk vi"
)
_POINT = "en ga ja ko mt th zh"
_OTHERWISE = {
    "de": "CH LI",
    "it": "CH",
    "es": "419 BR BZ CU DO GT HN MX NI PA PE PR SV US",
    "en": "AT BE CZ DE DK EE ES FI FR GE HU ID IT LT LV NL NO PL PT RO SE SI SK UA ZA",
}
"""Languages by decimal mark, and the territories of each that have the other one. Source: CLDR, as Qt 6.11 has it."""

_LOCALE = re.compile(r"([a-z]{2})(?:[_-][A-Za-z]{4})?(?:[_-]([A-Z]{2}|\d{3}))?(?:[.@].*)?", re.ASCII)
_STARTS_A_FORMULA = "=+-@＝＋－＠"


def spreadsheet(locale: str) -> Form:
    """The spreadsheet form of a locale, "de_DE" or "en". The separator is ";" where the decimal mark is a comma.

    Raises Refused for a locale whose decimal mark is not known here.
    """
    found = _LOCALE.fullmatch("en" if locale.partition(".")[0] in ("C", "POSIX") else locale)
    language, territory = found.groups() if found else ("", None)
    if language not in f"{_COMMA} {_POINT}".split():
        raise Refused(f'"{locale[:40]}": the decimal mark of this locale is not known; name one such as de_DE or en_GB')
    comma = (language in _COMMA.split()) != (territory in _OTHERWISE.get(language, "").split())
    return Form(separator=";" if comma else ",", decimal_mark="," if comma else ".", for_people=True)


def harmless(text: str) -> str:
    """The text, with an apostrophe before it where a spreadsheet could take it for a formula.

    That is where it begins with = + - @, one of their full-width forms, or anything blank: tab, CR, LF, a space that
    is dropped. Source: common practice, no standard.
    """
    return f"'{text}" if text[:1].isspace() or text[:1] in tuple(_STARTS_A_FORMULA) else text


def write_table(columns: Sequence[Column], rows: Iterable[Sequence[Value]], form: Form, out: TextIO) -> None:
    """Writes a header and a line a row to `out`, which must not translate line ends (open it with newline="").

    `out` must be in UTF-8. Raises ValueError for a row that has not one value a column.
    """
    writer = csv.writer(out, delimiter=form.separator, lineterminator="\r\n")
    shown = [_shown(column, form) for column in columns]
    if form.for_people:
        out.write("\ufeff")
        writer.writerow([harmless(_titled(column)) for column in columns])
    else:
        writer.writerow([column.name for column in columns])
    writer.writerows([show(value) for show, value in zip(shown, row, strict=True)] for row in rows)


def _titled(column: Column) -> str:
    return f"{column.title} ({column.unit})" if column.unit else column.title


def _shown(column: Column, form: Form) -> Callable[[Value], str]:
    match column.datatype:
        case Datatype.STRING:
            return _text_for_people if form.for_people else _text
        case Datatype.INSTANT:
            return _instant_for_people if form.for_people else _text
        case Datatype.BOOLEAN:
            return lambda value: "" if value is None else "1" if value else "0"
        case Datatype.INTEGER:
            return lambda value: "" if value is None else str(int(value))
        case Datatype.DOUBLE:
            write = repr if column.places is None else f"{{:.{column.places}f}}".format
            mark = form.decimal_mark

            def number(value: Value) -> str:
                if value is None or not math.isfinite(value := float(value)):
                    return ""
                return write(value) if mark == "." else write(value).replace(".", mark)

            return number


def _text(value: Value) -> str:
    return "" if value is None else str(value)


def _text_for_people(value: Value) -> str:
    return harmless(_text(value))


def _instant_for_people(value: Value) -> str:
    # A spreadsheet takes it for a date this way; to the second.
    return harmless(_text(value).removesuffix("Z").replace("T", " ").partition(".")[0])
