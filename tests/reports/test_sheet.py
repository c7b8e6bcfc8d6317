"""What a job sheet tells, before anybody lays it out: nothing that matters is left out, nothing is too long."""

import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import msgspec
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.clock import VirtualClock
from benchlog.ledger.filing import file_journal
from benchlog.ledger.store import Ledger
from benchlog.outcome import Outcome, RunResult
from benchlog.records import Edit, Entry, EntryKind, Finding, Item, JobState, Motor, RunKind, Stage
from benchlog.reports.curves import draw, ticks_up_to
from benchlog.reports.document import Facts, Prose, Table
from benchlog.reports.drawing import FAINT, Boxes, Line, Words
from benchlog.reports.regions import Region
from benchlog.reports.sheet import Sheet, before_and_after, gather, outline, plain
from benchlog.reports.sheet_text import WIDTH, text_of
from benchlog.reports.words import MOST_TEXT, Say
from tests.ledger.benches import BILGE_PUMP, FREED, MOTOR, RAN, blocks, fresh_ledger, request, write_journal
from tests.reports.sheets import charge, curve, job, run, sheet, told


@pytest.fixture(scope="module")
def demo(built_demo: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("sheet") / "harbour.db"
    shutil.copy(built_demo, path)
    return path


def test_a_job_of_the_demo_ledger_is_told_whole_and_marked(demo: Path) -> None:
    with Ledger.open(demo) as book:
        made = gather(book, book.job_by_number(1))
        entries = book.entries(1)
    text = " ".join(text_of(told(made)).split())
    assert made.demo
    assert "DEMO" in text
    for words in ("H-0001", "BP-0417", made.job.complaint, made.job.cause, made.job.work_done, made.job.prognosis):
        assert words in text
    assert all(entry.text.split()[0] in text for entry in entries)
    assert "Run 1, recovery: freed; 3 kicks" in text
    assert "Run 2, proof: runs" in text
    assert made.before is not None
    assert made.after is not None
    assert (made.before.run.kind, made.after.run.kind) == (RunKind.RECOVERY, RunKind.PROOF)
    assert made.after.measured is not None


def test_the_run_that_freed_it_is_drawn_where_it_is_neither_the_first_nor_the_last(tmp_path: Path) -> None:
    runs = [
        ("a", RunKind.PROBE, msgspec.structs.replace(FREED, outcome=Outcome.UNDETERMINED)),
        ("b", RunKind.RECOVERY, FREED),
        ("c", RunKind.PROOF, RAN),
    ]
    with fresh_ledger(tmp_path, VirtualClock()) as book:
        job = book.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
        sheets = []
        for uid, kind, result in runs:
            asked = msgspec.structs.replace(request(uid, job=job.id), kind=kind)
            file_journal(book, write_journal(tmp_path / f"{uid}.journal", blocks(asked, result=result)))
            sheets.append(gather(book, job))
    drawn = [[None if one is None else one.run.id for one in (s.before, s.freed, s.after)] for s in sheets]
    assert drawn == [[1, None, None], [1, None, 2], [1, 2, 3]]
    assert plain(sheets[-1])["freed"] == 2


def test_a_proof_before_it_was_freed_is_no_after(tmp_path: Path) -> None:
    probed = msgspec.structs.replace(FREED, outcome=Outcome.UNDETERMINED)
    failed = msgspec.structs.replace(RAN, outcome=Outcome.STILL_STUCK)
    kinds = (RunKind.PROBE, RunKind.PROOF, RunKind.RECOVERY, RunKind.PROOF)
    sheets = []
    with fresh_ledger(tmp_path, VirtualClock()) as book:
        job = book.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry")
        for number, (kind, result) in enumerate(zip(kinds, (probed, failed, FREED, RAN), strict=True)):
            asked = msgspec.structs.replace(request(f"{number}", job=job.id), kind=kind)
            file_journal(book, write_journal(tmp_path / f"{number}.journal", blocks(asked, result=result)))
            sheets.append(gather(book, job))
    drawn = [[None if one is None else one.run.id for one in (s.before, s.freed, s.after)] for s in sheets]
    assert drawn == [[1, None, None], [1, None, 2], [1, None, 3], [1, 3, 4]]
    assert [columns_of(made) for made in sheets[1:]] == [
        ["Before", "After"],
        ["First", "Last"],
        ["Before", "Freed", "After"],
    ]


def test_a_job_without_a_run_in_a_demo_ledger_is_a_demonstration_too(demo: Path, tmp_path: Path) -> None:
    new = {"item": Item(kind="cabin fan"), "motor": Motor(rated_volts=12.0), "complaint": "", "load_state": ""}
    with Ledger.open(demo) as book:
        assert gather(book, book.new_job(**new)).demo  # type: ignore[arg-type]
    with Ledger.open(tmp_path / "own.db") as book:
        made = gather(book, book.new_job(**new))  # type: ignore[arg-type]
    assert not made.demo
    page = text_of(told(made))
    assert "DEMO" not in page
    assert "the work is not finished" in page
    assert "Nothing was measured." in page


def test_a_trace_that_cannot_be_read_costs_its_curve_and_is_told(demo: Path, tmp_path: Path) -> None:
    path = tmp_path / "harbour.db"
    shutil.copy(demo, path)
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute("UPDATE trace SET data = zeroblob(length(data)) WHERE run_id = 1")
    with Ledger.open(path) as book:
        made = gather(book, book.job_by_number(1))
    assert made.before is None
    assert made.after is not None
    page = " ".join(text_of(told(made)).split())
    assert "Could not be read: the trace of run 1" in page
    assert "Run 1, recovery: freed" in page


def test_the_first_recovery_and_the_last_proof_are_held_against_each_other() -> None:
    kinds = (RunKind.LEADS, RunKind.PROBE, RunKind.RECOVERY, RunKind.PROOF, RunKind.PROOF, RunKind.PROBE)
    runs = [run(kind, id=n) for n, kind in enumerate(kinds, 1)]
    first, last = before_and_after(runs)
    assert first is runs[1]
    assert last is runs[4]
    assert before_and_after([runs[2]]) == (runs[2], None)
    assert before_and_after([run(samples=0)]) == (None, None)
    assert before_and_after(runs[1:3]) == (runs[1], runs[2])


@given(
    at=st.integers(0, 99_999), value=st.sampled_from([-3.0, 40.0]), lost=st.lists(st.integers(0, 99_999), max_size=50)
)
def test_a_kick_of_one_reading_among_a_hundred_thousand_stays(at: int, value: float, lost: list[int]) -> None:
    values = np.zeros(100_000)
    values[lost] = np.nan
    values[at] = value
    t_s = np.arange(100_000, dtype=np.float64) / 100.0
    made = outline(t_s, values)
    assert value in made.values
    assert len(made.values) <= 4 * 600
    assert np.all(np.diff(made.t_s) > 0)
    kept = {(t, v) for t, v in zip(made.t_s.tolist(), made.values.tolist(), strict=True)}
    assert kept <= set(zip(t_s.tolist(), values.tolist(), strict=True))


def test_a_drawn_kick_reaches_its_volts_and_nothing_leaves_the_drawing() -> None:
    drawing = draw(curve(samples=57_600), most_volts=15.0, most_amps=2.0)
    lines = [mark for mark in drawing.marks if isinstance(mark, Line)]
    assert all(0 <= x <= drawing.width and 0 <= y <= drawing.height for line in lines for x, y in line.points)
    volts = max(lines, key=lambda line: len(line.points))
    tops = sorted(y for _, y in volts.points)
    assert tops[0] < tops[-1] - 10  # mm: 12 of 15 V, in a pane of 21 mm
    assert any(line.dash for line in lines)  # the ceiling of 12 V


def test_printed_in_black_alone_every_line_stands_out_and_the_two_are_told_apart() -> None:
    drawing = draw(curve(), most_volts=15.0, most_amps=2.0)
    told_apart = [mark for mark in drawing.marks if not isinstance(mark, Boxes) and mark.ink != FAINT]
    # Source: WCAG 2.1, 1.4.11 (3:1 for what is drawn) and 1.4.3 (4.5:1 for text).
    assert all(contrast(mark.ink) >= (4.5 if isinstance(mark, Words) else 3.0) for mark in told_apart)
    volts, amps = sorted((m for m in told_apart if isinstance(m, Line)), key=lambda line: -len(line.points))[:2]
    assert volts.width != amps.width
    assert max(y for _, y in volts.points) < min(y for _, y in amps.points)
    assert {mark.text for mark in told_apart if isinstance(mark, Words)} >= {"volts", "amps"}


def contrast(ink: str) -> float:
    """On white. Source: WCAG 2.1, relative luminance and contrast ratio."""
    parts = [int(ink[n : n + 2], 16) / 255 for n in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.03928 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 1.05 / (0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2] + 0.05)


@given(st.floats(1e-3, 1e6), st.integers(2, 10))
def test_an_axis_reaches_what_is_drawn_in_few_round_steps(most: float, count: int) -> None:
    ticks = ticks_up_to(most, count)
    assert ticks[0] == 0
    assert ticks[-1] >= most * 0.998
    assert 2 <= len(ticks) <= count + 2


def columns_of(made: Sheet) -> list[str]:
    """What the runs that are held against each other are called."""
    table = next(b for b in told(made).blocks if isinstance(b, Table) and b.columns[0].name == "Figure")
    return [column.name for column in table.columns[1:]]


def test_only_a_proof_is_called_after() -> None:
    assert columns_of(sheet()) == ["Before", "After"]
    assert columns_of(sheet(after=curve(RunKind.RECOVERY, id=2))) == ["First", "Last"]
    assert columns_of(sheet(freed=curve(RunKind.RECOVERY, id=3))) == ["Before", "Freed", "After"]
    assert columns_of(sheet(after=None)) == ["Measured"]
    assert columns_of(sheet(before=None)) == ["Measured"]


def test_costs_add_up_against_the_limit_and_lines_taken_back_are_told() -> None:
    back = charge(3, -1250, "shaft seal: taken back, did not fit", count=-1, corrects=1)
    made = sheet(charges=(charge(1, 1250), charge(2, 20_000, "courier"), back))
    table = next(block for block in told(made, Region(decimal=","), "EUR").blocks if isinstance(block, Table))
    assert [row[4] for row in table.rows] == [
        "12,50 EUR",
        "200,00 EUR",
        "−12,50 EUR",
        "200,00 EUR",
        "120,00 EUR",
        "80,00 EUR",
    ]
    assert "takes back no. 1" in table.rows[2][1]
    assert table.rows[-1][1] == "ABOVE THE LIMIT BY"
    assert "80.00 above the spending limit" in text_of(told(made)).replace("\n  ", " ")


def test_a_correction_of_a_closed_job_says_who_when_and_why_and_work_on_an_open_one_is_none() -> None:
    edit = {"field": "cause", "old": '"rust"', "new": '"sand"', "who": "Ada", "why": "seen under the lens"}
    late = Edit(id=2, utc="2026-03-07T10:00:00.000Z", **edit)  # type: ignore[arg-type]
    early = Edit(id=1, utc="2026-03-05T10:00:00.000Z", **edit)  # type: ignore[arg-type]
    page = " ".join(text_of(told(sheet(edits=(early, late)))).split())
    assert page.count("“rust” became “sand”. Why: seen under the lens.") == 1
    assert "7 Mar 2026, 10:00" in page
    assert "Ada" in page
    assert "CORRECTIONS" not in text_of(told(sheet(edits=(early,))))


def test_a_finding_that_was_replaced_stands_under_corrections_alone() -> None:
    seen = {"utc": "2026-03-05T10:00:00.000Z", "part": "resistor"}
    both = Finding(id=1, marking="103", **seen), Finding(id=2, marking="104", corrects=1, **seen)  # type: ignore[arg-type]
    blocks = told(sheet(findings=both)).blocks
    tables = [block for block in blocks if isinstance(block, Table)]
    assert [row[1] for table in tables if table.columns[0].name == "Part" for row in table.rows] == ["104"]
    assert "“resistor, 103” became “resistor, 104”" in " ".join(text_of(told(sheet(findings=both))).split())


def test_what_a_reader_must_know_is_a_caution() -> None:
    bad = run(complete=False)
    bad = type(bad)(**{name: getattr(bad, name) for name in bad.__struct_fields__ if name != "result"}, result=lost())
    made = sheet(runs=(bad,), after=None, damaged=("the trace of run 9: cut",))
    cautions = "\n".join(
        block.text for block in told(made).blocks if isinstance(block, Prose) and block.kind == "caution"
    )
    for words in (
        "NOT CONFIRMED off",
        "ended before the run did",
        "above the rated 12.0\u00a0V",
        "No proof",
        "run 9: cut",
    ):
        assert words in cautions


def lost() -> RunResult:
    result = run().result
    kept = {name: getattr(result, name) for name in result.__struct_fields__}
    return RunResult(**(kept | {"outcome": Outcome.SUPPLY_LOST, "output_confirmed_off": False, "max_volts": 18.0}))


def test_hand_steps_and_runs_stand_in_the_order_in_which_they_happened() -> None:
    by_hand = Entry(
        utc="2026-03-05T01:50:00.000Z", stage=Stage.FREE, text="the housing", kind=EntryKind.TAPPED, who="Ada"
    )
    steps = [block for block in told(sheet(entries=(by_hand,))).blocks if isinstance(block, Table)][-1]
    assert [row[1].split(":")[0] for row in steps.rows] == ["Run 1, recovery", "By hand, tapped", "Run 2, proof"]


def test_a_check_of_a_supply_is_told_as_one() -> None:
    """It is not undetermined: nothing was to come free."""
    found = RunResult(outcome=Outcome.UNDETERMINED, reason="the supply was checked with 10 Ω: 9 of 9 figures fit")
    text = " ".join(text_of(told(sheet(runs=(run(RunKind.CHECK, result=found),), before=None, after=None))).split())
    assert "supply checked: made; " in text
    assert "The supply was checked with 10 Ω: 9 of 9 figures fit." in text
    assert "undetermined" not in text


def test_half_a_million_letters_are_shortened_with_a_note_and_the_ledger_keeps_them() -> None:
    made = sheet(job=job(complaint="It hums. " * 55_000, work_done="W" * 500_000))
    document = told(made)
    assert len(text_of(document)) < 6 * MOST_TEXT
    assert text_of(document).count("shortened here; whole in the ledger") == 2
    assert len(made.job.complaint) == 495_000


def test_hundreds_of_steps_are_cut_in_the_middle_and_counted() -> None:
    entries = tuple(
        Entry(utc=f"2026-03-05T03:{n // 60:02d}:{n % 60:02d}.000Z", stage=Stage.FREE, text=f"step {n}")
        for n in range(1000)
    )
    steps = [block for block in told(sheet(entries=entries)).blocks if isinstance(block, Table)][-1]
    assert len(steps.rows) == 301
    assert steps.rows[150][1].startswith("702 lines left out")
    assert "Run 1" in steps.rows[0][1]
    assert steps.rows[-1][1] == "step 999"


@given(st.text(max_size=300))
def test_whatever_is_typed_the_terminal_obeys_nothing_in_it(text: str) -> None:
    made = sheet(job=job(complaint=text, owner=text, item=Item(kind=text, serial=text)))
    page = text_of(told(made))
    assert all(line.isprintable() for line in page.split("\n"))
    assert max(map(len, page.split("\n"))) <= WIDTH


def test_an_open_job_says_what_it_waits_for() -> None:
    waiting = job(
        state=JobState.FOR_PART,
        closed_utc=None,
        waiting_for="shaft seal",
        waiting_since_utc="2026-03-05T08:20:00.000Z",
    )
    assert told(sheet(job=waiting)).state.startswith("Waiting for a part: shaft seal, since 5 Mar 2026")
    facts = [block for block in told(sheet(job=waiting)).blocks if isinstance(block, Facts)]
    assert not any(name == "Warranty" for block in facts for name, _ in block.rows)


def test_days_have_their_month_as_a_word_and_what_is_no_instant_is_shown_as_it_is() -> None:
    say = Say()
    assert say.day("2026-03-05T08:10:00.000Z").split()[1:] == ["Mar", "2026"]
    assert say.instant("yesterday\x1b") == "yesterday?"


def test_as_data_it_has_units_cents_and_runs_without_the_curves() -> None:
    made = plain(sheet())
    assert made["cents"] == 5750
    assert (made["before"], made["after"]) == (1, 2)
    runs = made["runs"]
    assert isinstance(runs, tuple)
    assert runs[0]["ceilings"]["volts"]["value"] == 12.0
    assert runs[0]["result"]["resistance_ohm"] == 2.05


def test_captured_starts_show_that_it_starts_from_rest_and_the_first_and_the_last_are_drawn(demo: Path) -> None:
    with Ledger.open(demo) as book:
        job = next(job for job in book.jobs() if job.item.serial == "CF-118")
        made, runs = gather(book, job), book.runs(job.id)
    assert made.before is not None
    assert made.after is not None
    assert [made.before.run.id, made.after.run.id] == [run.id for run in runs]
    text = text_of(told(made))
    assert "FIRST AND LAST RUN" in text
    assert "No proof on the bench" not in text
    assert f"Run {runs[0].id}, starts captured: runs" in text
    assert [one.run.id for one in made.starts] == [run.id for run in runs]
    starts = " ".join(text.split("STARTS FROM REST")[1].split("MADE SAFE")[0].split())
    assert "Steady current 334 mA" in starts
    assert "Steady current fell, 334 mA to 179 mA" in starts
    assert "4 starts aligned at the trigger" in starts
    assert f"picked out: run {runs[1].id}, run {runs[0].id}" in starts
    assert plain(made)["starts"] == [run.id for run in runs]
