"""The form of a start test: what is wrong is named, what does not belong is left out, what is locked is only read."""

import pytest
from pytestqt.qtbot import QtBot

from benchlog.ledger.start_tests import KeptTest
from benchlog.recovery.start_test import StartTest, Trigger
from ui.curves.test_form import TestForm


@pytest.fixture
def form(qtbot: QtBot) -> TestForm:
    made = TestForm()
    qtbot.addWidget(made)
    made.name.setText("cold start")
    made.quantities["volts"].setText("3 V")
    return made


@pytest.mark.parametrize(
    ("field", "text", "says"), [("volts", "", "Volts"), ("volts", "many", "Volts"), ("rest_s", "x", "Rest before each")]
)
def test_a_field_that_says_nothing_is_named_and_nothing_is_to_be_locked(
    form: TestForm, field: str, text: str, says: str
) -> None:
    asked: list[object] = []
    form.locking.connect(lambda test, _: asked.append(test))
    form.who.setText("Mira")  # without a name nothing is locked anyway
    form.quantities[field].setText(text)
    form.lock.click()
    assert form.problem.text().startswith(says)
    assert asked == []


def test_what_is_typed_is_what_is_locked_with_either_decimal_mark(form: TestForm) -> None:
    asked: list[object] = []
    form.locking.connect(lambda test, who: asked.append((test, who)))
    form.quantities["on_s"].setText("1,25")
    form.quantities["before_s"].setText("")
    form.starts.setText("7")
    form.interleave.setCurrentIndex(form.interleave.findData(3))
    form.who.setText(" Mira ")
    form.lock.click()
    expected = StartTest(name="cold start", volts=3.0, on_s=1.25, before_s=0.0, starts=7, interleave=3)
    assert asked == [(expected, "Mira")]


def test_a_level_takes_the_unit_of_its_trigger_and_does_not_belong_to_output_on(form: TestForm) -> None:
    assert not form.quantities["level"].isEnabled()
    form.trigger.setCurrentIndex(form.trigger.findData("amps"))
    form.quantities["level"].setText("200 mA")
    form.quantities["hysteresis"].setText("50m")
    made = form.test()
    assert isinstance(made, StartTest)
    assert (made.trigger, made.level, made.hysteresis, made.interleave) == (Trigger.AMPS, 0.2, 0.05, 1)
    form.trigger.setCurrentIndex(form.trigger.findData("output-on"))
    made = form.test()
    assert isinstance(made, StartTest)
    assert made.level is None


def test_a_locked_test_is_shown_as_it_is_and_can_be_copied(form: TestForm) -> None:
    test = StartTest(
        name="warm start", version=4, volts=2.5, amps=1.5, trigger=Trigger.VOLTS, level=1.0, hysteresis=0.2
    )
    form.show_tests([KeptTest(id=9, test=test, utc="2026-11-25T08:00:00.000Z", who="Mira", digest="")], 9)
    assert form.test() == test
    assert all(edit.isReadOnly() for edit in form.fields())
    assert (form.lock.isVisibleTo(form), form.use.isVisibleTo(form)) == (False, True)
    form.copy_as(5)
    assert [edit.isReadOnly() for edit in form.fields()] == [True, *[False] * (len(form.fields()) - 1)]
    copied = form.test()
    assert isinstance(copied, StartTest)
    assert (copied.name, copied.version, copied.volts, copied.level) == ("warm start", 5, 2.5, 1.0)
