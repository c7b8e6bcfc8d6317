"""A sheet in words: headings, facts, paragraphs, tables and drawings in the order in which they are read.

Whoever writes HTML, paper or a terminal's text only lays them out. Here is decided what is said, how numbers and dates
are written, and where a text is too long for paper.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from datetime import tzinfo

import msgspec
import numpy as np

from benchlog.ledger.earlier_starts import not_alike
from benchlog.motor.compare_starts import Together, changes, together, verdict
from benchlog.motor.fit import Fitted
from benchlog.motor.start_figures import FIGURES
from benchlog.outcome import Outcome, WindingVerdict
from benchlog.quantities import show_fine
from benchlog.records import (
    Attached,
    Charge,
    ChargeKind,
    Edit,
    EntryKind,
    Finding,
    Job,
    JobState,
    Result,
    Run,
    RunKind,
    Stage,
)
from benchlog.reports.curves import draw, most
from benchlog.reports.drawing import Drawing
from benchlog.reports.regions import Region
from benchlog.reports.sheet import Curve, Sheet
from benchlog.reports.start_picture import draw_starts
from benchlog.reports.words import MOST_CELL, NOTHING, Say, lines, one_line, short

MOST_TAG = 20
MOST_ROWS = 300
"""Rows of a table that go on paper; the ledger has the rest."""


class Heading(msgspec.Struct, frozen=True):
    text: str


class Facts(msgspec.Struct, frozen=True):
    """Names and values. `short`: two beside each other on paper, the first half at the left."""

    rows: tuple[tuple[str, str], ...]
    short: bool = False


class Prose(msgspec.Struct, frozen=True):
    """A paragraph. `kind`: "plain", "quote" for somebody's own words, "small" for what explains, "caution"."""

    text: str
    kind: str = "plain"


class Column(msgspec.Struct, frozen=True):
    """`share` of the width; figures stand at the right."""

    name: str
    share: float
    figures: bool = False


class Table(msgspec.Struct, frozen=True):
    """`feet`: its last rows are sums."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    feet: int = 0


class Picture(msgspec.Struct, frozen=True):
    title: str
    drawing: Drawing


class Photos(msgspec.Struct, frozen=True):
    """Thumbnails with what is written below each."""

    shown: tuple[tuple[bytes, str], ...]


Block = Heading | Facts | Prose | Table | Picture | Photos


class Document(msgspec.Struct, frozen=True, kw_only=True):
    """`tag` and `title` head every page; `state` and `verdict` are at the top of the first. `demo`: marked as such."""

    tag: str
    title: str
    name: str
    state: str
    verdict: str
    demo: bool
    blocks: tuple[Block, ...]


STATE_WORDS: dict[JobState, str] = {
    JobState.OPEN: "Open",
    JobState.FOR_APPROVAL: "Waiting for approval",
    JobState.FOR_PART: "Waiting for a part",
    JobState.FOR_OWNER: "Waiting for the owner",
    JobState.CLOSED: "Closed",
}
RESULT_WORDS: dict[Result, str] = {
    Result.UNSAID: "",
    Result.WORKS: "It works.",
    Result.PARTLY: "It works in part.",
    Result.NOT_REPAIRED: "Not repaired.",
}
OUTCOME_WORDS: dict[Outcome, str] = {outcome: outcome.value.replace("-", " ") for outcome in Outcome}
RUN_WORDS: dict[RunKind, str] = {
    RunKind.PROBE: "probe",
    RunKind.RECOVERY: "recovery",
    RunKind.PROOF: "proof",
    RunKind.HAND: "hand on the shaft",
    RunKind.LEADS: "leads measured",
    RunKind.START_UP: "starts captured",
    RunKind.RUN_IN: "run in",
    RunKind.CHECK: "supply checked",
}
_HAND = {
    EntryKind.TURNED: "turned",
    EntryKind.TAPPED: "tapped",
    EntryKind.SOAKED: "soaked",
    EntryKind.WARMED: "warmed",
    EntryKind.OILED: "oiled",
}
_FROM_REST = (RunKind.PROOF, RunKind.START_UP)
"""Runs that show whether it starts from rest."""
_UNCONFIRMED = "the output was NOT CONFIRMED off"


def document(sheet: Sheet, region: Region, *, currency: str = "", zone: tzinfo | None = None) -> Document:
    """The sheet in words. `currency`: of its money; `zone`: of its times, None is this computer's."""
    job, say = sheet.job, Say(region=region, zone=zone, currency=currency)
    item = job.item
    parts = (item.kind, item.make, item.model, f"serial {item.serial}" if item.serial else "")
    return Document(
        tag=short(job.tag, MOST_TAG),
        title="Job sheet",
        name=" · ".join(_capital(one_line(part)) if n == 0 else one_line(part) for n, part in enumerate(parts) if part),
        state=_state(job, sheet, say),
        verdict=_verdict(job),
        demo=sheet.demo,
        blocks=tuple(_blocks(sheet, say)),
    )


