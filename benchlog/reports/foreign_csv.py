"""A curve out of comma-separated values that were made elsewhere, and which columns it may be in.

Separator and decimal mark are those under which the longest run of lines is all numbers; what stands above is a header.
The numbers begin at the first line that could be one of theirs, so that none is left out unsaid: what is not a number
below is refused with its line.
"""

import csv
import io
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import islice, pairwise, product
from pathlib import Path

import numpy as np
import numpy.typing as npt

from benchlog.errors import Refused
from benchlog.pictures.recognise import refuse_size
from benchlog.pictures.taking import take_file
from drivers.foreign import inert

SEPARATORS, DECIMAL_MARKS = (",", ";", "\t", " ", "|"), (".", ",")
LOOKED_AT = 500
"""Lines at the top in which the numbers must begin."""
LEAST_LINES, MOST_LINES = 2, 4_000_000
MOST_COLUMNS, MOST_LINE = 64, 4096
FIRST_VALUES = 5
NOT_MEASURED = 9.9e37
"""What is as large is no number. Source: SCPI-1999, 7.2.1.4 and 7.2.1.5: 9.9E37 infinity, 9.91E37 not a number."""
_CHUNK = 50_000
_DIGITS = r"[+-]?(?:\d+(?:{0}\d*)?|{0}\d+)(?:[eE][+-]?\d{{1,3}})?"
_NUMBER = {mark: re.compile(_DIGITS.format(f"[{mark}]"), re.ASCII) for mark in (*DECIMAL_MARKS, ".,")}

Values = npt.NDArray[np.float64]


class Kind(StrEnum):
    """What a column is, and the SI unit its numbers end up in."""

    TIME = "s"
    VOLTS = "V"
    AMPS = "A"


_WORDS = dict(zip(Kind, ("time", "volts", "amps"), strict=True))
UNITS: dict[str, tuple[Kind, float]] = {
    **{unit: (Kind.TIME, scale) for unit, scale in (("s", 1.0), ("ms", 1e-3), ("us", 1e-6), ("ns", 1e-9))},
    **{unit: (Kind.VOLTS, scale) for unit, scale in (("kV", 1e3), ("V", 1.0), ("mV", 1e-3), ("uV", 1e-6))},
    **{unit: (Kind.AMPS, scale) for unit, scale in (("A", 1.0), ("mA", 1e-3), ("uA", 1e-6))},
}
"""By how they are written; "µ" reads as "u"."""
_UNIT_WORDS = {
    **dict.fromkeys(("sec", "second", "seconds"), "s"),
    **dict.fromkeys(("volt", "volts"), "V"),
    **dict.fromkeys(("amp", "amps", "ampere", "amperes"), "A"),
}
_CHANNEL = re.compile(r"(?:ch|channel|input)[\s_.]*[A-Z]", re.IGNORECASE)
"""A name that ends in its letter, which is no unit."""
_NAME_WORDS = {"time": Kind.TIME, "voltage": Kind.VOLTS, "current": Kind.AMPS}


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """How the numbers are laid out. `first_line`: the first line of numbers, counted from 1; `columns`: how many."""

    separator: str
    decimal_mark: str
    first_line: int
    columns: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One to choose from. `unit`: as in UNITS, "" where none is named; `kind`: None where nothing says what it is.

    `values`: the first ones as they stand, unscaled, None for a blank. `why`: how the guess came about.
    """

    name: str
    unit: str
    kind: Kind | None
    values: tuple[float | None, ...]
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Preview:
    layout: Layout
    columns: tuple[Column, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Pick:
    """A column, counted from 0. `unit`: as in UNITS; "" for the header's, or SI where it names none."""

    column: int
    unit: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """What to read. Either `time`, or `interval_s` from line to line; volts, amps or both.

    `volts_scale` multiplies the volts (a divider before the probe). `amps_per_volt`: of a current probe, 10 for
    100 mV/A; the column of amps then holds volts.
    """

    time: Pick | None = None
    interval_s: float | None = None
    volts: Pick | None = None
    amps: Pick | None = None
    volts_scale: float = 1.0
    amps_per_volt: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """t_s: float64[n], s, increasing; volts, amps: float64[n], V and A, or None where not chosen."""

    t_s: Values
    volts: Values | None
    amps: Values | None


def preview(source: Path | bytes, *, separator: str | None = None, decimal_mark: str | None = None) -> Preview:
    """What there is to choose from. Separator and decimal mark are found out where not given.

    Raises Refused for what is too large, no text, or has no lines of numbers, and where two readings fit equally.
    """
    text = _text(source)
    layout = _layout(text, separator, decimal_mark)
    return _preview(text, layout)


