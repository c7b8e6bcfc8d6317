"""Tables in both forms: the data form is exact, the spreadsheet form runs nothing and has the marks of its locale."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QLocale

from benchlog.errors import Refused
from benchlog.reports.csv_forms import (
    DATA,
    Column,
    Datatype,
    Form,
    Value,
    harmless,
    spreadsheet,
    write_table,
)

COLUMNS = (
    Column(name="number", title="Job", datatype=Datatype.INTEGER),
    Column(name="serial", title="Serial", datatype=Datatype.STRING),
    Column(name="volts", title="Rated voltage", datatype=Datatype.DOUBLE, unit="V", places=2),
    Column(name="on", title="Output on", datatype=Datatype.BOOLEAN),
    Column(name="opened_utc", title="Opened, UTC", datatype=Datatype.INSTANT),
)
ROW: tuple[Value, ...] = (7, '=HYPERLINK("x")', -12.5, True, "2026-11-25T10:00:00.000Z")
GERMAN = spreadsheet("de_DE")


def text_of(*rows: tuple[Value, ...], form: Form = DATA, columns: tuple[Column, ...] = COLUMNS) -> str:
    out = io.StringIO(newline="")
    write_table(columns, rows, form, out)
    return out.getvalue()


def test_the_data_form_is_exact() -> None:
    assert text_of(ROW) == (
        'number,serial,volts,on,opened_utc\r\n7,"=HYPERLINK(""x"")",-12.50,1,2026-11-25T10:00:00.000Z\r\n'
    )


def test_the_spreadsheet_form_has_titles_marks_and_no_formula() -> None:
    assert text_of(ROW, form=GERMAN) == (
        "\ufeffJob;Serial;Rated voltage (V);Output on;Opened, UTC\r\n"
        '7;"\'=HYPERLINK(""x"")";-12,50;1;2026-11-25 10:00:00\r\n'
    )


def test_what_is_not_known_is_an_empty_cell() -> None:
    for form in (DATA, GERMAN):
        last = text_of((None, None, float("nan"), None, None), form=form).splitlines()[-1]
        assert last == form.separator * 4


@given(st.lists(st.text(st.characters(codec="utf-8")), min_size=1, max_size=5))
def test_any_text_comes_back_equal_from_the_data_form(texts: list[str]) -> None:
    # RFC 4180 section 2: quotes doubled, cells with commas, quotes or line breaks in quotes.
    columns = tuple(Column(name=f"c{n}", title="Text", datatype=Datatype.STRING) for n in range(len(texts)))
    (_, row) = csv.reader(io.StringIO(text_of(tuple(texts), columns=columns), newline=""), strict=True)
    assert row == texts


@given(
    st.text(st.sampled_from(" \t\r\n\u00a0"), max_size=2),
    st.sampled_from("=+-@\t\r\n＝＋－＠"),
    st.text(st.characters(codec="utf-8")),
)
def test_no_text_of_a_spreadsheet_begins_as_a_formula(blanks: str, first: str, rest: str) -> None:
    # = + - @ tab and CR at the beginning of a cell: common practice, no standard.
    columns = (Column(name="a", title="=A", datatype=Datatype.STRING),)
    text = text_of((blanks + first + rest,), form=GERMAN, columns=columns)
    (head, (cell,)) = csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), delimiter=";", strict=True)
    assert (head, cell) == (["'=A"], "'" + blanks + first + rest)


@pytest.mark.parametrize("text", ["BP-0417", "12 V", "", "a=b", "12-3", "Ærø"])
def test_any_other_text_stays_as_it_is(text: str) -> None:
    assert harmless(text) == text


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_a_number_stays_a_number_with_the_mark_of_the_locale(value: float) -> None:
    columns = (Column(name="a", title="A", datatype=Datatype.DOUBLE),)
    cell = text_of((value,), form=GERMAN, columns=columns).splitlines()[1]
    assert "." not in cell
    assert not cell.startswith("'")
    assert float(cell.replace(",", ".")) == value


def test_the_decimal_mark_of_every_locale_is_that_of_the_common_locale_data() -> None:
    # Source: Unicode CLDR as Qt carries it, computed here.
    every = QLocale.matchingLocales(QLocale.Language.AnyLanguage, QLocale.Script.AnyScript, QLocale.Country.AnyCountry)
    known = 0
    for one in every:
        try:
            form = spreadsheet(one.name())
        except Refused:
            continue
        known += 1
        assert form.decimal_mark == QLocale(one.name()).decimalPoint(), one.name()
        assert form.separator == (";" if form.decimal_mark == "," else ",")
    assert known > 200


@pytest.mark.parametrize(
    ("name", "mark"), [("de_DE.UTF-8", ","), ("de-CH", "."), ("C", "."), ("C.UTF-8", "."), ("fr", ",")]
)
def test_a_locale_may_be_written_as_systems_write_it(name: str, mark: str) -> None:
    assert spreadsheet(name).decimal_mark == mark


@pytest.mark.parametrize("name", ["", "xx_XX", "ar_EG", "german", "de_", "../de"])
def test_a_locale_that_is_not_known_is_refused(name: str) -> None:
    with pytest.raises(Refused, match="decimal mark"):
        spreadsheet(name)


def test_a_row_of_another_length_is_refused() -> None:
    with pytest.raises(ValueError, match="zip"):
        text_of((1, "a"))
