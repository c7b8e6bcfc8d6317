"""A quantity is what was typed, whatever the locale."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QLocale
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from ui.quantity_edit import QuantityEdit


@pytest.fixture(params=["de_DE", "en_US", "fr_FR", "pl_PL"])
def locale(request: pytest.FixtureRequest) -> Iterator[str]:
    before = QLocale()
    QLocale.setDefault(QLocale(request.param))
    yield request.param
    QLocale.setDefault(before)


@pytest.mark.parametrize(
    ("typed", "amps"), [("0.5", 0.5), ("0,5", 0.5), ("500m", 0.5), ("500 mA", 0.5), ("1,83 A", 1.83), ("12", 12.0)]
)
def test_what_is_typed_is_what_is_meant(qtbot: QtBot, locale: str, typed: str, amps: float) -> None:
    edit = QuantityEdit("A", "Amps")
    qtbot.addWidget(edit)
    QTest.keyClicks(edit, typed)
    assert edit.value() == pytest.approx(amps)
    assert not edit.wrong()


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
