"""What a job has cost so far against what its owner allows: a bar, and words that say the same."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from benchlog.ledger.costs import Standing
from benchlog.money import show_money
from ui import texts, theme
from ui.pieces import label, set_look
from ui.theme import Tokens

BAR_PX = 8


def standing_text(standing: Standing, currency: str) -> str:
    """ "34.50 EUR of at most 60.00 EUR; 25.50 EUR left"."""
    so_far = show_money(standing.cents, currency)
    if standing.limit_cents is None or standing.left_cents is None:
        return texts.COST_NO_LIMIT.format(cents=so_far)
    words = texts.COST_PASSED if standing.left_cents < 0 else texts.COST_NEAR if standing.near else texts.COST_STANDS
    left, limit = show_money(abs(standing.left_cents), currency), show_money(standing.limit_cents, currency)
    return words.format(cents=so_far, limit=limit, left=left)


def standing_short(standing: Standing, currency: str) -> str:
    """ "34.50 of 60.00 EUR"; "costs 34.50 of 60.00" where the settings name no currency: bare numbers say nothing."""
    words = show_money(standing.cents, currency)
    if standing.limit_cents is not None:
        limit = show_money(standing.limit_cents, currency)
        words = texts.COST_SHORT.format(cents=show_money(standing.cents), limit=limit)
    return words if currency else texts.COST_NO_CURRENCY.format(words=words)


class LimitBar(QWidget):
    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._bar = _Bar(tokens)
        self.words = label("", bold=True, wrap=True)
        self.words.setObjectName("cost_words")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(self.words)
        column.addWidget(self._bar)

    def show_standing(self, standing: Standing, currency: str) -> None:
        self.words.setText(standing_text(standing, currency))
        set_look(self.words, "look" if standing.near else "", name="tone")
        self.words.setFont(theme.semibold())  # polishing puts back the font it had first
        limit = standing.limit_cents
        self._bar.near = standing.near
        self._bar.share = 0.0 if limit is None else 1.0 if standing.cents >= limit else max(0, standing.cents) / limit
        self._bar.setVisible(limit is not None)
        self._bar.update()

    def set_tokens(self, tokens: Tokens) -> None:
        self._bar.tokens = tokens
        self._bar.update()


class _Bar(QWidget):
    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.tokens, self.share, self.near = tokens, 0.0, False
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(80, BAR_PX)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QColor(0, 0, 0, 0))
        painter.setBrush(QColor(self.tokens.selection))
        box = QRectF(self.rect())
        painter.drawRoundedRect(box, BAR_PX / 2, BAR_PX / 2)
        if self.share > 0:
            painter.setBrush(QColor(self.tokens.amber if self.near else self.tokens.second))
            painter.drawRoundedRect(QRectF(0, 0, max(BAR_PX, box.width() * self.share), BAR_PX), BAR_PX / 2, BAR_PX / 2)
        painter.end()
