"""A figure beside its limits, in one prefix; by how much it is outside, and how far from its nearest limit."""

import msgspec
import pytest
from pytestqt.qtbot import QtBot

from benchlog.motor.limits import JudgedFigure
from benchlog.motor.start_figures import FIGURES
from tests.ledger.benches import judged_as
from ui.curves.figure_words import margin_words, words_of
from ui.curves.figures_table import FiguresTable
from ui.density import CLOSE, ROOMY, Density


def figure(value: float | None, low: float | None, high: float | None, unit: str = "A") -> JudgedFigure:
    inside = None if value is None or high is None else (low or 0.0) <= value <= high
    margin = None if value is None or high is None else min(high - value, value - (low or 0.0))
    return JudgedFigure(
        name="x", label="ripple", unit=unit, value=value, low=low, high=high, margin=margin, inside=inside, why=""
    )


@pytest.mark.parametrize(
    ("row", "value", "limits", "outside"),
    [
        (figure(1.41, 1.36, 1.52), "1.41 A", "1.36 to 1.52", "in"),
        (figure(0.81, 0.42, 0.55, "s"), "0.810 s", "0.420 to 0.550", "+0.260 s"),
        (figure(0.009, 0.004, 0.014), "9.0 mA", "4.0 to 14.0", "in"),
        (figure(0.002, 0.004, 0.014), "2.0 mA", "4.0 to 14.0", "−2.0 mA"),
        (figure(0.3144, 0.182, 0.3141), "314.4 mA", "182.0 to 314.1", "+0.3 mA"),
        (figure(0.02, None, 0.014), "20.0 mA", "≤ 14.0", "+6.0 mA"),
        (figure(None, 0.242, 0.436, "s"), "—", "0.242 to 0.436 s", "—"),
        (figure(1.5, None, None, "J"), "1.50 J", "—", "—"),
    ],
)
def test_value_limits_and_what_is_outside_are_in_one_unit(
    row: JudgedFigure, value: str, limits: str, outside: str
) -> None:
    said = words_of(row)
    assert (said.name, said.value, said.limits, said.outside) == ("Ripple", value, limits, outside)


def test_a_margin_has_its_sign_and_its_unit() -> None:
    assert margin_words(figure(1.41, 1.36, 1.52)) == "+50 mA · 31 %"
    assert margin_words(figure(0.81, 0.42, 0.55, "s")) == "−0.26 s · −200 %"
    assert margin_words(figure(1.0, None, None)) == "—"


@pytest.mark.parametrize("density", [ROOMY, CLOSE])
def test_the_numbers_of_a_unit_far_outside_are_whole_beside_a_scroll_bar(qtbot: QtBot, density: Density) -> None:
    """A name gives way before a number does."""
    made = FiguresTable()
    qtbot.addWidget(made)
    rows = tuple(
        msgspec.structs.replace(figure(0.3144, 0.182, 0.3141), name=kind.name, label=kind.label) for kind in FIGURES
    )
    made.fit(density)
    made.show_judged(msgspec.structs.replace(judged_as(False), rows=rows), 3)
    assert made.texts()[0] == ("Peak readback", "314.4 mA", "182.0 to 314.1", "+0.3 mA")
    assert made.minimumSizeHint().width() <= density.lent_px - 16
