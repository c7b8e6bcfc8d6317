"""Every page is as it was when a person last looked at it: two views here, all of them with `tests.ui.reviewed`."""

import pytest
from PySide6.QtCore import QRect
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QApplication

from tests.ui.reviewed import CELLS, Reviewed, differing, shot, small
from tests.ui.views import USUAL, VIEWS
from ui import theme

HELD = (USUAL, VIEWS[-1])


@pytest.mark.timeout(300)
@pytest.mark.parametrize("view", HELD, ids=lambda view: view.name)
def test_every_page_is_as_it_was_looked_at(qapp: QApplication, view: object) -> None:
    chosen = next(one for one in HELD if one is view)
    before, family = qapp.font(), theme.font().family()
    qapp.setStyle("Fusion")
    qapp.setFont(theme.font())
    reviewed, pages = Reviewed(), shot((chosen,))
    qapp.setFont(before)
    if family != reviewed.family:
        pytest.skip(f"looked at in {reviewed.family}; this system draws in {family}")
    found = [reviewed.trouble(page, chosen, views[chosen.name]) for page, views in pages.items()]
    assert [trouble for trouble in found if trouble] == []
    assert set(reviewed.remarks) == set(pages)


def page() -> QImage:
    made = QImage(1366, 768, QImage.Format.Format_RGB32)
    made.fill(QColor(theme.LIGHT.ground))
    return made


def with_box(box: QRect, colour: str) -> QImage:
    made = page()
    painter = QPainter(made)
    painter.fillRect(box, QColor(colour))
    painter.end()
    return made


def test_a_button_that_is_gone_is_a_difference(qapp: QApplication) -> None:
    assert differing(small(page()), small(with_box(QRect(900, 680, 160, 44), theme.LIGHT.ink))) > CELLS


def test_a_card_that_is_cut_by_half_its_height_is_a_difference(qapp: QApplication) -> None:
    whole, cut = QRect(200, 200, 600, 120), QRect(200, 200, 600, 60)
    assert differing(small(with_box(whole, "#7b8085")), small(with_box(cut, "#7b8085"))) > CELLS


def test_a_few_digits_that_went_on_are_none(qapp: QApplication) -> None:
    assert differing(small(page()), small(with_box(QRect(100, 750, 20, 10), theme.LIGHT.second))) <= CELLS