def read(
    source: Path | bytes, choice: Choice, *, separator: str | None = None, decimal_mark: str | None = None
) -> Curve:
    """The curve in SI units. Lines in which a chosen column is blank are left out at both ends only.

    Raises Refused as preview() does, for a choice that can't be, and, with its line, for anything that is not a
    number, for a blank or 9.9E37 between numbers, another decimal mark, and a time that does not increase.
    """
    text = _text(source)
    layout = _layout(text, separator, decimal_mark)
    scales = _scales(_preview(text, layout), choice)
    values = _columns(text, layout, [pick.column for pick, _ in scales.values()])
    there = np.logical_and.reduce([np.isfinite(one) for one in values])
    if (found := np.flatnonzero(there)).size < LEAST_LINES:
        raise Refused("the columns chosen have no two lines with numbers in all of them")
    begin, end = int(found[0]), int(found[-1]) + 1
    if not there[begin:end].all():
        at = begin + int(np.argmin(there[begin:end]))
        column = next(pick.column for (pick, _), one in zip(scales.values(), values, strict=True) if one[at] != one[at])
        raise Refused(
            f"line {layout.first_line + at}: column {column + 1} is blank or no measurement, between lines with numbers"
        )
    named = {name: one[begin:end] * scale for (name, (_, scale)), one in zip(scales.items(), values, strict=True)}
    t_s = (
        np.arange(end - begin, dtype=np.float64) * (choice.interval_s or 0.0) if choice.time is None else named["time"]
    )
    if not (steps := np.diff(t_s) > 0).all():
        at = begin + int(np.argmin(steps)) + 1
        raise Refused(
            f"line {layout.first_line + at}: its time is not after that of the line before; the times must increase "
            "(where they are rounded too far, give the interval in place of the column)"
        )
    return Curve(t_s=t_s, volts=named.get("volts"), amps=named.get("amps"))


def _text(source: Path | bytes) -> str:
    data = take_file(source).data if isinstance(source, Path) else source
    refuse_size(len(data), "the file")
    if b"\x00" in data:
        raise Refused("it has NUL bytes, so it is no plain text; save it as CSV in UTF-8")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("latin-1")


def _lines(text: str) -> Iterator[str]:
    for number, one in enumerate(io.StringIO(text, newline=None), 1):
        if len(one) > MOST_LINE:
            raise Refused(f"line {number}: is longer than {MOST_LINE} characters")
        yield one.rstrip("\n")


def _rows(lines: Sequence[str], separator: str) -> list[list[str]]:
    """The cells of each line. Raises ValueError where a quote is not closed on its line."""
    if separator == " ":
        return [re.split(" +", one.strip(" ")) for one in lines]
    rows = list(csv.reader(lines, delimiter=separator, skipinitialspace=True))
    if len(rows) != len(lines):
        raise ValueError("a quote is not closed on its line")
    return rows


def _numbers(row: Sequence[str], mark: str) -> list[float | None] | None:
    """The numbers of a line, None for a blank; None for the line where a cell is something else, or all are blank."""
    cells = [one.strip(" ") for one in row]
    if not any(cells) or not all(_NUMBER[mark].fullmatch(one) for one in cells if one):
        return None
    return [float(one.replace(",", ".")) if one else None for one in cells]


def _layout(text: str, separator: str | None, decimal_mark: str | None) -> Layout:
    if not text.strip():
        raise Refused("it is empty")
    top = list(islice(_lines(text), LOOKED_AT))
    separators, marks = (separator,) if separator else SEPARATORS, (decimal_mark,) if decimal_mark else DECIMAL_MARKS
    if not set(separators) <= set(SEPARATORS) or not set(marks) <= set(DECIMAL_MARKS):
        raise Refused('the separator must be one of , ; | a tab or a space, the decimal mark "." or ","')
    best: list[tuple[Layout, list[list[float | None]]]] = []
    for one, mark in product(separators, marks):
        rows = [_rows([line], one)[0] if line.strip() else [] for line in top]
        begin, run = _longest_run([_numbers(row, mark) for row in rows])
        longest = len(best[0][1]) if best else LEAST_LINES
        if len(run) < longest or len(run[0]) > MOST_COLUMNS:
            continue
        first = next(at for at, row in enumerate(rows) if at == begin or _could_be_one(row, len(run[0])))
        layout = Layout(separator=one, decimal_mark=mark, first_line=first + 1, columns=len(run[0]))
        best = [*(best if len(run) == longest else []), (layout, run)]
    if not best:
        if any(
            len(_longest_run([_numbers(_rows([line], one)[0], ".,") if line else None for line in top])[1])
            >= LEAST_LINES
            for one in separators
            if one != ","
        ):
            raise Refused('decimal marks are mixed: some numbers have "." and some ","')
        raise Refused(f"no two lines of numbers are in its first {LOOKED_AT} lines")
    # Names above as many columns settle it.
    layout, run = next((one for one in best if _has_names(top, one[0])), best[0])
    best = [one for one in best if _has_names(top, one[0]) == _has_names(top, layout)]
    if other := next((rival for rival, numbers in best if _known(numbers) != _known(run)), None):
        raise Refused(
            f"it can be read in two ways: {_words(layout)}, or {_words(other)}; say which separator and decimal mark"
        )
    return layout


