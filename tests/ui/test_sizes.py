"""Every page can be used from 683 x 384 up, in English and in words that are a third longer."""

from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest
from PySide6.QtCore import QSize
from PySide6.QtWidgets import QAbstractButton, QApplication

from tests.ui.sizes import SIZES, Everything, lengthen, settle, wrong
from ui import texts, theme
from ui.density import CLOSE, LEAST, ROOMY, TIGHT, density_of
from ui.main_window import BENCH_ROOM, HISTORY_ROOM
from ui.translating import LANGUAGES, read_catalogue, speak


@pytest.fixture(scope="module")
def everything(qapp: QApplication, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Everything]:
    made = Everything(Path(tmp_path_factory.mktemp("sizes")))
    yield made
    made.close()


def found(everything: Everything, sizes: Sequence[QSize] = SIZES) -> list[str]:
    told = []
    for size in sizes:
        everything.window.resize(size)
        for name in everything.scenes():
            settle(everything.window)
            told += [f"{name} {size.width()}x{size.height()}: {line}" for line in wrong(everything.window)]
    return told


def test_both_sides_of_the_window_decide_how_close_its_parts_stand() -> None:
    sizes = ((1366, 768), (1280, 720), (911, 512), (1366, 512), (683, 384), (1366, 384))
    assert [density_of(QSize(*size)) for size in sizes] == [ROOMY, ROOMY, CLOSE, CLOSE, TIGHT, TIGHT]


def test_on_no_page_is_anything_cut_or_covered_at_any_size(everything: Everything) -> None:
    assert found(everything) == []


def test_the_smallest_window_says_whole_what_output_off_is_not(everything: Everything) -> None:
    settle(everything.window, LEAST)
    panel = everything.window.panel
    assert panel.note.text() == texts.NO_EMERGENCY_STOP_SHORT
    assert panel.note.toolTip() == texts.NO_EMERGENCY_STOP
    assert panel.button.height() >= theme.TOUCH_PX
    settle(everything.window, SIZES[-1])
    assert panel.note.text() == texts.NO_EMERGENCY_STOP


def test_what_controls_a_run_takes_gloves_at_every_size(everything: Everything) -> None:
    for size in SIZES:
        settle(everything.window, size)
        free = everything.window.free
        for part in (free.start_button, free.on_button, free.moved_button, free.hold_button, *free.hand_parts[1:]):
            assert isinstance(part, QAbstractButton)
            assert part.minimumHeight() >= theme.TOUCH_PX


def test_words_a_third_longer_have_room_too(everything: Everything) -> None:
    lengthen(everything.window)
    assert found(everything) == []


def test_a_room_that_was_not_shown_when_the_window_was_made_smaller_is_fitted_when_it_is(
    everything: Everything,
) -> None:
    window = everything.window
    settle(window, SIZES[-1])
    window.show_room(BENCH_ROOM)
    settle(window, LEAST)
    window.show_room(HISTORY_ROOM)
    settle(window, LEAST)
    assert wrong(window) == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_in_no_language_is_anything_cut_at_any_size(qapp: QApplication, tmp_path: Path, language: str) -> None:
    speak(read_catalogue(LANGUAGES[language]))
    made = Everything(tmp_path)
    try:
        assert found(made) == []
    finally:
        made.close()
        speak(())
