"""The window on the real bench process and a simulated supply: nothing between them is replayed."""

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from benchlog.bench.link import Link
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome, WindingVerdict
from benchlog.records import RunKind, Stage
from tests.ui.conftest import Desk
from ui import texts, theme
from ui.bench_keys import HOLD_KEY
from ui.main_window import MainWindow
from ui.off_state import OffState
from ui.session import Session

ROOT = Path(__file__).parents[2]


@pytest.fixture
def supply(request: pytest.FixtureRequest) -> Iterator[str]:
    with subprocess.Popen(
        [sys.executable, "-m", "drivers.simulated", "--scenario", request.param, "--until-stdin-closes"],
        cwd=ROOT,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    ) as server:
        assert server.stdout is not None
        yield server.stdout.readline().split()[-1]
        server.terminate()


def at_the_bench(qtbot: QtBot, ledger: Ledger, resource: str) -> Desk:
    window = MainWindow(theme.LIGHT, resource=resource)
    qtbot.addWidget(window)
    session = Session(window, ledger, Link, resource=resource)
    window.show()
    made = Desk(window, session, ledger, qtbot)
    made.take_in()
    made.make_safe()
    QTest.qWait(10)
    made.click("probe_start")
    return made


@pytest.mark.parametrize("supply", ["diode"], indirect=True)
def test_a_probe_finds_the_diode_and_is_filed(qtbot: QtBot, ledger: Ledger, supply: str) -> None:
    desk = at_the_bench(qtbot, ledger, supply)
    qtbot.waitUntil(lambda: not desk.session.run.on, timeout=60_000)
    assert desk.session.off.state is OffState.CONFIRMED
    (run,) = ledger.runs(1)
    assert (run.result.outcome, run.result.winding_verdict) == (Outcome.DIODE, WindingVerdict.DIODE)
    assert run.samples > 20
    assert desk.window.probe.say_label.text() == texts.OUTCOME_SAY[Outcome.DIODE]
    assert not desk.window.rail.rows[Stage.FREE].isEnabled()


@pytest.mark.parametrize("supply", ["stuck-soft"], indirect=True)
def test_closing_the_window_waits_until_off_is_read_back(qtbot: QtBot, ledger: Ledger, supply: str) -> None:
    desk = at_the_bench(qtbot, ledger, supply)
    qtbot.waitUntil(lambda: desk.window.probe.plot.last_s > 0.5, timeout=20_000)
    desk.window.close()
    assert desk.window.isVisible()
    qtbot.waitUntil(lambda: not desk.window.isVisible(), timeout=20_000)
    assert desk.session.off.state is OffState.CONFIRMED
    (run,) = ledger.runs(1)
    assert run.result.outcome is Outcome.STOPPED
    assert run.result.output_confirmed_off


@pytest.mark.timeout(120)
@pytest.mark.parametrize("supply", ["hopeless"], indirect=True)
def test_current_flows_while_the_key_is_held_and_the_operator_says_what_came_of_it(
    qtbot: QtBot, qapp: QApplication, ledger: Ledger, supply: str
) -> None:
    desk = at_the_bench(qtbot, ledger, supply)
    card = desk.window.probe.question
    qtbot.waitUntil(card.isVisible, timeout=30_000)
    card.buttons[-1].click()
    qtbot.waitUntil(lambda: not desk.session.run.on, timeout=30_000)
    desk.click("probe_go_on")
    qapp.installEventFilter(desk.session.running.keys)
    try:
        desk.click("free_hand")
        qtbot.waitUntil(desk.window.free.question.isVisible, timeout=30_000)
        QTest.keyPress(desk.window, HOLD_KEY)
        qtbot.waitUntil(lambda: desk.session.running._flowing, timeout=5_000)
        qtbot.wait(600)
        QTest.keyRelease(desk.window, HOLD_KEY)
        qtbot.waitUntil(lambda: not desk.session.running._flowing, timeout=5_000)
        desk.window.free.question.buttons[1].click()
        qtbot.waitUntil(lambda: not desk.session.run.on, timeout=30_000)
    finally:
        qapp.removeEventFilter(desk.session.running.keys)
    run = ledger.runs(1)[-1]
    assert (run.kind, run.result.outcome, run.result.output_confirmed_off) == (RunKind.HAND, Outcome.STILL_STUCK, True)
    holds = [event for event in ledger.events(run.id) if "seconds" in event.values]
    assert len(holds) == 1
    assert 0.4 < float(str(holds[0].values["seconds"])) < 2.0


def test_an_address_where_nobody_listens_is_refused_without_an_alarm(qtbot: QtBot, ledger: Ledger) -> None:
    desk = at_the_bench(qtbot, ledger, "TCPIP::127.0.0.1::9::SOCKET")
    qtbot.waitUntil(lambda: not desk.session.run.on, timeout=30_000)
    assert desk.window.probe.say_label.text() == texts.OUTCOME_SAY[Outcome.REFUSED]
    assert desk.session.off.state is OffState.IDLE
    assert ledger.runs(1) == []
