"""The settings: a column of cards. Shows what it is given and says what is wanted; it can switch nothing on."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from ui import texts, theme
from ui.pieces import button, label, scrolled
from ui.settings.keys_card import KeysCard
from ui.settings.look_card import LookCard
from ui.settings.places_card import PlacesCard
from ui.settings.told_cards import BundleCard, LicencesCard, LimitsCard


class SettingsRoom(QWidget):
    """`back` to where one was, `undone` to take back the last change."""

    back = Signal()
    undone = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setMaximumWidth(theme.FORM_PX)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.back_button = button(texts.BACK_FROM_HERE, "settings_back", accessible=texts.BACK_NAME)
        self.back_button.clicked.connect(self.back)
        top = QHBoxLayout()
        top.addWidget(label(texts.SETTINGS_SAY, px=theme.SENTENCE_PX, bold=True, wrap=True), 1)
        top.addWidget(self.back_button)
        column.addLayout(top)
        column.addWidget(label(texts.SETTINGS_WHY, "second", wrap=True))
        self.look, self.keys, self.limits = LookCard(), KeysCard(), LimitsCard()
        self.places, self.bundle, self.licences = PlacesCard(), BundleCard(), LicencesCard()
        cards = QWidget()
        lines = QVBoxLayout(cards)
        lines.setContentsMargins(0, 0, 2, 0)
        lines.setSpacing(8)
        for part in (self.look, self.keys, self.limits, self.places, self.bundle, self.licences):
            lines.addWidget(part)
        lines.addStretch(1)
        self.cards = scrolled(cards)
        column.addWidget(self.cards, 1)
        self.undo_button = button(texts.SETTING_UNDO, "settings_undo")
        self.undo_button.setShortcut("Ctrl+Z")
        self.undo_button.clicked.connect(self.undone)
        self.said = label("", "second", px=theme.SECOND_PX)
        self.said.setObjectName("settings_said")
        foot = QHBoxLayout()
        foot.addWidget(self.said, 1)
        foot.addWidget(self.undo_button)
        column.addLayout(foot)
