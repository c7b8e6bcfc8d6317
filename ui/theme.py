"""How the window looks: four sets of colours, the fonts, and the style sheet made of them.

Grey by default. Volts and amps have the only colours of their own; red, amber and blue are alarms and never decoration.
Sizes of type are set on the widgets with `font`, not in the style sheet, so that tabular figures survive.
"""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QFont, QGuiApplication, QPalette

from ui.fonts import families


@dataclass(frozen=True, slots=True, kw_only=True)
class Tokens:
    """One theme. Colours as "#rrggbb". `third` is for large or decorative text only."""

    name: str
    ground: str
    card: str
    line: str
    ink: str
    second: str
    third: str
    band: str
    selection: str
    volts: str
    amps: str
    red: str
    red_ground: str
    amber: str
    blue: str
    blue_ground: str
    line_px: int = 1


LIGHT = Tokens(
    name="light",
    ground="#f4f3f0",
    card="#ffffff",
    line="#d9d7d2",
    ink="#1d1f21",
    second="#5b5f63",
    third="#85898d",
    band="#efede8",
    selection="#e6e4de",
    volts="#0072B2",
    amps="#c25600",
    red="#b3161b",
    red_ground="#fdeceb",
    amber="#654400",
    blue="#1c4f9c",
    blue_ground="#eaf1fb",
)
DARK = Tokens(
    name="dark",
    ground="#1b1c1e",
    card="#242628",
    line="#3a3d40",
    ink="#eceae6",
    second="#a9adb1",
    third="#7b8085",
    band="#2a2c2f",
    selection="#34373a",
    volts="#56B4E9",
    amps="#E69F00",
    red="#ff8a80",
    red_ground="#3a2324",
    amber="#f2c063",
    blue="#b4ccff",
    blue_ground="#202c3f",
)

CONTRAST_LIGHT = Tokens(
    name="contrast-light",
    ground="#ffffff",
    card="#ffffff",
    line="#000000",
    ink="#000000",
    second="#262626",
    third="#505050",
    band="#efefef",
    selection="#d9d9d9",
    volts="#003b97",
    amps="#7a380b",
    red="#5e002c",
    red_ground="#ffffff",
    amber="#462b00",
    blue="#0b2167",
    blue_ground="#ffffff",
    line_px=2,
)
CONTRAST_DARK = Tokens(
    name="contrast-dark",
    ground="#000000",
    card="#000000",
    line="#ffffff",
    ink="#ffffff",
    second="#e6e6e6",
    third="#b4b4b4",
    band="#1c1c1c",
    selection="#404040",
    volts="#4fb6e2",
    amps="#e4a400",
    red="#ff827d",
    red_ground="#000000",
    amber="#d9b45f",
    blue="#bed6ff",
    blue_ground="#000000",
    line_px=2,
)

PALETTES = (LIGHT, DARK, CONTRAST_LIGHT, CONTRAST_DARK)

BODY_PX, SECOND_PX, SENTENCE_PX, NUMERAL_PX = 15, 13, 22, 50
TOUCH_PX = 44
"""The least height of what is pressed with gloves on."""

FORM_PX = 1040
"""A form is no easier to read for being wider."""


def preferred_theme(colours: str, contrast: bool = False) -> Tokens:
    """`colours`: "light", "dark", or what the desktop prefers for "system", of which also high contrast is taken."""
    hints = QGuiApplication.styleHints()
    dark = colours == "dark"
    if colours == "system":
        dark = hints.colorScheme() is Qt.ColorScheme.Dark
        contrast = contrast or hints.accessibility().contrastPreference() is Qt.ContrastPreference.HighContrast
    if contrast:
        return CONTRAST_DARK if dark else CONTRAST_LIGHT
    return DARK if dark else LIGHT


def follow_desktop(changed: Callable[[], object]) -> None:
    """`changed` is called when the desktop comes to prefer other colours or another contrast."""
    hints = QGuiApplication.styleHints()
    hints.colorSchemeChanged.connect(lambda _: changed())
    hints.accessibility().contrastPreferenceChanged.connect(lambda _: changed())


def font(px: int = BODY_PX, weight: QFont.Weight = QFont.Weight.Normal) -> QFont:
    """The window's type at a size, with figures of one width where the family has them."""
    chosen = QFont(list(families()))
    chosen.setPixelSize(px)
    chosen.setWeight(weight)
    chosen.setFeature(QFont.Tag("tnum"), 1)
    return chosen


def semibold(px: int = BODY_PX) -> QFont:
    return font(px, QFont.Weight.DemiBold)