def _has_names(top: Sequence[str], layout: Layout) -> bool:
    above = [line for line in top[: layout.first_line - 1] if line.strip()]
    return bool(above) and len(_rows([above[-1]], layout.separator)[0]) == layout.columns > 1


def _words(layout: Layout) -> str:
    plural = "" if layout.columns == 1 else "s"
    return f'{layout.columns} column{plural} with "{layout.decimal_mark}" as the decimal mark'


def _known(numbers: list[list[float | None]]) -> list[list[float]]:
    return [[value for value in row if value is not None] for row in numbers]


def _longest_run(numbers: Sequence[list[float | None] | None]) -> tuple[int, list[list[float | None]]]:
    """Of lines that are numbers and have as many cells as each other: where it begins, and its numbers."""
    longest: tuple[int, list[list[float | None]]] = (0, [])
    begin, run = 0, list[list[float | None]]()
    for at, row in enumerate(numbers):
        if row is None or (run and len(row) != len(run[0])):
            begin, run = at, []
        if row is not None:
            if not run:
                begin = at
            run.append(row)
        if len(run) > len(longest[1]):
            longest = (begin, run)
    return longest


def _could_be_one(row: Sequence[str], columns: int) -> bool:
    return len(row) == columns and _numbers(row, ".,") is not None


def _preview(text: str, layout: Layout) -> Preview:
    # The lines just above the numbers: names, or units below names.
    top = list(islice(_lines(text), layout.first_line + FIRST_VALUES))
    above = [_rows([line], layout.separator)[0] for line in top[: layout.first_line - 1] if line.strip()][-2:]
    heads = [[one.strip() for one in row] for row in above if len(row) == layout.columns]
    nothing = [""] * layout.columns
    units = heads.pop() if heads and all(_unit(one) for one in heads[-1] if one) else nothing
    names = heads[-1] if heads else nothing
    rows = [_rows([line], layout.separator)[0] for line in top[layout.first_line - 1 :] if line.strip()]
    numbers = [_numbers(row, layout.decimal_mark) or [] for row in rows][:FIRST_VALUES]
    found = []
    for at in range(layout.columns):
        values = tuple(row[at] if at < len(row) else None for row in numbers)
        found.append(_column(at, inert(names[at])[:80], _unit(units[at]) if units[at] else "", values))
    return Preview(layout=layout, columns=tuple(found))


def _column(at: int, name: str, unit: str, values: tuple[float | None, ...]) -> Column:
    why = f'the line below the names says "{unit}"' if unit else ""
    parts = re.split(r"[\s()\[\]/_,;:]+", name)
    # The last part is where a unit stands; "V" at the front is a name.
    if (
        not unit
        and not _CHANNEL.fullmatch(name)
        and (unit := next((known for part in reversed(parts) if (known := _unit(part))), ""))
    ):
        why = f'its name says "{unit}"'
    kind = UNITS[unit][0] if unit else next((_NAME_WORDS[p.lower()] for p in parts if p.lower() in _NAME_WORDS), None)
    if not unit and kind is not None:
        why = f"its name says that it is {_WORDS[kind]}; no unit is named, so {kind} if nothing else is said"
    there = [value for value in values if value is not None]
    if kind is None and at == 0 and len(there) > 1 and all(b > a for a, b in pairwise(there)):
        kind, why = Kind.TIME, "it is the first and increases; no unit is named, so s if nothing else is said"
    return Column(name=name, unit=unit, kind=kind, values=values, why=why or "nothing says what it is")


def _unit(text: str) -> str:
    """As in UNITS, or ""."""
    bare = text.strip(" ()[]").replace("µ", "u").replace("μ", "u")
    return bare if bare in UNITS else _UNIT_WORDS.get(bare.lower(), "")


