"""The window stands where it stood, unless that is on no screen any more."""

from pathlib import Path

from PySide6.QtCore import QRect, QSize

from tests.ui.conftest import Desk
from ui.main_window import BENCH_ROOM, HISTORY_ROOM
from ui.placing import in_sight, keep_place, put_back, room_left
from ui.preferences import Preferring

LEFT, RIGHT = QRect(0, 0, 1366, 768), QRect(1366, 0, 1920, 1080)


def test_a_window_on_a_screen_that_is_gone_is_not_in_sight() -> None:
    stood = QRect(1500, 40, 1180, 700)
    assert in_sight(stood, [LEFT, RIGHT])
    assert not in_sight(stood, [LEFT])
    assert not in_sight(QRect(1300, 40, 1180, 700), [LEFT])  # too little of it to be taken hold of
    assert not in_sight(QRect(100, -60, 1180, 700), [LEFT])  # its upper edge is above


def test_size_and_room_are_taken_up_again(desk: Desk, tmp_path: Path) -> None:
    window, kept = desk.window, tmp_path / "window.json"
    window.resize(700, 500)
    desk.session.show_room(HISTORY_ROOM)
    keep_place(window, Preferring(kept))
    window.resize(790, 590)
    put_back(window, Preferring(kept))
    assert window.size() == QSize(700, 500)
    assert room_left(Preferring(kept)) == HISTORY_ROOM


def test_what_is_no_place_is_passed_over(desk: Desk, tmp_path: Path) -> None:
    preferring = Preferring(tmp_path / "window.json")
    preferring.change(geometry="Kä se", parts={"room": "4"})
    put_back(desk.window, preferring)
    assert desk.window.isVisible()
    assert room_left(preferring) == BENCH_ROOM
    preferring.change(parts={"room": 5000 * "9"})
    assert room_left(preferring) == BENCH_ROOM
