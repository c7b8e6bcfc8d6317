"""A job's record as lines to read, newest first: what happened, who says so, and why."""

import msgspec

from benchlog.money import show_money
from benchlog.records import HAND_STEPS, Charge, ChargeKind, Edit, Entry, EntryKind, Finding, Job, JobState, Run
from ui import retelling, sayings, texts
from ui.moments import clock_text, day_text
from ui.record.job_record import JobRecord


class Line(msgspec.Struct, frozen=True, kw_only=True):
    """`kind` in a word; `about`: who, why, and what became of it."""

    utc: str
    kind: str
    text: str
    about: str = ""

    @property
    def said(self) -> str:
        """All of it, for a screen reader."""
        told = f"{day_text(self.utc)} {clock_text(self.utc)}, {self.kind}: {self.text}"
        return f"{told} ({self.about})" if self.about else told


def timeline(record: JobRecord) -> list[Line]:
    """All of a job, newest first; of one moment, in the order of the kinds below."""
    currency = record.shop.currency
    replaced = {finding.corrects for finding in record.findings}
    taken_back = {charge.corrects for charge in record.charges}
    lines = [
        *(_entry(one) for one in record.entries),
        *(_run(one) for one in record.runs),
        *(_finding(one, replaced=one.id in replaced) for one in record.findings),
        *(_charge(one, currency, taken_back=one.id in taken_back) for one in record.charges),
        *(_edit(one, currency) for one in record.edits),
    ]
    for file in record.files:
        text = f"{file.name}: {file.caption}" if file.caption else file.name
        lines.append(Line(utc=file.utc, kind=texts.LINE_FILE, text=text, about=file.who))
    for unlock in record.unlocks:
        text = texts.UNLOCKED.format(who=unlock.who, at=clock_text(unlock.until_utc), why=unlock.why)
        lines.append(Line(utc=unlock.utc, kind=texts.LINE_UNLOCK, text=text))
    return sorted(lines, key=lambda line: line.utc)[::-1]


def finding_text(finding: Finding) -> str:
    """ "R7, marked 152, at the driver: 1.5 kΩ, holds the gate down"."""
    where = [finding.part]
    if finding.marking:
        where.append(texts.FINDING_MARKED.format(marking=finding.marking))
    if finding.place:
        where.append(finding.place)
    what = ", ".join(part for part in (finding.value, finding.purpose) if part)
    return f"{', '.join(where)}: {what}" if what else ", ".join(where)


def charge_text(charge: Charge) -> str:
    """What a line is for, without its price."""
    if charge.kind is ChargeKind.MINUTES:
        told = texts.CHARGED_MINUTES.format(count=abs(charge.count))
        return f"{told}, {charge.text}" if charge.text else told
    return f"{abs(charge.count)} × {charge.text}" if charge.kind is ChargeKind.PART else charge.text


def waiting_text(job: Job) -> str:
    """ "waits for a part: shaft seal"; "" where work goes on, or is over."""
    if job.state in (JobState.OPEN, JobState.CLOSED):
        return ""
    words = texts.WAITING_WORDS[job.state]
    return f"{words}: {job.waiting_for}" if job.waiting_for else words


def _entry(entry: Entry) -> Line:
    kind = texts.LINE_HAND if entry.kind in HAND_STEPS else texts.LINE_KINDS.get(entry.kind, texts.LINE_NOTE)
    if entry.kind is EntryKind.NOTE and entry.text.endswith((texts.SAFE_CHECKED, texts.SAFE_NOT_FITTING)):
        kind = texts.LINE_KINDS[EntryKind.CHECK]
    by_hand, note = texts.HAND_NOTED.format(step=""), texts.NOTE_KEPT.format(text="")
    for said, says_it in ((by_hand, texts.LINE_HAND), (note, texts.LINE_NOTE)):
        if kind == says_it:  # already
            return Line(utc=entry.utc, kind=kind, text=_in_words(entry, said), about=entry.who)
    return Line(utc=entry.utc, kind=kind, text=_in_words(entry), about=entry.who)


def _in_words(entry: Entry, said: str = "") -> str:
    """What a person wrote stays as it is; what the program wrote, of whom nobody is named, is told."""
    text = entry.text.removeprefix(said)
    return text if entry.who and entry.kind in (EntryKind.NOTE, EntryKind.CORRECTION) else retelling.told(text)


def _run(run: Run) -> Line:
    told = f"{texts.RUN_KIND_NAMES[run.kind]}: {sayings.filed_words(run)}"
    return Line(utc=run.started_utc, kind=texts.LINE_RUN, text=told)


def _finding(finding: Finding, *, replaced: bool) -> Line:
    about = [
        finding.who,
        texts.FINDING_REPLACED if replaced else "",
        texts.FINDING_CORRECTS if finding.corrects else "",
    ]
    return Line(utc=finding.utc, kind=texts.LINE_FINDING, text=finding_text(finding), about=_joined(about))


def _charge(charge: Charge, currency: str, *, taken_back: bool) -> Line:
    text = f"{charge_text(charge)}: {show_money(charge.cents, currency)}"
    about = _joined([charge.who, texts.CHARGE_TAKEN_BACK if taken_back else ""])
    return Line(utc=charge.utc, kind=texts.LINE_CHARGE, text=text, about=about)


def _edit(edit: Edit, currency: str) -> Line:
    field = texts.JOB_FIELDS.get(edit.field, edit.field.replace("_", " "))
    if edit.run is not None:
        field = texts.EDIT_OF_RUN.format(run=edit.run, field=field)
    old, new = (_value(edit.field, text, currency) for text in (edit.old, edit.new))
    about = _joined([edit.who, edit.why, texts.EDIT_UNDONE if edit.undone_utc else ""])
    return Line(utc=edit.utc, kind=texts.LINE_EDIT, text=f"{field}: {old} → {new}", about=about)


def _value(field: str, text: str, currency: str) -> str:
    """A kept value of any field; the text itself where a newer program kept what is not known here."""
    try:
        value = msgspec.json.decode(text)
    except msgspec.MsgspecError:
        return text
    if field.endswith("_cents") and isinstance(value, int):
        return show_money(value, currency)
    if isinstance(value, bool):
        return texts.YES if value else texts.NO
    return texts.NOTHING if value in (None, "") else str(value)


def _joined(parts: list[str]) -> str:
    return ", ".join(part for part in parts if part)
