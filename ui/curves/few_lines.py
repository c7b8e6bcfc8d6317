"""Text in a fixed number of lines: what has no room ends in "…", and the whole is in the tooltip."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent, QTextLayout
from PySide6.QtWidgets import QLabel, QSizePolicy

from ui import theme
from ui.pieces import plain_hint


class FewLines(QLabel):
    """Always as high as `count` lines, so that nothing around it moves. `said` is the whole."""

    def __init__(self, count: int, tone: str = "", *, px: int = theme.BODY_PX) -> None:
        super().__init__()
        self._count, self.said = count, ""
        self.setFont(theme.font(px))
        self.setProperty("tone", tone)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(count * self.fontMetrics().lineSpacing() + 4)

    def set_count(self, count: int) -> None:
        self._count = count
        self.setFixedHeight(count * self.fontMetrics().lineSpacing() + 4)
        self._fit()

    def say(self, text: str) -> None:
        self.said = text
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        width = max(1, self.width())
        layout = QTextLayout(self.said, self.font())
        lines: list[str] = []
        begin = 0
        layout.beginLayout()
        while len(lines) < self._count - 1:
            line = layout.createLine()
            if not line.isValid():
                break
            line.setLineWidth(width)
            begin = line.textStart() + line.textLength()
            lines.append(self.said[line.textStart() : begin].rstrip())
        layout.endLayout()
        rest = self.said[begin:]
        cut = self.fontMetrics().elidedText(rest, Qt.TextElideMode.ElideRight, width)
        self.setText("\n".join(part for part in (*lines, cut) if part))
        self.setToolTip(plain_hint(self.said) if cut != rest else "")