def _state(job: Job, sheet: Sheet, say: Say) -> str:
    if job.state is JobState.CLOSED and job.closed_utc:
        return f"Closed on {say.day(job.closed_utc)}"
    waits = f": {one_line(job.waiting_for)}" if job.waiting_for else ""
    since = f", since {say.day(job.waiting_since_utc)}" if job.waiting_since_utc else ""
    return f"{STATE_WORDS[job.state]}{waits}{since}, as of {say.instant(sheet.as_of_utc)}: the work is not finished"


def _verdict(job: Job) -> str:
    if job.state is not JobState.CLOSED:
        return ""
    last = (
        f"The last run ended as: {OUTCOME_WORDS.get(_outcome(job), one_line(job.last_outcome or ''))}."
        if job.last_outcome
        else ""
    )
    return RESULT_WORDS[job.result] or last


def _outcome(job: Job) -> Outcome:
    try:
        return Outcome(job.last_outcome or "")
    except ValueError:  # a word of a newer program
        return Outcome.UNDETERMINED


def _blocks(sheet: Sheet, say: Say) -> Iterable[Block]:
    job = sheet.job
    yield Facts(rows=_facts(sheet, say), short=True)
    yield Heading("Complaint, in the owner's words")
    yield Prose(f"“{lines(job.complaint)}”" if job.complaint.strip() else NOTHING, "quote")
    yield Heading("What came of it")
    yield Facts(rows=_closing(sheet, say))
    yield from _costs(sheet, say)
    yield Heading("Cautions")
    for caution in _cautions(sheet, say):
        yield Prose(caution, "caution")
    yield from _curves(sheet, say)
    yield from _starts(sheet, say)
    yield from _findings(sheet)
    yield Heading("Made safe")
    checks = [
        (say.instant(entry.utc), lines(entry.text, MOST_CELL), one_line(entry.who))
        for entry in sheet.entries
        if entry.stage is Stage.MAKE_SAFE
    ]
    yield from _table(TIMED, checks, "No check is on record.")
    yield Heading("What was done, step by step")
    yield from _table(TIMED, _steps(sheet, say), "Nothing yet.")
    yield from _corrections(sheet, say)
    if shown := tuple((photo.thumbnail, _caption(photo)) for photo in sheet.photos if photo.thumbnail):
        yield Heading("Photos")
        yield Photos(shown)
    yield Prose(
        f"Times are {say.zone_words(sheet.as_of_utc)}. Volts and amps are what the supply read back, averaged by it: "
        f"a peak may have been higher. Gathered from the ledger on {say.instant(sheet.as_of_utc)}.",
        "small",
    )


TIMED = (Column("When", 0.2), Column("What", 0.67), Column("Who", 0.13))


