"""Everything fits on a small screen, in every stage and with everything open that can be."""

import pytest

from benchlog.bench.frames import Question
from benchlog.records import Stage
from benchlog.recovery.ceilings import Limits, intersect
from tests.ui.conftest import Desk
from ui import theme
from ui.alarms import What

LONG = "the thing hums when it is switched on but does not turn, and smells when it is left so, says its owner, " * 3


@pytest.mark.parametrize("stage", list(Stage))
def test_every_stage_fits_1366_by_768(desk: Desk, stage: Stage) -> None:
    window = desk.window
    window.show_stage(stage)
    window.notice.tell(LONG, What.LEDGER)
    window.free.question.ask(Question(id=1, text=LONG, choices=["leads are swapped", "skip"]))
    window.free.say("Turn the shaft by hand both ways, tap the housing, let a drop soak in, and then go on.", LONG)
    window.panel.off.seen.show()
    window.panel.ceilings.show_before(intersect({}))
    if stage is Stage.INTAKE:
        window.intake.unlock.offer(Limits(volts=30.0), None)
        window.intake.open_button.hide()  # a job that can be unlocked has been taken in

    def fits() -> None:
        least = window.minimumSizeHint()
        assert (least.width() <= 1366, least.height() <= 768) == (True, True), least

    desk.bot.waitUntil(fits, timeout=2000)  # the layouts of what was shown and hidden settle over a few turns
    desk.bot.wait(20)
    fits()


def test_long_words_of_a_label_do_not_widen_the_window(desk: Desk) -> None:
    desk.window.header.show_job("Job 0001 · Bilge pump", LONG, on_bench=True)
    desk.bot.wait(20)
    assert desk.window.minimumSizeHint().width() <= 1366


def test_another_theme_reaches_every_part(desk: Desk) -> None:
    before = desk.window.grab().toImage()
    desk.window.wear(theme.DARK)
    after = desk.window.grab().toImage()
    for x, y in ((10, 100), (60, 20), (1100, 100), (600, 740)):
        assert before.pixelColor(x, y).lightness() > 200
        assert after.pixelColor(x, y).lightness() < 60
