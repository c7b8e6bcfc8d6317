"""The line above the work for what is not part of a run's own sentences, with what was said before it."""

from PySide6.QtCore import QElapsedTimer, Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from ui import texts, theme
from ui.alarm_looks import CARD_OF, SIGN_OF, TONE_OF, colour_of, icon_of, word_of
from ui.alarms import Alarms, Told, What
from ui.density import Density
from ui.moments import now_text
from ui.pieces import Elided, button, label, set_look
from ui.shapes import Sign
from ui.theme import Tokens

LIST_PX, WORDS_AT = 168, 2
SETTLE_MS = 600
"""A press on "Seen" sooner after words came to stand there was meant for what stood there before: nobody reads as
quickly. Starting value of this project."""


class Notice(QFrame):
    """Hidden while nothing is open. The most urgent stands first; what was said last stands below where it is not the
    same. `told` carries each Told, `changed` comes whenever what is open is other than before."""

    told = Signal(object)
    changed = Signal()

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self._tokens = tokens
        self.alarms = Alarms()
        self._first, self._stands = 0, QElapsedTimer()
        """Which stands first, and since when."""
        self.setObjectName("notice")
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(14, 4, 6, 4)
        column.setSpacing(4)
        self._row = self._first_row()
        column.addLayout(self._row)
        self.below = QWidget()
        row = QHBoxLayout(self.below)
        row.setContentsMargins(2, 0, 8, 4)
        row.setSpacing(10)
        self._below_sign = Sign(tokens.second, side=16)
        self._below_level = label("", px=theme.SECOND_PX, bold=True)
        self._below_words = Elided("", px=theme.SECOND_PX)
        self._below_words.setObjectName("notice_last")
        for part, share in ((self._below_sign, 0), (self._below_level, 0), (self._below_words, 1)):
            row.addWidget(part, share)
        column.addWidget(self.below)
        self.list = QListWidget()
        self.list.setObjectName("notice_list")
        self.list.setAccessibleName(texts.NOTICE_LIST)
        self.list.setProperty("look", "rows")
        self.list.setFont(theme.font(theme.SECOND_PX))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        column.addWidget(self.list)
        self.list.hide()
        self.below.hide()
        self.hide()

    def _first_row(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(10)
        self.sign = Sign(self._tokens.second, side=22)
        self.level = label("", px=theme.BODY_PX, bold=True)
        self.level.setObjectName("notice_level")
        self.words = label("", px=theme.BODY_PX, wrap=True)
        self.words.setObjectName("notice_words")
        self.more = button("", "notice_more", accessible=texts.NOTICE_EARLIER)
        self.more.setCheckable(True)
        self.more.toggled.connect(self._show_list)
        self.seen = button(texts.DISMISS, "notice_seen")
        self.seen.clicked.connect(self._press)
        row.addWidget(self.sign)
        row.addWidget(self.level)
        row.addWidget(self.words, 1)
        row.addStretch(0)
        row.addWidget(self.more)
        row.addWidget(self.seen)
        return row

    def tell(self, words: str, what: What = What.SAID) -> None:
        told = self.alarms.tell(words, what, now_text())
        self._follow()
        self.told.emit(told)

    def _press(self) -> None:
        if self._stands.elapsed() >= SETTLE_MS:
            self.dismiss()

    def dismiss(self) -> None:
        """The one that stands first was seen; the next one stands there then."""
        top = self.alarms.top
        if top is not None:
            self.alarms.dismiss(top.number)
        self._follow()

    def settle(self, *whats: What) -> None:
        self.alarms.settle(*whats)
        self._follow()

    def leave(self) -> None:
        """Another page is looked at: what was only told concerned the one that was left."""
        self.settle(What.SAID)

    def put_away(self) -> None:
        """Something else begins."""
        self.alarms.put_away()
        self._follow()

    def _follow(self) -> None:
        top, newest = self.alarms.top, self.alarms.newest
        if top is not None:
            self._show_first(top)
            self.below.setVisible(newest is not None and newest is not top)
            if newest is not None:
                self._show_below(newest)
            others, kept = self.alarms.count - 1, len(self.alarms.kept)
            self.more.setVisible(kept > 1)
            self.more.setText(texts.NOTICE_MORE.format(count=others) if others else texts.NOTICE_EARLIER)
            self.more.setAccessibleName(self.more.text())
        else:
            self.more.setChecked(False)
        self._fill()
        self.setVisible(top is not None)
        self.changed.emit()

    def _show_first(self, top: Told) -> None:
        if top.number != self._first or self.isHidden():
            self._first = top.number
            self._stands.start()
        set_look(self, CARD_OF[top.level])
        self.sign.show_sign(SIGN_OF[top.level], colour_of(top.level, self._tokens))
        self.level.setText(_level_text(top))
        set_look(self.level, TONE_OF[top.level], name="tone")
        self.level.setFont(theme.semibold(theme.BODY_PX))  # after polishing, which puts an earlier one back
        self.words.setText(top.words)
        self.seen.setVisible(not top.held)

    def _show_below(self, newest: Told) -> None:
        self._below_sign.show_sign(SIGN_OF[newest.level], colour_of(newest.level, self._tokens))
        self._below_level.setText(_level_text(newest))
        set_look(self._below_level, TONE_OF[newest.level], name="tone")
        self._below_level.setFont(theme.semibold(theme.SECOND_PX))
        self._below_words.say(newest.words)

    def _show_list(self, shown: bool) -> None:
        self._fill()
        self.list.setVisible(shown)

    def _fill(self) -> None:
        """The last that was said first."""
        if not self.more.isChecked():
            return
        self.list.clear()
        for told in reversed(self.alarms.kept):
            item = QListWidgetItem(icon_of(told.level, self._tokens), f"{_level_text(told)}   {told.words}")
            self.list.addItem(item)
        rows = sum(self.list.sizeHintForRow(row) for row in range(self.list.count()))
        self.list.setFixedHeight(min(LIST_PX, rows + 6))

    def fit(self, density: Density) -> None:
        """Where there is little room the words go below their level."""
        self._column.removeWidget(self.words)
        self._row.removeWidget(self.words)
        if density.narrow:
            self._column.insertWidget(1, self.words)
        else:
            self._row.insertWidget(WORDS_AT, self.words, 1)
            self._row.setStretch(WORDS_AT + 1, 0)  # the gap's, which had all the room while the words stood below
        self._row.setStretch(WORDS_AT, 1)

    def set_tokens(self, tokens: Tokens) -> None:
        self._tokens = tokens
        if self.alarms.top is not None:
            self._follow()


def _level_text(told: Told) -> str:
    return f"{word_of(told.level)}  {told.at}".strip()