def _facts(sheet: Sheet, say: Say) -> tuple[tuple[str, str], ...]:
    job = sheet.job
    limit = "none agreed" if job.spending_limit_cents is None else say.money(job.spending_limit_cents)
    motor = ", ".join(part for part in (say.quantity(job.motor.rated_volts, "V"), one_line(job.motor.note)) if part)
    told = [
        ("Job", f"{job.number:04d}"),
        ("Owner", one_line(job.owner)),
        ("Reached at", one_line(job.contact)),
        ("Taken in", say.instant(job.opened_utc)),
        ("Technician", one_line(job.who)),
        ("Owner's consent", "given" if job.consent else "not on record"),
        ("Spending limit", limit),
        ("Motor", motor),
        ("Load", one_line(job.load_state)),
        ("Opened before", one_line(job.opened_before)),
        ("What it pumped", one_line(job.pumped)),
        ("Came back from", "" if sheet.earlier is None else f"job {sheet.earlier.number:04d}"),
    ]
    return tuple((name, value) for name, value in told if value)


def _closing(sheet: Sheet, say: Say) -> tuple[tuple[str, str], ...]:
    job = sheet.job
    told = [
        ("Result", RESULT_WORDS[job.result]),
        ("Cause", lines(job.cause)),
        ("Work done", lines(job.work_done)),
        ("Method", lines(job.method)),
        ("Prognosis", lines(job.prognosis)),
        ("Advice", lines(job.advice)),
        ("Warranty", _warranty(job, say)),
    ]
    kept = tuple((name, value) for name, value in told if value)
    return kept or (("Result", "not closed yet"),)


def _warranty(job: Job, say: Say) -> str:
    if job.state is not JobState.CLOSED or job.closed_utc is None:
        return ""
    if job.warranty_days is None:
        return "none stated"
    return f"{job.warranty_days} days from {say.day(job.closed_utc)}"


def _costs(sheet: Sheet, say: Say) -> Iterable[Block]:
    yield Heading("Costs")
    limit = sheet.job.spending_limit_cents
    if not sheet.charges:
        yield Prose("Nothing was charged." if sheet.job.state is JobState.CLOSED else "Nothing is charged so far.")
        return
    numbers = {charge.id: n for n, charge in enumerate(sheet.charges, 1)}
    rows = [_charge(charge, numbers, say) for charge in sheet.charges[:MOST_ROWS]]
    if rest := sheet.charges[MOST_ROWS:]:
        more = say.money(sum(one.cents for one in rest))
        rows.append(("", f"{len(rest)} more lines, in the ledger", "", "", more))
    total = sheet.cents
    feet = [("", "Total", "", "", say.money(total))]
    if limit is not None:
        left = limit - total
        words = "Left" if left >= 0 else "ABOVE THE LIMIT BY"
        feet += [("", "Spending limit", "", "", say.money(limit)), ("", words, "", "", say.money(abs(left)))]
    columns = (
        Column("No.", 0.06, figures=True),
        Column("What", 0.48),
        Column("How many", 0.16, figures=True),
        Column("Each", 0.15, figures=True),
        Column("Amount", 0.15, figures=True),
    )
    yield Table(columns=columns, rows=(*rows, *feet), feet=len(feet))


def _charge(charge: Charge, numbers: dict[int, int], say: Say) -> tuple[str, ...]:
    what = lines(charge.text, MOST_CELL) or ("work" if charge.kind is ChargeKind.MINUTES else NOTHING)
    if charge.corrects is not None:
        what = f"{what} (takes back no. {numbers.get(charge.corrects, '?')})"
    unit = " min" if charge.kind is ChargeKind.MINUTES else ""
    each = say.money(charge.each_cents) + (" an hour" if charge.kind is ChargeKind.MINUTES else "")
    count = f"{charge.count}".replace("-", "−") + unit
    return (str(numbers[charge.id]), what, count, each, say.money(charge.cents))


