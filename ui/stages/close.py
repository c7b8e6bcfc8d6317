"""Close: what was wrong, what was done, what to expect; with the first and the last run side by side."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from benchlog.quantities import show
from benchlog.records import Job, JobState, Run, RunKind
from ui import sayings, texts, theme
from ui.pieces import button, card, label

SUMMARY_ROWS = ("kind", "ended", "resistance", "volts", "amps", "kicks")


class CloseStage(QWidget):
    """`closed` when the form is complete and pressed; `next_job` afterwards."""

    closed = Signal()
    next_job = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setMaximumWidth(theme.FORM_PX)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self.say_label = label(texts.CLOSE_SAY, px=theme.SENTENCE_PX, bold=True, wrap=True)
        self.say_label.setObjectName("close_say")
        self.why_label = label(texts.CLOSE_WHY, "second", wrap=True)
        column.addWidget(self.say_label)
        column.addWidget(self.why_label)
        column.addWidget(self._summary_card())
        column.addWidget(self._form_card())
        column.addStretch(1)
        self.problem = label("", "alarm", bold=True)
        self.problem.setObjectName("close_problem")
        self.close_button = button(texts.CLOSE_JOB, "close_job", "main")
        self.close_button.clicked.connect(self._press)
        self.next_button = button(texts.NEXT_JOB, "next_job", "main")
        self.next_button.clicked.connect(self.next_job)
        row = QHBoxLayout()
        row.addWidget(self.problem, 1)
        row.addWidget(self.close_button)
        row.addWidget(self.next_button)
        column.addLayout(row)
        self.next_button.hide()

    def _summary_card(self) -> QWidget:
        made = card()
        grid = QGridLayout(made)
        grid.setContentsMargins(20, 14, 20, 14)
        grid.setVerticalSpacing(5)
        grid.setHorizontalSpacing(24)
        grid.setColumnStretch(1, 1)
        grid.setColumnStretch(2, 1)
        grid.addWidget(label(texts.CLOSE_SUMMARY, bold=True), 0, 0)
        self.figures: dict[tuple[str, int], str] = {}
        self._cells = {}
        for place, title in enumerate((texts.SUMMARY_BEFORE, texts.SUMMARY_AFTER)):
            grid.addWidget(label(title, "second", px=theme.SECOND_PX), 0, 1 + place)
        for index, name in enumerate(SUMMARY_ROWS, start=1):
            grid.addWidget(label(texts.SUMMARY_NAMES[name], "second", px=theme.SECOND_PX), index, 0)
            for place in (0, 1):
                cell = label(texts.NOTHING, bold=name == "ended")
                cell.setObjectName(f"summary_{name}_{'after' if place else 'before'}")
                grid.addWidget(cell, index, 1 + place)
                self._cells[name, place] = cell
        return made

    def _form_card(self) -> QWidget:
        made = card()
        lines = QVBoxLayout(made)
        lines.setContentsMargins(20, 14, 20, 18)
        lines.setSpacing(4)
        self.cause, self.work, self.prognosis = QLineEdit(), QLineEdit(), QLineEdit()
        for field, name, title, hint in (
            (self.cause, "close_cause", texts.FIELD_CAUSE, texts.CAUSE_HINT),
            (self.work, "close_work", texts.FIELD_WORK, texts.WORK_HINT),
            (self.prognosis, "close_prognosis", texts.FIELD_PROGNOSIS, texts.PROGNOSIS_HINT),
        ):
            field.setObjectName(name)
            field.setAccessibleName(title)
            field.setFont(theme.font())
            field.setPlaceholderText(hint)
            field.setMinimumHeight(theme.TOUCH_PX - 4)
            lines.addWidget(label(title, "second", px=theme.SECOND_PX))
            lines.addWidget(field)
        return made

    def _press(self) -> None:
        self.problem.setText("" if self.cause_text() else texts.NEEDS_CAUSE)
        if not self.problem.text():
            self.closed.emit()

    def cause_text(self) -> str:
        return self.cause.text().strip()

    def work_text(self) -> str:
        return self.work.text().strip()

    def prognosis_text(self) -> str:
        return self.prognosis.text().strip()

    def show_job(self, job: Job, runs: Sequence[Run]) -> None:
        runs = [run for run in runs if run.kind is not RunKind.LEADS]
        for place, run in ((0, runs[0] if runs else None), (1, runs[-1] if len(runs) > 1 else None)):
            for name, text in _figures(run).items():
                self._cells[name, place].setText(text)
        done = job.state is JobState.CLOSED
        self.say_label.setText(texts.CLOSE_DONE_SAY.format(number=job.number) if done else texts.CLOSE_SAY)
        self.why_label.setText(texts.CLOSE_DONE_WHY if done else texts.CLOSE_WHY)
        for field, text in ((self.cause, job.cause), (self.work, job.work_done), (self.prognosis, job.prognosis)):
            field.setReadOnly(done)
            if done:
                field.setText(text)
        self.close_button.setVisible(not done)
        self.next_button.setVisible(done)

    def blank(self) -> None:
        for field in (self.cause, self.work, self.prognosis):
            field.setReadOnly(False)
            field.clear()
        self.problem.setText("")


def _figures(run: Run | None) -> dict[str, str]:
    if run is None:
        return dict.fromkeys(SUMMARY_ROWS, texts.NOTHING)
    result = run.result
    return {
        "kind": f"{texts.RUN_KIND_NAMES[run.kind]}, {run.load_state}",
        "ended": sayings.run_words(run.kind, result, figures=False),
        "resistance": sayings.resistance_text(result),
        "volts": show(result.max_volts, "V"),
        "amps": show(result.max_amps, "A"),
        "kicks": sayings.kicks_text(result.kicks),
    }
