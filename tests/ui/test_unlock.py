"""The ceilings of a job with their layers before a run, and a job let go further by name and reason."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from benchlog.errors import Refused
from benchlog.ledger.unlocks import unlocks
from benchlog.records import Closing, Stage
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.settings import Settings
from tests.ui.conftest import Desk
from ui import sayings, texts
from ui.stages.unlock import UnlockRow

OWNER = Settings(ceilings=Limits(volts=24.0, kicks=20), unlocked=Limits(volts=30.0, kicks=40))


def row_of(desk: Desk) -> UnlockRow:
    return desk.window.intake.unlock


def shown(desk: Desk) -> dict[str, tuple[str, str]]:
    """Figures and layer by the name of the quantity, as they stand beside the bars."""
    found = {}
    for row in desk.window.panel.ceilings._rows:
        parts = [part for part in row.parts() if isinstance(part, QLabel)]
        assert all(part.isVisible() for part in parts)
        name, figures, layer = (part.text() for part in parts)
        found[name] = (figures.replace("<b>", "").replace("</b>", ""), layer)
    return found


def unlocked(desk: Desk, who: str = "dock foreman", why: str = "a larger boat's pump") -> None:
    desk.session.go_to(Stage.INTAKE)
    QTest.keyClicks(row_of(desk).who, who)
    QTest.keyClicks(row_of(desk).why, why)
    desk.click("unlock")


def test_every_ceiling_of_a_job_is_shown_with_its_layer_before_a_run(desk: Desk) -> None:
    desk.owner = OWNER
    desk.take_in("36 V")
    assert shown(desk) == {
        "Volts": ("— / 24 V", "owner"),
        "Amps": ("— / 20 A", "program"),
        "Winding": ("— / 90 °C", "motor"),
        "Locked": ("— / 3 s", "program"),
        "Energy": ("— / 1000 J", "program"),
        "On-time": ("— / 25 h", "program"),
        "Kicks": ("— / 20", "owner"),
    }
    desk.session.new_job()
    assert not desk.window.panel.ceilings._rows[0].layer.isVisible()


def test_a_ceiling_changed_between_runs_is_shown_at_once(desk: Desk) -> None:
    desk.take_in()
    assert shown(desk)["Volts"] == ("— / 12 V", "job")
    desk.window.intake.max_volts.put(9.0)
    desk.window.intake.max_volts.editingFinished.emit()
    assert shown(desk)["Volts"] == ("— / 9 V", "job")


def test_while_a_run_is_on_each_bar_says_its_layer(desk: Desk) -> None:
    desk.begin_probe()
    desk.bot.waitUntil(lambda: desk.window.panel.ceilings.of_run, timeout=3000)
    assert shown(desk)["Amps"][1] == "supply"
    assert shown(desk)["On-time"][1] == "program"


def test_where_the_settings_allow_none_there_is_nothing_to_press(desk: Desk) -> None:
    desk.owner = Settings(ceilings=Limits(volts=24.0))
    desk.take_in()
    desk.session.go_to(Stage.INTAKE)
    assert desk.window.intake.isVisible()
    assert not row_of(desk).isVisible()


def test_before_a_job_is_taken_in_and_after_it_is_closed_there_is_nothing_to_unlock(desk: Desk) -> None:
    desk.owner = OWNER
    desk.session.refresh()
    assert not row_of(desk).isVisible()
    desk.take_in()
    assert not row_of(desk).isHidden()
    desk.session.bench.close(Closing(cause="rust", work_done="", prognosis=""))
    desk.session.refresh()
    assert row_of(desk).isHidden()


def test_an_unlock_is_kept_and_raises_the_owner_s_layer_of_the_next_run(desk: Desk) -> None:
    desk.owner = OWNER
    desk.take_in("36 V")
    assert "volts 30 V, kicks 40" in row_of(desk).said.text()
    unlocked(desk)
    (made,) = unlocks(desk.ledger, 1)
    assert (made.who, made.why, made.limits) == ("dock foreman", "a larger boat's pump", OWNER.unlocked)
    assert row_of(desk).said.text().startswith("Unlocked by dock foreman until ")
    assert (row_of(desk).who.text(), row_of(desk).why.text()) == ("", "")
    assert shown(desk)["Volts"] == ("— / 30 V", "owner")
    desk.session.go_to(Stage.MAKE_SAFE)
    desk.make_safe()
    desk.click("probe_start")
    request = desk.links[-1].request
    assert request.layers[Layer.OWNER] == Limits(volts=30.0, kicks=40)
    assert request.unlocked == str(made)


@pytest.mark.parametrize(("who", "why"), [("", "a larger boat's pump"), ("dock foreman", ""), ("dock foreman", "big")])
def test_without_a_name_and_a_reason_nothing_is_unlocked_and_what_was_typed_stays(
    desk: Desk, who: str, why: str
) -> None:
    desk.owner = OWNER
    desk.take_in()
    unlocked(desk, who, why)
    assert unlocks(desk.ledger) == []
    assert desk.window.notice.isVisible()
    assert (row_of(desk).who.text(), row_of(desk).why.text()) == (who, why)
    for field, text in ((row_of(desk).who, "dock foreman"), (row_of(desk).why, "<b>a larger</b> boat's pump")):
        field.setText(text)
    desk.click("unlock")
    assert not desk.window.notice.isVisible()
    assert "<b>a larger</b>" in row_of(desk).said.text()
    assert row_of(desk).said.textFormat() is Qt.TextFormat.PlainText


def test_nothing_is_unlocked_while_a_run_is_on(desk: Desk) -> None:
    desk.owner = OWNER
    desk.begin_probe()
    desk.session.go_to(Stage.INTAKE)
    row = row_of(desk)
    assert row.isVisible()
    assert not any(part.isEnabled() for part in (row.who, row.why, row.button))
    row.pressed.emit("dock foreman", "a larger boat's pump")
    assert unlocks(desk.ledger) == []
    assert desk.window.notice.words.text() == texts.NOT_WHILE_ON
    desk.until_over()
    assert row.button.isEnabled()


def test_settings_that_can_not_be_read_are_said_and_begin_no_run(desk: Desk) -> None:
    desk.take_in()
    desk.make_safe()

    def broken() -> Settings:
        raise Refused("settings.toml: ceilings.volts: not a number")

    desk.session.bench._settings = broken
    desk.click("probe_start")
    assert desk.links == []
    assert "ettings.toml: ceilings.volts" in desk.window.notice.words.text()


def test_the_history_shows_an_unlock_among_the_entries_of_its_job(desk: Desk) -> None:
    desk.owner = OWNER
    desk.take_in()
    unlocked(desk)
    desk.session.go_to(Stage.MAKE_SAFE)
    desk.make_safe()
    desk.click("room_history")
    desk.session.browsing.settle()
    desk.window.history.table.selectRow(0)
    desk.session.browsing.settle()
    lines = [line.said for line in reversed(desk.window.history.record.lines)]
    assert "taken in" in lines[0]
    assert "Unlocked by dock foreman until" in lines[1]
    assert lines[1].endswith("a larger boat's pump")
    assert len(lines) == 8
    assert sayings.limits_text(Limits()) == ""