def _scales(seen: Preview, choice: Choice) -> dict[str, tuple[Pick, float]]:
    """What each column chosen is multiplied by, by "time", "volts", "amps". Raises Refused."""
    if (choice.time is None) == (choice.interval_s is None):
        raise Refused("a time column or the interval between lines is needed; one of the two")
    for name, value in (
        ("interval", choice.interval_s),
        ("scale of the volts", choice.volts_scale),
        ("amps per volt", choice.amps_per_volt),
    ):
        if value is not None and (not np.isfinite(value) or value == 0 or (value < 0 and name == "interval")):
            raise Refused(f"the {name} can't be {value:g}")
    if choice.volts is None and choice.amps is None:
        raise Refused("a column of volts or of amps is needed")
    if choice.amps is None and choice.amps_per_volt is not None:
        raise Refused("amps per volt are given, and no column of amps")
    scales = {}
    for kind, pick in ((Kind.TIME, choice.time), (Kind.VOLTS, choice.volts), (Kind.AMPS, choice.amps)):
        if pick is None:
            continue
        if not 0 <= pick.column < seen.layout.columns:
            raise Refused(f"there is no column {pick.column + 1}; it has {seen.layout.columns}")
        from_volts = kind is Kind.AMPS and choice.amps_per_volt is not None
        wanted = Kind.VOLTS if from_volts else kind
        unit = pick.unit or seen.columns[pick.column].unit or wanted
        if unit not in UNITS:
            raise Refused(f'"{unit[:20]}" is not a unit known here; one of {" ".join(UNITS)}')
        is_kind, scale = UNITS[unit]
        if is_kind is not wanted:
            probe = "; a current probe's amps per volt are needed" if kind is Kind.AMPS and not from_volts else ""
            raise Refused(f"column {pick.column + 1} is in {unit}, which is no unit of {_WORDS[wanted]}{probe}")
        by = {Kind.TIME: 1.0, Kind.VOLTS: choice.volts_scale, Kind.AMPS: choice.amps_per_volt or 1.0}[kind]
        scales[_WORDS[kind]] = (pick, scale * by)
    return scales


def _columns(text: str, layout: Layout, chosen: Sequence[int]) -> list[Values]:
    """float64[n] of each, NaN for a blank and for what is no measurement. Raises Refused with the line."""
    pieces: list[list[Values]] = []
    lines = islice(_lines(text), layout.first_line - 1, None)
    number = layout.first_line
    while chunk := list(islice(lines, _CHUNK)):
        if number + len(chunk) > MOST_LINES:
            raise Refused(f"it has more than {MOST_LINES:,} lines".replace(",", " "))
        try:
            rows = _rows(chunk, layout.separator)
        except (ValueError, csv.Error) as error:
            raise Refused(f"lines {number} to {number + len(chunk) - 1}: a quote is not closed on its line") from error
        if max(map(len, rows)) > layout.columns:
            at = next(at for at, row in enumerate(rows) if len(row) > layout.columns)
            raise Refused(f"line {number + at}: has {len(rows[at])} cells, the others {layout.columns}")
        pieces.append([_values(rows, column, layout.decimal_mark, number) for column in chosen])
        number += len(chunk)
    return [np.concatenate(parts) for parts in zip(*pieces, strict=True)]


def _values(rows: Sequence[Sequence[str]], column: int, mark: str, number: int) -> Values:
    try:
        cells = [row[column] for row in rows]
        joined = "".join(cells)
        # float() takes more than is a number here: "1_0", "nan", digits of other scripts.
        if not joined.isascii() or "_" in joined or (mark == "," and "." in joined):
            raise ValueError
        values = np.array(list(map(float, map(_pointed, cells) if mark == "," else cells)))
        if np.isfinite(values).all():
            values[np.abs(values) >= NOT_MEASURED] = np.nan
            return values
    except (IndexError, ValueError):
        pass
    return np.array([_value(row, column, mark, at) for at, row in enumerate(rows, number)])


def _pointed(cell: str) -> str:
    return cell.replace(",", ".")


def _value(row: Sequence[str], column: int, mark: str, number: int) -> float:
    cell = row[column].strip(" ") if column < len(row) else ""
    if not cell:
        return float("nan")
    if not _NUMBER[mark].fullmatch(cell):
        where = f'line {number}: "{inert(cell[:40])}" in column {column + 1}'
        if _NUMBER[".,"].fullmatch(cell):
            raise Refused(f'{where} has another decimal mark than the "{mark}" of the others')
        raise Refused(f"{where} is not a number")
    value = float(_pointed(cell))
    return value if abs(value) < NOT_MEASURED else float("nan")