def _cautions(sheet: Sheet, say: Say) -> Iterable[str]:
    job = sheet.job
    for run in sheet.runs:
        if not run.result.output_confirmed_off and run.result.outcome is not Outcome.REFUSED:
            yield f"Run {run.id} of {say.instant(run.started_utc)}: {_UNCONFIRMED} when it ended."
        if not run.complete:
            yield f"Run {run.id}: the program ended before the run did; its record stops there."
        if run.result.max_volts is not None and run.result.max_volts > run.rated_volts * 1.05:
            volts = say.quantity(run.result.max_volts, "V")
            yield f"Run {run.id} went up to {volts}, above the rated {say.quantity(run.rated_volts, 'V')}."
    for unlock in sheet.unlocks:
        who, why = one_line(unlock.who), one_line(unlock.why)
        yield f"Higher ceilings were unlocked on {say.instant(unlock.utc)} by {who}: {why}"
    if job.state is JobState.CLOSED and not any(run.kind in _FROM_REST for run in sheet.runs):
        yield "No proof on the bench: whether it starts again from rest was not measured."
    if job.spending_limit_cents is not None and sheet.cents > job.spending_limit_cents:
        yield f"The costs are {say.money(sheet.cents - job.spending_limit_cents)} above the spending limit."
    yield from (f"Could not be read: {one_line(what)}." for what in sheet.damaged)
    yield "Extra-low voltage only. What was mains-powered goes back together under local rules, by a licensed person."


def _curves(sheet: Sheet, say: Say) -> Iterable[Block]:
    heading, named = _named(sheet)
    yield Heading(heading)
    if not named:
        yield Prose("Nothing was measured.")
        return
    yield _figures(named, say)
    volts, amps = most(*(curve.volts for _, curve in named)), most(*(curve.amps for _, curve in named))
    for name, curve in named:
        drawing = draw(curve, most_volts=volts, most_amps=amps, say=say.number)
        yield Picture(title=f"{name}: {_run_name(curve.run, say)}", drawing=drawing)


def _starts(sheet: Sheet, say: Say) -> Iterable[Block]:
    if not sheet.starts:
        return
    yield Heading("Starts from rest")
    names = [
        f"Run {one.run.id}, {len(one.starts)} {'start' if len(one.starts) == 1 else 'starts'}" for one in sheet.starts
    ]
    rows = []
    for kind in FIGURES:
        told = [together(one.figures, kind) for one in sheet.starts]
        if any(told):
            cells = (NOTHING if one is None else _mean(one, say) for one in told)
            rows.append((_capital(kind.label), *cells))
    share = 0.72 / len(names)
    yield Table(columns=(Column("Figure, mean", 0.28), *(Column(name, share) for name in names)), rows=tuple(rows))
    if len(sheet.starts) > 1:
        first, last = sheet.starts
        not_same = not_alike(last, first)
        found = () if not_same else changes(last.figures, [first.figures])
        yield Prose(say.number(verdict(found, not_same)))
    curves = [curve for one in sheet.starts for curve in one.curves]
    picked = [replace(one.curves[0], name=f"run {one.run.id}") for one in reversed(sheet.starts)]
    if any(np.isfinite(curve.amps).any() for curve in curves):
        title = "All of them; picked out: the first of each run"
        yield Picture(title=title, drawing=draw_starts(curves, picked=picked, say=say.number))


def _mean(one: Together, say: Say) -> str:
    value, low, high = (say.number(show_fine(number, one.kind.unit)) for number in (one.mean, one.low, one.high))
    return f"{value} ({low} to {high})"


def _named(sheet: Sheet) -> tuple[str, list[tuple[str, Curve]]]:
    """A heading, and what is drawn by the word that it is called: only a proof is an "after"."""
    before, after = sheet.before, sheet.after
    freed = [] if sheet.freed is None else [("Freed", sheet.freed)]
    if before is None or after is None:
        return "On the bench", [("Measured", curve) for curve in (before, after) if curve is not None]
    if after.run.kind is RunKind.PROOF:
        return "Before and after", [("Before", before), *freed, ("After", after)]
    return "First and last run", [("First", before), *freed, ("Last", after)]


