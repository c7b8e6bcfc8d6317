"""The five figures of what is picked, beside their limits."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel

from benchlog.motor.limits import Judged, JudgedFigure
from benchlog.motor.start_figures import FIGURES, StartFigures
from ui import curve_texts as texts
from ui import retelling, theme
from ui.curves.figure_words import label_words, words_of
from ui.density import Density
from ui.pieces import Elided, label, plain_hint

ROW_PX, NARROW_ROW_PX = 28, 24


class FiguresTable(QFrame):
    """Plain labels in a grid: nothing in it is pressed."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("curves_figures")
        self.setProperty("look", "card")
        grid = QGridLayout(self)
        grid.setContentsMargins(12, 4, 10, 4)
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(0)
        for column, stretch in enumerate((8, 1, 2, 1)):
            grid.setColumnStretch(column, stretch)
        self._heads = [label("", "second", px=theme.SECOND_PX) for _ in texts.FIGURE_COLUMNS]
        self._names = [Elided("") for _ in FIGURES]
        self._cells: list[list[QLabel]] = []
        self._px = theme.BODY_PX
        for column, head in enumerate(self._heads):
            head.setFixedHeight(ROW_PX - 4)
            grid.addWidget(head, 0, column)
        for row in range(len(FIGURES)):
            rule = QFrame()
            rule.setProperty("look", "line")
            rule.setFixedHeight(1)
            grid.addWidget(rule, 1 + 2 * row, 0, 1, len(self._heads))
            cells: list[QLabel] = [self._names[row], *(label("") for _ in self._heads[1:])]
            for column, cell in enumerate(cells):
                cell.setFixedHeight(ROW_PX)
                cell.setAlignment(Qt.AlignmentFlag.AlignVCenter)
                grid.addWidget(cell, 2 + 2 * row, column)
            self._cells.append(cells)
        self.blank()

    def fit(self, density: Density) -> None:
        """The numbers are whole at every size; a name gives way, and is whole in its tooltip."""
        self._px = theme.SECOND_PX if density.narrow else theme.BODY_PX
        for cells in self._cells:
            for cell in cells:
                cell.setFont(theme.semibold(self._px) if cell.font().bold() else theme.font(self._px))
                cell.setFixedHeight(NARROW_ROW_PX if density.narrow else ROW_PX)

    def show_judged(self, judged: Judged, count: int) -> None:
        """The means of so many starts, as they were judged."""
        which = texts.FIGURE_MEAN.format(count=count) if count > 1 else texts.FIGURE_START.format(number=1)
        rows = {row.name: row for row in judged.rows}
        self._show(which, [rows[kind.name] for kind in FIGURES if kind.name in rows])

    def show_start(self, figures: StartFigures, number: int) -> None:
        """Of one start, without limits."""
        rows = []
        for kind in FIGURES:
            found = figures.values.get(kind.name)
            interval = "" if found is None else texts.interval(found.low, found.high, kind.unit)
            rows.append(
                JudgedFigure(
                    name=kind.name,
                    label=kind.label,
                    unit=kind.unit,
                    value=None if found is None else found.value,
                    low=None,
                    high=None,
                    margin=None,
                    inside=None,
                    why=figures.why.get(kind.name, "") or interval,
                )
            )
        self._show(texts.FIGURE_START.format(number=number), rows)

    def blank(self) -> None:
        self._show(texts.FIGURE_NONE, [])

    def texts(self) -> list[tuple[str, ...]]:
        """What stands in the rows."""
        return self._said

    def _show(self, which: str, rows: list[JudgedFigure]) -> None:
        for head, words in zip(self._heads, texts.FIGURE_COLUMNS, strict=True):
            head.setText(words.format(which=which))
        self._said: list[tuple[str, ...]] = []
        for number, cells in enumerate(self._cells):
            row = rows[number] if number < len(rows) else None
            kind = FIGURES[number]
            if row is None:
                said = (label_words(kind.label), texts.NO_VALUE, texts.NO_VALUE, texts.NO_VALUE)
            else:
                words_found = words_of(row)
                said = (words_found.name, words_found.value, words_found.limits, words_found.outside)
            outside = row is not None and row.inside is False
            for column, (cell, text) in enumerate(zip(cells, said, strict=True)):
                bold = column == 1 or (outside and column == 3)
                cell.setFont(theme.semibold(self._px) if bold else theme.font(self._px))
                if column:
                    cell.setText(text)
                    cell.setToolTip(plain_hint(retelling.told(row.why)) if row is not None else "")
            self._names[number].say(said[0])
            self._said.append(said)
        self.setAccessibleName(
            texts.FIGURES_NAME.format(told="; ".join(texts.figures_told(*said) for said in self._said))
        )
