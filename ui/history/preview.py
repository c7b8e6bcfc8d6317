"""A job's sheet as it would be on paper, page below page, before it is written or printed."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPixmap, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from ui import texts, theme
from ui.pieces import button, label, scrolled

MOST_PX, EDGE_PX = 820, 24


class PaperPage(QWidget):
    """`back`, `saved` for the PDF, `printed`."""

    back = Signal()
    saved = Signal()
    printed = Signal()

    def __init__(self) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.say_label = label("", px=theme.SENTENCE_PX, bold=True)
        self.say_label.setObjectName("paper_say")
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.say_label, 1)
        for words, name, accessible, told in (
            (texts.PAPER_PRINT, "paper_print", texts.PAPER_PRINT_NAME, self.printed),
            (texts.PAPER_SAVE, "paper_save", texts.PAPER_SAVE, self.saved),
            (texts.BACK_FROM_HERE, "paper_back", texts.BACK_NAME, self.back),
        ):
            made = button(words, name, accessible=accessible)
            made.clicked.connect(told)
            row.addWidget(made)
            self.back_button = made  # the last one
        column.addLayout(row)
        inside = QWidget()
        self._lines = QVBoxLayout(inside)
        self._lines.setContentsMargins(0, 0, 0, 0)
        self._lines.setSpacing(12)
        self.sheets: list[QLabel] = []
        self.images: list[bytes] = []
        self.area = scrolled(inside)
        self.area.setObjectName("paper_pages")
        self.area.setAccessibleName(texts.PAPER_PAGES)
        self.area.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        column.addWidget(self.area, 1)

    def show_pages(self, said: str, images: Sequence[bytes]) -> None:
        """Each as PNG."""
        self.say_label.setText(said)
        self.images = list(images)
        while self.sheets:
            old = self.sheets.pop()
            old.hide()
            old.deleteLater()
        for number in range(1, len(images) + 1):
            sheet = QLabel()
            sheet.setAlignment(Qt.AlignmentFlag.AlignHCenter)
            sheet.setAccessibleName(texts.PAPER_PAGE.format(number=number, count=len(images)))
            self._lines.addWidget(sheet)
            self.sheets.append(sheet)
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        width = max(100, min(MOST_PX, self.width() - EDGE_PX))
        for sheet, image in zip(self.sheets, self.images, strict=True):
            page = QPixmap()
            page.loadFromData(image, "PNG")
            sheet.setPixmap(page.scaledToWidth(width, Qt.TransformationMode.SmoothTransformation))
