"""The figures beside a plot: of a long time in minutes or hours."""

import pytest
from pytestqt.qtbot import QtBot

from ui import texts
from ui.charts.pane import Axis


@pytest.mark.parametrize(
    ("span_s", "last", "step_s"),
    [(30.0, "s", 5.0), (599.0, "s", 100.0), (3000.0, "min", 600.0), (20 * 3600.0, "h", 5 * 3600.0)],
)
def test_a_time_is_written_in_the_unit_that_suits_it(qtbot: QtBot, span_s: float, last: str, step_s: float) -> None:
    axis = Axis("bottom", unit=texts.SECONDS_UNIT)
    axis.setRange(0.0, span_s)
    assert axis.tickSpacing(0.0, span_s, 750.0)[0] == (step_s, 0)
    per_s = {"s": 1, "min": 60, "h": 3600}[last]
    assert axis.tickStrings([0.0, step_s], 1.0, step_s) == ["0", f"{step_s / per_s:g} {last}"]


def test_what_is_no_time_keeps_its_unit_however_large(qtbot: QtBot) -> None:
    axis = Axis("bottom", unit="A")
    axis.setRange(0.0, 7200.0)
    assert axis.tickStrings([0.0, 3600.0], 1.0, 3600.0) == ["0", "3600 A"]
