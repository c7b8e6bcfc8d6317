"""Make safe: the lines that must be so before a lead is clipped on. Each answer is kept with the job."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from benchlog.records import Entry, Stage
from ui import retelling, texts, theme
from ui.pieces import button, card, grey, label, scrolled

CHOICE_PX = 92


class MakeSafeStage(QWidget):
    """`made_safe` carries one text a line, when every line is answered and the button is pressed."""

    made_safe = Signal(list)

    def __init__(self) -> None:
        super().__init__()
        self.setMaximumWidth(theme.FORM_PX)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.say_label = label(texts.SAFE_SAY, px=theme.SENTENCE_PX, bold=True, wrap=True)
        self.why_label = label(texts.SAFE_WHY, "second", wrap=True)
        column.addWidget(self.say_label)
        work = QWidget()
        lines = QVBoxLayout(work)
        lines.setContentsMargins(0, 0, 0, 0)
        lines.setSpacing(8)
        for part in (self.why_label, self._refuse_card(), self._rows_card()):
            lines.addWidget(part)
        lines.addStretch(1)
        column.addWidget(scrolled(work), 1)
        self.go_on = button(texts.SAFE_GO_ON, "safe_go_on", "main")
        self.go_on.clicked.connect(self._press)
        self.open_lines = label("", "second", wrap=True)
        self.open_lines.setObjectName("safe_open_lines")
        self.open_lines.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        row = QHBoxLayout()
        row.setSpacing(12)
        row.addWidget(self.open_lines, 1)
        row.addWidget(self.go_on)
        column.addLayout(row)
        self.blank()

    def _rows_card(self) -> QWidget:
        made = card()
        grid = QGridLayout(made)
        grid.setContentsMargins(16, 10, 16, 10)
        grid.setVerticalSpacing(6)
        grid.setHorizontalSpacing(8)
        grid.setColumnStretch(0, 1)
        self._groups: list[QButtonGroup] = []
        self._choices: list[list[QPushButton]] = []
        for index, (row, may_not_fit) in enumerate(texts.SAFE_ROWS):
            group = QButtonGroup(self)
            words = (texts.SAFE_CHECKED, texts.SAFE_NOT_FITTING) if may_not_fit else (texts.SAFE_CHECKED,)
            grid.addWidget(label(retelling.told(row), wrap=True), index, 0)
            choices = []
            for place, word in enumerate(words):
                name = f"safe_{index}_{'done' if place == 0 else 'not_fitting'}"
                shown = retelling.told(word)
                choice = button(shown, name, "choice", accessible=f"{retelling.told(row)}: {shown}")
                choice.setCheckable(True)
                choice.setMinimumWidth(CHOICE_PX)
                choice.clicked.connect(self._judge)
                group.addButton(choice, place)
                grid.addWidget(choice, index, 1 + place)
                choices.append(choice)
            self._groups.append(group)
            self._choices.append(choices)
        return made

    def _refuse_card(self) -> QWidget:
        made = card("quiet")
        lines = QVBoxLayout(made)
        lines.setContentsMargins(20, 10, 20, 10)
        lines.setSpacing(2)
        lines.addWidget(label(texts.SAFE_REFUSE, px=theme.SECOND_PX + 1, bold=True, wrap=True))
        lines.addWidget(label(texts.SAFE_RULES, "second", px=theme.SECOND_PX, wrap=True))
        return made

    def answers(self) -> list[str]:
        """One text for each line that is answered."""
        found = []
        for (row, _), group in zip(texts.SAFE_ROWS, self._groups, strict=True):
            pressed = group.checkedButton()
            if pressed is not None:
                found.append(_entry(row, group.id(pressed)))
        return found

    def _judge(self) -> None:
        count = len(texts.SAFE_ROWS) - len(self.answers())
        words = texts.SAFE_OPEN_ONE if count == 1 else texts.SAFE_OPEN_MANY.format(count=count)
        self.open_lines.setText(words if count else "")
        grey(self.go_on, words if count else "")

    def _press(self) -> None:
        self.made_safe.emit(self.answers())

    def show_kept(self, entries: list[Entry]) -> None:
        """The lines as they were kept. They can't be taken back."""
        kept = {entry.text for entry in entries if entry.stage is Stage.MAKE_SAFE}
        if not kept:
            self.blank()
            return
        self.say_label.setText(texts.SAFE_DONE_SAY)
        self.why_label.setText(texts.SAFE_DONE_WHY)
        for (row, _), group, choices in zip(texts.SAFE_ROWS, self._groups, self._choices, strict=True):
            group.setExclusive(False)
            for choice in choices:
                choice.setChecked(_entry(row, group.id(choice)) in kept)
                grey(choice, texts.SAFE_KEPT)
            group.setExclusive(True)
        self.open_lines.setText("")
        self.go_on.hide()

    def blank(self) -> None:
        self.say_label.setText(texts.SAFE_SAY)
        self.why_label.setText(texts.SAFE_WHY)
        for group, choices in zip(self._groups, self._choices, strict=True):
            group.setExclusive(False)
            for choice in choices:
                choice.setChecked(False)
                choice.setFocusPolicy(Qt.FocusPolicy.StrongFocus)  # Tab would still lead to the one that was chosen
                grey(choice, "")
            group.setExclusive(True)
        self.go_on.show()
        self._judge()


def _entry(row: str, place: int) -> str:
    """As the record keeps it, in its own language."""
    return texts.SAFE_ENTRY.format(row=row, choice=texts.SAFE_NOT_FITTING if place else texts.SAFE_CHECKED)