def palette(tokens: Tokens) -> QPalette:
    """For what the style sheet does not reach: popups, selections, placeholder text."""
    made = QPalette()
    for role, colour in (
        (QPalette.ColorRole.Window, tokens.ground),
        (QPalette.ColorRole.WindowText, tokens.ink),
        (QPalette.ColorRole.Base, tokens.card),
        (QPalette.ColorRole.AlternateBase, tokens.band),
        (QPalette.ColorRole.Text, tokens.ink),
        (QPalette.ColorRole.Link, tokens.ink),
        (QPalette.ColorRole.LinkVisited, tokens.ink),
        (QPalette.ColorRole.PlaceholderText, tokens.second),
        (QPalette.ColorRole.Button, tokens.card),
        (QPalette.ColorRole.ButtonText, tokens.ink),
        (QPalette.ColorRole.Highlight, tokens.selection),
        (QPalette.ColorRole.HighlightedText, tokens.ink),
        (QPalette.ColorRole.ToolTipBase, tokens.card),
        (QPalette.ColorRole.ToolTipText, tokens.ink),
    ):
        made.setColor(role, QColor(colour))
    return made


def style_sheet(tokens: Tokens) -> str:
    """Colours, corners and hairlines. Widgets pick a look with the dynamic property "look"."""
    t, edge = tokens, f"{tokens.line_px}px solid {tokens.line}"
    two, three = 2 - t.line_px, 3 - t.line_px  # what a wider border takes, its padding gives back: no word is cut
    return f"""
QWidget {{ color: {t.ink}; }}
QMainWindow, QWidget#ground {{ background: {t.ground}; }}
QWidget#header {{  background: {t.card}; border: 0; border-bottom: {edge}; }}
QWidget#foot {{ background: {t.ground}; border: 0; border-top: {edge}; }}
QFrame[look="card"] {{ background: {t.card}; border: {edge}; border-radius: 8px; }}
QFrame[look="quiet"] {{ background: transparent; border: {edge}; border-radius: 8px; }}
QFrame[look="here"] {{ background: {t.card}; border: 2px solid {t.ink}; border-radius: 8px; }}
QFrame[look="ask"] {{ background: {t.blue_ground}; border: 2px solid {t.blue}; border-radius: 8px; }}
QFrame[look="amber"] {{ background: {t.card}; border: 2px solid {t.amber}; border-radius: 8px; }}
QFrame[look="alarm"] {{ background: {t.red_ground}; border: 2px solid {t.red}; border-radius: 8px; }}
QFrame[look="line"] {{ background: {t.line}; border: 0; }}
QLabel {{ background: transparent; border: 0; }}
QLabel[tone="second"] {{ color: {t.second}; }}
QLabel[tone="third"] {{ color: {t.third}; }}
QLabel[tone="ask"] {{ color: {t.blue}; }}
QLabel[tone="alarm"] {{ color: {t.red}; }}
QLabel[tone="look"] {{ color: {t.amber}; }}
QPushButton {{ background: {t.card}; border: {edge}; border-radius: 8px; padding: 0 16px; color: {t.ink}; }}
QPushButton:hover {{ background: {t.band}; }}
QPushButton:pressed {{ background: {t.selection}; }}
QPushButton:disabled {{ color: {t.third}; background: transparent; }}
QPushButton:focus {{ border: 2px solid {t.ink}; padding: 0 {16 - two}px; }}
QPushButton[look="main"] {{ background: {t.ink}; color: {t.card}; border: 2px solid {t.ink}; }}
QPushButton[look="main"]:hover {{ background: {t.second}; }}
QPushButton[look="main"]:disabled {{ background: {t.selection}; color: {t.second}; border-color: {t.selection}; }}
QPushButton[look="main"]:focus {{ border: 2px solid {t.third}; padding: 0 16px; }}
QPushButton[look="pill"] {{ border-radius: 22px; }}
QPushButton[look="pill"]:checked {{ background: {t.ink}; color: {t.card}; border-color: {t.ink}; }}
QPushButton[look="room"] {{ background: transparent; border: 0; color: {t.second}; }}
QPushButton[look="room"]:checked {{ background: {t.selection}; color: {t.ink}; }}
QWidget#ground[narrow="true"] QPushButton, QPushButton#ceilings_all {{ padding: 0 8px; }}
QWidget#ground[narrow="true"] QPushButton:focus, QPushButton#ceilings_all:focus {{ padding: 0 {8 - two}px; }}
QWidget#ground[narrow="true"] QPushButton:checked:focus {{ padding: 0 {8 - three}px; }}
QPushButton[look="room"]:focus {{ border: 2px solid {t.second}; padding: 0 14px; }}
QPushButton[look="chart"] {{ background: {t.card}; border: {edge}; border-radius: 6px; padding: 0 8px;
  color: {t.second}; }}
QPushButton[look="chart"]:hover {{ background: {t.band}; }}
QPushButton[look="chart"]:checked {{ background: {t.selection}; color: {t.ink}; }}
QPushButton[look="chart"]:focus {{ border: 2px solid {t.ink}; padding: 0 7px; }}
QPushButton[look="mark"] {{ background: {t.card}; border: 2px solid {t.ink}; border-radius: 4px; padding: 0 8px; }}
QPushButton[look="mark"]:focus {{ border: 3px solid {t.ink}; padding: 0 7px; }}
QPushButton[look="ask"] {{ background: {t.blue}; color: {t.card}; border: 2px solid {t.blue}; }}
QPushButton[look="plain-ask"] {{ background: {t.card}; color: {t.blue}; border: 2px solid {t.blue};
  padding: 0 16px; }}
QPushButton[look="choice"] {{ background: {t.card}; color: {t.second}; }}
QPushButton[look="choice"]:checked {{ background: {t.ink}; color: {t.card}; border-color: {t.ink}; }}
QPushButton[look="choice"]:checked:disabled {{ background: {t.second}; color: {t.card}; }}
QPushButton[look="alarm"] {{ background: {t.red}; color: {t.card}; border: 2px solid {t.red}; padding: 0 4px; }}
QPushButton[look="choice"]:checked:focus, QPushButton[look="pill"]:checked:focus {{ border: 3px solid {t.third};
  padding: 0 {16 - three}px; }}
QPushButton[look="plain-ask"]:focus {{ border: 3px solid {t.third}; padding: 0 15px; }}
QPushButton[look="ask"]:focus {{ border: 3px solid {t.third}; padding: 0 15px; }}
QPushButton[look="alarm"]:focus {{ border: 3px solid {t.third}; padding: 0 3px; }}
QTableView:focus, QScrollArea:focus {{ border: 2px solid {t.ink}; }}
QLineEdit, QComboBox, QSpinBox, QPlainTextEdit {{ background: {t.card}; border: {edge}; border-radius: 6px;
  padding: 2px 10px; selection-background-color: {t.selection}; selection-color: {t.ink}; }}
QLineEdit:focus, QComboBox:focus, QSpinBox:focus, QPlainTextEdit:focus {{ border: 2px solid {t.ink};
  padding: 1px 9px; }}
QLineEdit:read-only, QPlainTextEdit:read-only {{ background: {t.band}; }}
QLineEdit:disabled, QComboBox:disabled, QSpinBox:disabled {{ background: {t.band}; color: {t.second}; }}
QLineEdit[wrong="true"] {{ border: 2px solid {t.red}; padding: 1px 9px; }}
QComboBox {{ combobox-popup: 0; }}
QComboBox::drop-down {{ border: 0; width: 28px; }}
QComboBox QAbstractItemView {{ background: {t.card}; border: {edge}; outline: 0; }}
QComboBox QAbstractItemView::item {{ min-height: {TOUCH_PX}px; padding: 0 8px; }}
QComboBox QLineEdit {{ border: 0; padding: 0; background: transparent; }}
QMenu {{ background: {t.card}; border: {edge}; }}
QMenu::item {{ min-height: {TOUCH_PX}px; padding: 0 24px; }}
QMenu::item:selected {{ background: {t.selection}; }}
QMenu::item:disabled {{ color: {t.third}; }}
QCheckBox {{ spacing: 10px; background: transparent; }}
QCheckBox::indicator {{ width: 22px; height: 22px; border: {t.line_px}px solid {t.third}; border-radius: 5px;
  background: {t.card}; }}
QCheckBox::indicator:focus {{ border: 2px solid {t.ink}; }}
QCheckBox::indicator:disabled {{ background: {t.band}; }}
QTableView {{ background: {t.card}; border: {edge}; border-radius: 8px; gridline-color: {t.line};
  selection-background-color: {t.selection}; selection-color: {t.ink}; outline: 0; }}
QListWidget[look="rows"] {{ background: {t.card}; border: {edge}; border-radius: 8px; outline: 0; }}
QListWidget[look="rows"]:focus {{ border: 2px solid {t.ink}; }}
QListWidget[look="rows"]::item {{ padding: 0 10px; border-bottom: 1px solid {t.band}; }}
QListWidget[look="rows"]::item:selected {{ background: {t.selection}; color: {t.ink}; }}
QTextBrowser {{ background: {t.card}; border: {edge}; border-radius: 8px; padding: 1px; }}
QTextBrowser:focus {{ border: 2px solid {t.ink}; padding: 0; }}
QHeaderView {{ background: transparent; }}
QHeaderView::section {{ background: {t.card}; color: {t.second}; border: 0; border-bottom: {edge};
  padding: 4px 13px; }}
QTableView::item {{ padding: 0 10px; border-bottom: 1px solid {t.band}; }}
QScrollArea, QScrollArea > QWidget > QWidget {{ background: transparent; border: 0; }}
QScrollBar:vertical {{ background: transparent; width: 12px; margin: 2px; }}
QScrollBar::handle:vertical {{ background: {t.line}; border-radius: 4px; min-height: 32px; }}
QScrollBar::add-line, QScrollBar::sub-line {{ height: 0; width: 0; }}
QToolTip {{ background: {t.card}; color: {t.ink}; border: {edge}; padding: 4px; }}
"""
