"""Whose thing it is, what they allow, and what became of it before. Part of the intake page."""

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QLineEdit

from benchlog.records import Job, TakenIn
from ui import texts, theme
from ui.money_edit import MoneyEdit
from ui.pieces import Tick


class OwnerFields(QObject):
    """The fields; the intake page says where they stand. `changed` as a person types, `left` when a field is left."""

    changed = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.owner, self.contact = QLineEdit(), QLineEdit()
        self.pumped, self.opened_before, self.who = QLineEdit(), QLineEdit(), QLineEdit()
        self.limit = MoneyEdit("intake_limit", texts.FIELD_LIMIT)
        self.consent = Tick(texts.FIELD_CONSENT, "intake_consent")
        for field, name, accessible, hint in (
            (self.owner, "intake_owner", texts.FIELD_OWNER, texts.OWNER_HINT),
            (self.contact, "intake_contact", texts.FIELD_CONTACT, ""),
            (self.pumped, "intake_pumped", texts.FIELD_PUMPED, texts.PUMPED_HINT),
            (self.opened_before, "intake_opened_before", texts.FIELD_OPENED_BEFORE, texts.OPENED_BEFORE_HINT),
            (self.who, "intake_who", texts.FIELD_WHO, ""),
        ):
            field.setObjectName(name)
            field.setAccessibleName(accessible)
            field.setFont(theme.font())
            field.setMinimumHeight(theme.TOUCH_PX - 4)
            field.setPlaceholderText(hint)
        self.limit.setPlaceholderText(texts.LIMIT_HINT)
        for edit in self.edits():
            edit.textEdited.connect(lambda _: self.changed.emit())
            edit.editingFinished.connect(self.left)
        self.consent.clicked.connect(self.changed)
        self.consent.clicked.connect(self.left)

    def edits(self) -> tuple[QLineEdit, ...]:
        return self.owner, self.contact, self.pumped, self.opened_before, self.who, self.limit

    def taken_in(self, comeback_of: int | None = None) -> TakenIn:
        return TakenIn(
            owner=self.owner.text().strip(),
            contact=self.contact.text().strip(),
            who=self.who.text().strip(),
            consent=self.consent.isChecked(),
            spending_limit_cents=self.limit.cents(),
            opened_before=self.opened_before.text().strip(),
            pumped=self.pumped.text().strip(),
            comeback_of=comeback_of,
        )

    def show_job(self, job: Job) -> None:
        for field, text in (
            (self.owner, job.owner),
            (self.contact, job.contact),
            (self.pumped, job.pumped),
            (self.opened_before, job.opened_before),
            (self.who, job.who),
        ):
            if field.text().strip() != text:
                field.setText(text)
        if self.limit.cents() != job.spending_limit_cents:
            self.limit.put(job.spending_limit_cents)
        self.consent.setChecked(job.consent)

    def blank(self) -> None:
        """The technician stays."""
        for field in self.edits():
            if field is not self.who:
                field.clear()
        self.consent.setChecked(False)
