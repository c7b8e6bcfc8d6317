"""What the bars say of the last run: the most it used of each, whatever its last reading was."""

import math

from pytestqt.qtbot import QtBot

from benchlog.bench.frames import Used
from ui import texts, theme
from ui.ceiling_bars import CeilingBars


def bars_of(bot: QtBot) -> CeilingBars:
    bars = CeilingBars(theme.LIGHT)
    bot.addWidget(bars)
    bars.begin()
    return bars


def figures(bars: CeilingBars) -> str:
    return bars._rows[0].figures.text()


def locked(value: float) -> list[Used]:
    return [Used("locked_s", value, 20.0, "project")]


def test_after_the_run_the_most_it_used_is_shown(qtbot: QtBot) -> None:
    bars = bars_of(qtbot)
    for value in (math.nan, 2.0, 7.5, 3.0):
        bars.show_used(locked(value))
    running = figures(bars)
    bars.rest()
    assert "3.00" in running
    assert "7.50" in figures(bars)
    assert bars._title.text() == texts.USED_LAST_TITLE


def test_each_bar_says_of_what_it_is_the_limit(qtbot: QtBot) -> None:
    bars = bars_of(qtbot)
    bars.show_used(locked(2.0))
    assert "current into a rotor that stands still, in any 60 s" in bars._rows[0].name.toolTip()
    assert set(texts.USED_WHAT) == set(texts.USED_NAMES)


def test_another_run_begins_from_nothing(qtbot: QtBot) -> None:
    bars = bars_of(qtbot)
    bars.show_used(locked(7.5))
    bars.rest()
    bars.begin()
    bars.show_used(locked(1.0))
    bars.rest()
    assert "1.00" in figures(bars)
