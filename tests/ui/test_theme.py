"""Text can be read on its ground, in both themes."""

import pytest
from PySide6.QtGui import QColor, QFont, QRawFont
from PySide6.QtWidgets import QApplication

from ui import theme
from ui.fonts import SHIPPED, has_signs, shipped
from ui.theme import CONTRAST_DARK, CONTRAST_LIGHT, DARK, LIGHT, Tokens


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


@pytest.mark.parametrize("tokens", [CONTRAST_LIGHT, CONTRAST_DARK], ids=lambda tokens: tokens.name)
def test_with_high_contrast_all_words_have_a_contrast_of_seven_and_lines_are_thick(tokens: Tokens) -> None:
    """Source: WCAG 2.1, 1.4.6."""
    for ink in (tokens.ink, tokens.second, tokens.third, tokens.red, tokens.blue, tokens.amber):
        for ground in (tokens.ground, tokens.card):
            assert contrast(ink, ground) >= 7
    assert contrast(tokens.line, tokens.ground) >= 7
    assert contrast(tokens.card, tokens.red) >= 7
    assert "2px solid" in theme.style_sheet(tokens)


def test_high_contrast_comes_light_and_dark(qapp: QApplication) -> None:
    assert [theme.preferred_theme(colours, True).name for colours in ("light", "dark")] == [
        "contrast-light",
        "contrast-dark",
    ]


def test_the_shipped_type_has_every_sign_of_a_reading_and_its_licence_beside_it(qapp: QApplication) -> None:
    assert has_signs(QRawFont(str(SHIPPED), 16))
    assert shipped()[0] == "DejaVu Sans Condensed"
    assert SHIPPED.stat().st_size < 1_000_000
    assert "DejaVu" in (SHIPPED.parent / "LICENCE.txt").read_text(encoding="utf-8")


def test_the_type_of_the_window_has_every_sign_of_a_reading(qapp: QApplication) -> None:
    assert has_signs(QRawFont.fromFont(theme.font()))


def test_figures_are_asked_to_be_of_one_width(qapp: QApplication) -> None:
    assert theme.font().featureValue(QFont.Tag("tnum")) == 1