def _run_name(run: Run, say: Say) -> str:
    load = one_line(run.load_state)
    return f"run {run.id}, {RUN_WORDS[run.kind]}, {say.instant(run.started_utc)}" + (f", {load}" if load else "")


def _figures(named: Sequence[tuple[str, Curve]], say: Say) -> Table:
    rows: list[tuple[str, Callable[[Curve], str]]] = [
        ("How it ended", lambda c: _ended(c.run)),
        ("Between the leads", lambda c: _between_leads(c.run)),
        ("Winding resistance", lambda c: _resistance(c.run, say)),
        ("Kicks", lambda c: _kicks(c.run)),
        ("Highest volts read back", lambda c: say.quantity(c.run.result.max_volts, "V")),
        ("Highest amps read back", lambda c: say.quantity(c.run.result.max_amps, "A")),
        ("Winding, upper bound", lambda c: say.quantity(c.run.result.winding_bound_c, "°C")),
        ("Steady current of a start", lambda c: _of_start(c, "steady_amps", "A", say)),
        ("Run-up time constant", lambda c: _of_start(c, "tau_s", "s", say)),
    ]
    told = ((name, *(value(curve) for _, curve in named)) for name, value in rows)
    share = 0.72 / len(named)
    return Table(
        columns=(Column("Figure", 0.28), *(Column(name, share) for name, _ in named)),
        rows=tuple(row for row in told if set(row[1:]) != {NOTHING}),
    )


def _ended(run: Run) -> str:
    """A check of a supply and a probe free nothing: that they were made is how they ended, and what was found is said
    in a line of its own."""
    made = run.kind is RunKind.CHECK or (
        run.kind is RunKind.PROBE and run.result.winding_verdict is not WindingVerdict.NOT_PROBED
    )
    return "made" if made and run.result.outcome is Outcome.UNDETERMINED else OUTCOME_WORDS[run.result.outcome]


def _between_leads(run: Run) -> str:
    verdict = run.result.winding_verdict
    return NOTHING if verdict is WindingVerdict.NOT_PROBED else verdict.value


def _resistance(run: Run, say: Say) -> str:
    result = run.result
    return say.between(result.resistance_ohm, result.resistance_low_ohm, result.resistance_high_ohm, "Ω")


def _kicks(run: Run) -> str:
    if run.kind not in (RunKind.RECOVERY, RunKind.HAND):
        return NOTHING
    return f"{run.result.kicks}" + (f", freed by {one_line(run.freed_rung)}" if run.freed_rung else "")


def _of_start(curve: Curve, name: str, unit: str, say: Say) -> str:
    if curve.measured is None:
        return NOTHING
    value: Fitted | None = getattr(curve.measured.constants, name)
    if value is None:
        why = curve.measured.constants.why.get(name, "")
        return f"not known ({say.number(one_line(why))})" if why else NOTHING
    return f"{say.fitted(value, unit)} at {say.quantity(curve.measured.test.set_volts, 'V')}"


def _findings(sheet: Sheet) -> Iterable[Block]:
    if not sheet.findings:
        return
    gone = {finding.corrects for finding in sheet.findings}
    shown = [finding for finding in sheet.findings if finding.id not in gone]
    names = (("Part", 0.2), ("Marking", 0.14), ("Value", 0.14), ("Where", 0.2), ("What it is thought to do", 0.32))
    yield Heading("Findings")
    rows = [
        tuple(lines(text, MOST_CELL) or NOTHING for text in (f.part, f.marking, f.value, f.place, f.purpose))
        for f in shown
    ]
    yield from _table(tuple(Column(*name) for name in names), rows, "")


def _steps(sheet: Sheet, say: Say) -> list[tuple[str, ...]]:
    steps = [
        (entry.utc, _step(entry.kind, lines(entry.text, MOST_CELL)), one_line(entry.who))
        for entry in sheet.entries
        if entry.stage is not Stage.MAKE_SAFE
    ]
    steps += [(run.started_utc, _run(run, say), "") for run in sheet.runs]
    # A stable sort: what was noted at one instant stays in the order in which it was noted.
    return [(say.instant(utc), what, who) for utc, what, who in sorted(steps, key=lambda step: step[0])]


