"""What a palette's colours must be told apart by, whoever looks at them."""

import numpy as np
import numpy.typing as npt
import pytest

from ui import theme
from ui.theme import DARK, LIGHT, Tokens

Floats = npt.NDArray[np.float64]
PALETTES: tuple[Tokens, ...] = getattr(theme, "PALETTES", (LIGHT, DARK))

# Source: Machado, Oliveira and Fernandes 2009, "A Physiologically-based Model for Simulation of Color Vision
# Deficiency", severity 1.0, on linear sRGB. From memory; below it is checked that greys stay grey, and that the pairs
# each kind is known to confuse fall together.
SEEN_BY: dict[str, Floats] = {
    "all three cones": np.eye(3),
    "protanopia": np.array(
        [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]
    ),
    "deuteranopia": np.array(
        [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]
    ),
    "tritanopia": np.array(
        [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]]
    ),
}
# Source: IEC 61966-2-1, linear sRGB to CIE XYZ under D65.
TO_XYZ: Floats = np.array(
    [[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.0721750], [0.0193339, 0.1191920, 0.9503041]]
)
LINES_APART, ALARMS_APART = 25.0, 10.0
"""CIE 1976 ΔE. About 2.3 is just noticed; these are common practice, no source. Alarms bring a word and a shape too."""
LINES, ALARMS = ("volts", "amps", "ink"), ("red", "amber", "blue")


def linear(colour: str) -> Floats:
    """Source: IEC 61966-2-1, the curve of sRGB."""
    value = np.array([int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)])
    return np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4)


def lab(rgb: Floats) -> Floats:
    """Source: CIE 15, CIELAB; the white is that of sRGB."""
    share = (TO_XYZ @ np.clip(rgb, 0, 1)) / TO_XYZ.sum(axis=1)
    bent = np.where(share > (6 / 29) ** 3, np.cbrt(share), share / (3 * (6 / 29) ** 2) + 4 / 29)
    return np.array([116 * bent[1] - 16, 500 * (bent[0] - bent[1]), 200 * (bent[1] - bent[2])])


def apart(one: str, other: str, eye: Floats) -> float:
    """ΔE as that eye sees them."""
    return float(np.linalg.norm(lab(eye @ linear(one)) - lab(eye @ linear(other))))


def contrast(one: str, other: str) -> float:
    """Source: W3C WCAG 2.1, contrast ratio from the relative luminance."""
    light, dark = sorted((float(TO_XYZ[1] @ linear(colour)) for colour in (one, other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


each_palette = pytest.mark.parametrize("tokens", PALETTES, ids=lambda tokens: tokens.name)
each_eye = pytest.mark.parametrize("eye", SEEN_BY)


@each_eye
def test_a_grey_is_seen_as_the_same_grey(eye: str) -> None:
    assert apart("#000000", "#ffffff", SEEN_BY[eye]) == pytest.approx(100, abs=0.1)
    assert SEEN_BY[eye].sum(axis=1) == pytest.approx(np.ones(3), abs=2e-6)


@pytest.mark.parametrize(
    ("eye", "one", "other"),
    [
        ("protanopia", "#c00000", "#604000"),
        ("deuteranopia", "#c00000", "#7a6a00"),
        ("tritanopia", "#0072b2", "#00807a"),
    ],
)
def test_what_an_eye_confuses_is_nearer_for_it(eye: str, one: str, other: str) -> None:
    assert apart(one, other, SEEN_BY[eye]) < 0.5 * apart(one, other, np.eye(3))


@each_palette
@each_eye
def test_volts_amps_and_ink_are_told_apart_by_every_eye(tokens: Tokens, eye: str) -> None:
    for number, one in enumerate(LINES):
        for other in (*LINES[number + 1 :], "card"):
            assert apart(getattr(tokens, one), getattr(tokens, other), SEEN_BY[eye]) >= LINES_APART, (one, other)


@each_palette
@each_eye
def test_an_alarm_is_taken_for_no_line_and_for_no_other_alarm(tokens: Tokens, eye: str) -> None:
    for number, one in enumerate(ALARMS):
        for other in (*LINES, *ALARMS[number + 1 :]):
            assert apart(getattr(tokens, one), getattr(tokens, other), SEEN_BY[eye]) >= ALARMS_APART, (one, other)


@each_palette
def test_words_on_a_chart_have_a_contrast_of_four_and_a_half(tokens: Tokens) -> None:
    """Source: W3C WCAG 2.1, 1.4.3."""
    for words in ("volts", "amps", "ink", "second", *ALARMS):
        assert contrast(getattr(tokens, words), tokens.card) >= 4.5, words
    for words in ("second", "ink"):
        assert contrast(getattr(tokens, words), tokens.band) >= 4.5, words


@each_palette
def test_lines_on_a_chart_have_a_contrast_of_three_on_the_card_and_on_a_step(tokens: Tokens) -> None:
    """Source: W3C WCAG 2.1, 1.4.11. `third` is the ceiling's line."""
    for line in ("volts", "amps", "ink", "second", "third"):
        for ground in ("card", "band"):
            assert contrast(getattr(tokens, line), getattr(tokens, ground)) >= 3.0, (line, ground)
