"""Text can be read on its ground, in both themes."""

import pytest
from PySide6.QtGui import QColor, QFont
from PySide6.QtWidgets import QApplication

from ui import theme
from ui.theme import DARK, LIGHT, Tokens


def luminance(colour: str) -> float:
    """Source: WCAG 2.1, relative luminance."""
    made = QColor(colour)

    def linear(share: float) -> float:
        return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4

    return 0.2126 * linear(made.redF()) + 0.7152 * linear(made.greenF()) + 0.0722 * linear(made.blueF())


def contrast(one: str, other: str) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("tokens", [LIGHT, DARK], ids=lambda tokens: tokens.name)
def test_words_have_a_contrast_of_four_and_a_half(tokens: Tokens) -> None:
    for ink in (tokens.ink, tokens.second):
        for ground in (tokens.ground, tokens.card, tokens.band):
            assert contrast(ink, ground) >= 4.5
    assert contrast(tokens.red, tokens.red_ground) >= 4.5
    assert contrast(tokens.blue, tokens.blue_ground) >= 4.5
    assert contrast(tokens.card, tokens.red) >= 4.5
    assert contrast(tokens.card, tokens.blue) >= 4.5


def test_figures_are_asked_to_be_of_one_width(qapp: QApplication) -> None:
    assert theme.font().featureValue(QFont.Tag("tnum")) == 1
