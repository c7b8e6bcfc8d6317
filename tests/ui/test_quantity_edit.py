"""A quantity is what was typed, whatever the locale."""

from collections.abc import Iterator

import msgspec
import pytest
from PySide6.QtCore import QLocale
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchlog.errors import Refused
from benchlog.quantities import strict
from drivers.scpi import at_most
from ui.quantity_edit import QuantityEdit


@pytest.fixture(params=["de_DE", "de_CH", "en_US", "fr_FR", "pl_PL", "ar_EG", "fa_IR"])
def locale(request: pytest.FixtureRequest) -> Iterator[str]:
    before = QLocale()
    QLocale.setDefault(QLocale(request.param))
    yield request.param
    QLocale.setDefault(before)


@pytest.mark.parametrize(
    ("typed", "amps"),
    [
        ("0.5", 0.5),
        ("0,5", 0.5),
        ("500m", 0.5),
        ("500 mA", 0.5),
        ("1,83 A", 1.83),
        ("12", 12.0),
    ],
)
def test_what_is_typed_is_what_is_meant(qtbot: QtBot, locale: str, typed: str, amps: float) -> None:
    edit = QuantityEdit("A", "Amps")
    qtbot.addWidget(edit)
    QTest.keyClicks(edit, typed)
    assert edit.value() == pytest.approx(amps)
    assert not edit.wrong()


def test_what_the_locale_writes_is_read_back(qtbot: QtBot, locale: str) -> None:
    edit = QuantityEdit("A", "Amps")
    qtbot.addWidget(edit)
    for value in (0.5, 1.83, 12.0):
        edit.setText(f"{QLocale().toString(value)}\u00a0A")
        assert edit.value() == value


def test_commands_files_and_json_have_a_point_in_every_locale(locale: str) -> None:
    assert at_most(0.5, before=0, after=4) == "0.5000"
    assert msgspec.json.encode(0.5) == b"0.5"
    assert strict("0.5", "amps") == 0.5
    with pytest.raises(Refused, match="with a point"):
        strict("0,5", "amps")


@pytest.mark.parametrize("typed", ["500ma", "500 mA", "0.5\u202fA", "\u061c٠٫٥", "٠٫٥", "۵۰۰ mA"])
def test_a_small_letter_and_a_space_that_does_not_break_are_heard(qtbot: QtBot, typed: str) -> None:
    edit = QuantityEdit("A", "Amps")
    qtbot.addWidget(edit)
    edit.setText(typed)
    assert edit.value() == 0.5


@pytest.mark.parametrize(
    "typed", ["1.234,5", "1,234.5", "1\u202f234,5", "1'234.5", "١٬٢٣٤٫٥", "500 MA", "\u22120,5", "\u200e\u2212۰٫۵"]
)
def test_a_number_with_its_thousands_set_apart_or_below_zero_is_refused_not_guessed(qtbot: QtBot, typed: str) -> None:
    edit = QuantityEdit("A", "Amps")
    qtbot.addWidget(edit)
    edit.setText(typed)
    assert edit.value() is None


@pytest.mark.parametrize("typed", ["abc", "1.000,5", "-3", "0", "5 V", "1e9", ""])
def test_what_is_no_quantity_is_said_to_be_wrong(qtbot: QtBot, locale: str, typed: str) -> None:
    edit = QuantityEdit("A", "Amps")
    qtbot.addWidget(edit)
    QTest.keyClicks(edit, typed)
    assert edit.value() is None
    assert edit.wrong()


def test_an_optional_one_may_be_empty_but_not_wrong(qtbot: QtBot) -> None:
    edit = QuantityEdit("A", "Amps", optional=True)
    qtbot.addWidget(edit)
    assert not edit.wrong()
    QTest.keyClicks(edit, "much")
    assert edit.wrong()


def test_tidying_never_changes_the_value(qtbot: QtBot) -> None:
    edit = QuantityEdit("V", "Volts")
    qtbot.addWidget(edit)
    QTest.keyClicks(edit, "12.345")
    edit.editingFinished.emit()
    assert edit.value() == 12.345
