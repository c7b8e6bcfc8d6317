"""Close: what was wrong, what was done, what to expect; with the first run, the one that freed it and the last."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from benchlog.ledger.drafts import Fields
from benchlog.outcome import Outcome
from benchlog.quantities import plain_digits, show
from benchlog.records import Closing, Job, JobState, Result, Run, RunKind
from ui import retelling, sayings, texts, theme
from ui.density import Density
from ui.pieces import Chooser, button, card, grey, label, named, scrolled
from ui.wrapping import FieldGrid, WrapRow

SUMMARY_ROWS = ("kind", "ended", "resistance", "volts", "amps", "kicks")
BEFORE, FREED, AFTER = range(3)
NO_REPAIR = frozenset({Outcome.STILL_STUCK, Outcome.OPEN, Outcome.SHORT, Outcome.DIODE, Outcome.ELECTRONIC})


class CloseStage(QWidget):
    """`closed` when the form is complete and pressed; `next_job`, `sheet` afterwards. `changed` as a person types."""

    closed = Signal()
    changed = Signal()
    next_job = Signal()
    sheet = Signal()

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
        work = QWidget()
        lines = QVBoxLayout(work)
        lines.setContentsMargins(0, 0, 0, 0)
        lines.setSpacing(8)
        for part in (self.why_label, self._summary_card(), self._form_card()):
            lines.addWidget(part)
        lines.addStretch(1)
        column.addWidget(scrolled(work), 1)
        self.problem = label("", "ask", bold=True, wrap=True)
        self.problem.setObjectName("close_problem")
        self.changed.connect(self._mend)
        self.close_button = button(texts.CLOSE_JOB, "close_job", "main")
        self.close_button.clicked.connect(self._press)
        self.next_button = button(texts.NEXT_JOB, "next_job", "main")
        self.next_button.clicked.connect(self.next_job)
        self.sheet_button = button(texts.JOB_SHEET, "close_sheet", accessible=texts.JOB_SHEET_NAME)
        self.sheet_button.clicked.connect(self.sheet)
        row = QHBoxLayout()
        row.addWidget(self.problem, 1)
        row.addWidget(self.close_button)
        row.addWidget(self.sheet_button)
        row.addWidget(self.next_button)
        column.addLayout(row)
        self.sheet_button.hide()
        self.next_button.hide()

    def _summary_card(self) -> QWidget:
        made = card()
        grid = QGridLayout(made)
        grid.setContentsMargins(20, 14, 20, 14)
        grid.setVerticalSpacing(5)
        grid.setHorizontalSpacing(16)
        grid.addWidget(label(texts.CLOSE_SUMMARY, bold=True, wrap=True), 0, 0)
        self._summary = grid
        self._cells: dict[tuple[str, int], QLabel] = {}
        for place, title in enumerate((texts.SUMMARY_BEFORE, texts.SUMMARY_FREED, texts.SUMMARY_AFTER)):
            self._cells["", place] = label(title, "second", px=theme.SECOND_PX, wrap=True)
            grid.addWidget(self._cells["", place], 0, 1 + place)
        for index, name in enumerate(SUMMARY_ROWS, start=1):
            grid.addWidget(label(texts.SUMMARY_NAMES[name], "second", px=theme.SECOND_PX, wrap=True), index, 0)
            for place, where in enumerate(("before", "freed", "after")):
                cell = label(texts.NOTHING, bold=name == "ended", wrap=True)
                cell.setObjectName(f"summary_{name}_{where}")
                grid.addWidget(cell, index, 1 + place)
                self._cells[name, place] = cell
        self._show_summary([])
        return made

    def fit(self, density: Density) -> None:
        self._summary.setContentsMargins(*((10, 10, 10, 10) if density.narrow else (20, 14, 20, 14)))
        self._summary.setHorizontalSpacing(8 if density.narrow else 16)

    def _show_summary(self, runs: Sequence[Run]) -> None:
        """The run that freed it has a column where it is neither the first nor the last."""
        freed = [run for run in runs[1:-1] if run.result.outcome is Outcome.FREED]
        shown = (runs[0] if runs else None, freed[-1] if freed else None, runs[-1] if len(runs) > 1 else None)
        for place, run in enumerate(shown):
            for name, text in _figures(run).items():
                self._cells[name, place].setText(text)
            there = run is not None or place != FREED
            self._summary.setColumnStretch(1 + place, int(there))
            for (_, at), cell in self._cells.items():
                if at == place:
                    cell.setVisible(there)

    def _form_card(self) -> QWidget:
        made = card()
        grid = FieldGrid(made, 4)
        grid.setContentsMargins(20, 10, 20, 14)
        grid.setHorizontalSpacing(16)
        grid.setVerticalSpacing(2)
        self.cause, self.work, self.prognosis = QLineEdit(), QLineEdit(), QLineEdit()
        self.advice, self.warranty = QLineEdit(), QLineEdit()
        self.result = Chooser("close_result", texts.FIELD_RESULT)
        for result, words in texts.RESULTS.items():
            self.result.addItem(words, result)
        self.method = Chooser("close_method", texts.FIELD_METHOD)
        self.method.setEditable(True)
        self.method.addItems([retelling.told(word) for word in texts.METHODS])
        self.result.setCurrentIndex(-1)
        self.method.setCurrentIndex(-1)
        for row, column, span, field, name, title, hint in (
            (0, 0, 2, self.cause, "close_cause", texts.FIELD_CAUSE, texts.CAUSE_HINT),
            (0, 2, 1, self.result, "close_result", texts.FIELD_RESULT, ""),
            (0, 3, 1, self.method, "close_method", texts.FIELD_METHOD, ""),
            (1, 0, 2, self.work, "close_work", texts.FIELD_WORK, texts.WORK_HINT),
            (1, 2, 2, self.prognosis, "close_prognosis", texts.FIELD_PROGNOSIS, texts.PROGNOSIS_HINT),
            (2, 0, 3, self.advice, "close_advice", texts.FIELD_ADVICE, texts.ADVICE_HINT),
            (2, 3, 1, self.warranty, "close_warranty", texts.FIELD_WARRANTY, texts.WARRANTY_HINT),
        ):
            field.setObjectName(name)
            field.setAccessibleName(title)
            field.setFont(theme.font())
            field.setMinimumHeight(theme.TOUCH_PX - 4)
            if isinstance(field, QLineEdit):
                field.setPlaceholderText(hint)
                field.textEdited.connect(lambda _: self.changed.emit())
            else:
                field.activated.connect(lambda _: self.changed.emit())
            part, _ = named(title, field)
            grid.put(row, column, part, span)
        method = self.method.lineEdit()
        assert method is not None
        method.textEdited.connect(lambda _: self.changed.emit())
        grid.put(3, 0, self._proposal_row(), 4)
        return made

    def _proposal_row(self) -> QWidget:
        """What the runs say that it came to: a person takes it over, or says otherwise."""
        self._proposed: tuple[Result, str] | None = None
        self.proposal = QWidget()
        row = WrapRow(self.proposal)
        row.setContentsMargins(0, 8, 0, 0)
        self.proposed = label("", wrap=True)
        self.proposed.setObjectName("close_proposed")
        self.take_button = button(texts.PROPOSAL_TAKE, "close_take")
        self.take_button.clicked.connect(self._take)
        row.add(self.proposed, stretch=1, least=260)
        row.add(self.take_button)
        self.result.currentIndexChanged.connect(lambda _: self._offer())
        self.proposal.hide()
        return self.proposal

    def _propose(self, runs: Sequence[Run]) -> None:
        self._proposed = proposal(runs)
        if self._proposed is not None:
            result, method = self._proposed
            words = ", ".join(word for word in (texts.RESULTS[result], retelling.told(method)) if word)
            last = f"{texts.RUN_KIND_NAMES[runs[-1].kind]}: {texts.OUTCOME_WORDS[runs[-1].result.outcome]}"
            self.proposed.setText(texts.PROPOSAL.format(last=last, words=words))
            self.take_button.setAccessibleName(texts.PROPOSAL_TAKE_NAME.format(words=words))
        self._offer()

    def _offer(self) -> None:
        """Until it is said what it came to."""
        self.proposal.setVisible(self._proposed is not None and self.result.currentIndex() < 0)

    def _take(self) -> None:
        if self._proposed is None:
            return
        result, method = self._proposed
        self.result.setCurrentIndex(self.result.findData(result))
        if method and not self.method.currentText().strip():
            self.method.setCurrentText(retelling.told(method))
        self.result.setFocus()
        self.changed.emit()

    def _mend(self) -> None:
        """As a person types: what was said to be wrong, and is no more, is not said any longer."""
        if self.problem.text() and self.problem.text() != self._first_problem():
            self.problem.setText("")

    def _press(self) -> None:
        self.problem.setText(self._first_problem())
        if not self.problem.text():
            self.closed.emit()

    def _first_problem(self) -> str:
        if not self.cause.text().strip():
            return texts.NEEDS_CAUSE
        if self.result.currentIndex() < 0:
            return texts.NEEDS_RESULT
        typed = plain_digits(self.warranty.text().strip())
        return "" if not typed or (typed.isascii() and typed.isdigit() and len(typed) < 6) else texts.WRONG_WARRANTY

    def said(self) -> Closing:
        """What the form says, once it is complete."""
        typed = plain_digits(self.warranty.text().strip())
        return Closing(
            cause=self.cause.text().strip(),
            work_done=self.work.text().strip(),
            prognosis=self.prognosis.text().strip(),
            result=self.result.currentData() or Result.UNSAID,
            method=retelling.as_kept(self.method.currentText().strip(), texts.METHODS),
            advice=self.advice.text().strip(),
            warranty_days=int(typed) if typed else None,
        )

    def form(self) -> Fields:
        """What is typed, for a draft."""
        fields: Fields = {edit.objectName(): edit.text() for edit in self._edits()}
        return fields | {"result": self.result.currentText(), "method": self.method.currentText()}

    def fill(self, form: Fields) -> None:
        """A draft put back."""
        for edit in self._edits():
            edit.setText(str(form.get(edit.objectName(), "")))
        self.result.setCurrentIndex(self.result.findText(str(form.get("result", ""))))
        self.method.setCurrentText(str(form.get("method", "")))

    def suggest_warranty(self, days: int) -> None:
        """What the shop usually gives, where nothing else was typed."""
        if days and not self.warranty.text():
            self.warranty.setText(str(days))

    def _edits(self) -> tuple[QLineEdit, ...]:
        return self.cause, self.work, self.prognosis, self.advice, self.warranty

    def show_job(self, job: Job, runs: Sequence[Run]) -> None:
        runs = [run for run in runs if run.kind is not RunKind.LEADS]
        self._show_summary(runs)
        done = job.state is JobState.CLOSED
        self.say_label.setText(texts.CLOSE_DONE_SAY.format(number=job.number) if done else texts.CLOSE_SAY)
        self.why_label.setText(texts.CLOSE_DONE_WHY if done else texts.CLOSE_WHY)
        days = "" if job.warranty_days is None else str(job.warranty_days)
        was = (job.cause, job.work_done, job.prognosis, job.advice, days)
        for field, text in zip(self._edits(), was, strict=True):
            field.setReadOnly(done)
            if done:
                field.setText(text)
        for chooser in (self.result, self.method):
            grey(chooser, texts.JOB_IS_CLOSED if done else "")
        if done:
            self.result.setCurrentIndex(self.result.findData(job.result))
            self.method.setCurrentText(retelling.told(job.method))
        self._propose([] if done else runs)
        self.close_button.setVisible(not done)
        self.sheet_button.setVisible(done)
        self.next_button.setVisible(done)

    def blank(self) -> None:
        for field in self._edits():
            field.setReadOnly(False)
            field.clear()
        for chooser in (self.result, self.method):
            grey(chooser, "")
            chooser.setCurrentIndex(-1)
        self.method.clearEditText()
        self.problem.setText("")
        self._propose([])


def proposal(runs: Sequence[Run]) -> tuple[Result, str] | None:
    """What a job came to and what did it, as far as its last run says so; None where that decides nothing.

    Works is what was proven; freed alone may be luck. The method: one of `texts.METHODS`, "" where no run shows it.
    """
    if not runs:
        return None
    last = runs[-1]
    if last.kind is RunKind.PROOF and last.result.outcome is Outcome.RUNS:
        freed = [run.kind for run in runs if run.result.outcome is Outcome.FREED]
        by_hand = RunKind.HAND in [run.kind for run in runs]
        if RunKind.RECOVERY in freed:
            return Result.WORKS, "kicks and by hand" if by_hand else "kicks"
        return Result.WORKS, "by hand" if RunKind.HAND in freed else ""
    if last.kind is RunKind.PROOF and last.result.outcome is Outcome.STILL_STUCK and last.result.moved:
        return Result.PARTLY, ""  # it started, but not every time
    tried = {RunKind.RECOVERY, RunKind.HAND} & {run.kind for run in runs}
    return (Result.NOT_REPAIRED, "nothing helped" if tried else "") if last.result.outcome in NO_REPAIR else None


def _figures(run: Run | None) -> dict[str, str]:
    if run is None:
        return dict.fromkeys(SUMMARY_ROWS, texts.NOTHING)
    result = run.result
    return {
        "kind": f"{texts.RUN_KIND_NAMES[run.kind]}, {retelling.told(run.load_state)}",
        "ended": sayings.run_words(run.kind, result, figures=False),
        "resistance": sayings.resistance_text(result),
        "volts": show(result.max_volts, "V"),
        "amps": show(result.max_amps, "A"),
        "kicks": sayings.kicks_text(result.kicks),
    }