def _step(kind: EntryKind, text: str) -> str:
    word = _HAND.get(kind)
    return text if word is None or word in text.casefold() else f"By hand, {word}: {text}".rstrip(": ")


def _run(run: Run, say: Say) -> str:
    result = run.result
    kicks = {0: "", 1: "1 kick"}.get(result.kicks, f"{result.kicks} kicks")
    reached = [say.quantity(value, unit) for value, unit in ((result.max_volts, "V"), (result.max_amps, "A"))]
    figures = ", ".join(part for part in (kicks, f"up to {' and '.join(reached)}") if part)
    off = "" if result.output_confirmed_off or result.outcome is Outcome.REFUSED else f" {_capital(_UNCONFIRMED)}."
    reason = say.number(lines(result.reason, MOST_CELL)).rstrip(".")
    moved = ", it moved" if result.moved else ""
    said = _ended(run)
    name = f"Run {run.id}, {RUN_WORDS[run.kind]}: {said}{moved}; {figures}."
    return f"{name} {_capital(reason)}.{off}" if reason else f"{name}{off}"


def _corrections(sheet: Sheet, say: Say) -> Iterable[Block]:
    rows = [(edit.utc, _edit(edit), one_line(edit.who)) for edit in sheet.edits if _is_correction(edit, sheet.job)]
    replaced = {finding.id: finding for finding in sheet.findings}
    rows += [
        (finding.utc, _finding_correction(replaced[finding.corrects], finding), one_line(finding.who))
        for finding in sheet.findings
        if finding.corrects in replaced
    ]
    if rows:
        yield Heading("Corrections")
        timed = [(say.instant(utc), what, who) for utc, what, who in sorted(rows, key=lambda row: row[0])]
        yield from _table(TIMED, timed, "")


def _is_correction(edit: Edit, job: Job) -> bool:
    """What was changed while a job was open is work on it; after that, or about a run, it is a correction."""
    return edit.run is not None or (job.closed_utc is not None and edit.utc > job.closed_utc)


def _edit(edit: Edit) -> str:
    about = f"run {edit.run}, {edit.field}" if edit.run is not None else edit.field
    old, new = (_plain(text) or "nothing" for text in (edit.old, edit.new))
    name = _capital(one_line(about.replace("_", " ")))
    change = f"{name}: {new}" if edit.run is not None and edit.field == "note" else f"{name}: “{old}” became “{new}”"
    undone = " Taken back later." if edit.undone_utc else ""
    return f"{change}. Why: {lines(edit.why, MOST_CELL) or NOTHING}.{undone}"


def _plain(text: str) -> str:
    """A value as the ledger kept it, JSON text, as people read it."""
    try:
        value = msgspec.json.decode(text)
    except msgspec.MsgspecError:
        value = text
    return lines("" if value is None else str(value), MOST_CELL)


def _finding_correction(old: Finding, new: Finding) -> str:
    def told(one: Finding) -> str:
        return ", ".join(one_line(part) for part in (one.part, one.marking, one.value, one.place, one.purpose) if part)

    return f"Finding: “{told(old)}” became “{told(new)}”."


def _caption(photo: Attached) -> str:
    return one_line(photo.caption or photo.name)


def _table(columns: Sequence[Column], rows: Sequence[tuple[str, ...]], none: str) -> Iterable[Block]:
    if not rows:
        yield Prose(none)
        return
    if len(rows) > MOST_ROWS:
        # How it began and how it ended say most.
        half, out = MOST_ROWS // 2, len(rows) - MOST_ROWS
        between = tuple(
            f"{out} lines left out here; whole in the ledger" if n == 1 else "…" for n in range(len(columns))
        )
        rows = [*rows[:half], between, *rows[-half:]]
    yield Table(columns=tuple(columns), rows=tuple(rows))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
