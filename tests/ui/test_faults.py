"""A bug in a slot is more than a line in the log."""

import logging
import sys
from collections.abc import Iterator

import pytest

from ui.faults import hook_faults


@pytest.fixture(autouse=True)
def own_hook() -> Iterator[None]:
    before = sys.excepthook
    yield
    sys.excepthook = before


def raise_into_hook(error: Exception) -> None:
    try:
        raise error
    except type(error) as raised:
        sys.excepthook(type(raised), raised, raised.__traceback__)


def test_it_is_logged_and_handed_on(caplog: pytest.LogCaptureFixture) -> None:
    told: list[str] = []
    hook_faults(told.append)
    with caplog.at_level(logging.CRITICAL):
        raise_into_hook(ZeroDivisionError("division by zero"))
    assert told == ["ZeroDivisionError: division by zero"]
    assert "raise_into_hook" in caplog.text


def test_a_fault_while_showing_a_fault_does_not_go_round_in_circles(caplog: pytest.LogCaptureFixture) -> None:
    calls: list[str] = []

    def show(what: str) -> None:
        calls.append(what)
        raise_into_hook(KeyError("again"))

    hook_faults(show)
    with caplog.at_level(logging.CRITICAL):
        raise_into_hook(ValueError("first"))
    assert len(calls) == 1
