"""A lot's report: counted, ranked by margin, what is not judged said with its reason, on paper and in HTML."""

import shutil
import sqlite3
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import msgspec
import pytest

from benchlog.history.rates import Rate
from benchlog.ledger.lots import lot as lot_by_number
from benchlog.ledger.store import Ledger
from benchlog.motor.limit_values import JudgedFigure
from benchlog.outcome import Outcome
from benchlog.records import CheckKind, JobState
from benchlog.recovery.start_test import StartTest, Trigger
from benchlog.reports.document import MOST_ROWS, Facts, Heading, Picture, Table
from benchlog.reports.lot import LotReport, by_margin, gather_lot, worst_figure
from benchlog.reports.lot_document import facts_of, margin_words
from benchlog.reports.regions import Paper, Region
from benchlog.reports.sheet_html import html_of
from benchlog.reports.sheet_pdf import sheet_pdf
from benchlog.reports.sheet_text import WIDTH, text_of
from benchlog.reports.words import Say
from tests.reports.sheets import NASTY, job
from tests.reports.starts import captured_run, check, limits, lot, measured, report, told
from tests.reports.test_sheet_html import Page
from tests.reports.test_sheet_pdf import poppler

LOT = 14
"""Number of the demo ledger's lot."""


@pytest.fixture(scope="module")
def gathered(built_demo: Path) -> LotReport:
    with Ledger.open(built_demo) as book:
        return gather_lot(book, lot_by_number(book, LOT))


def table(report: LotReport, first: str) -> Table:
    """The one whose first column is called so."""
    return next(b for b in told(report).blocks if isinstance(b, Table) and b.columns[0].name == first)


def cautions(report: LotReport) -> str:
    return text_of(told(report)).split("CAUTIONS")[1].split("HOW THE")[0]


def test_the_demo_lot_is_told_whole_and_marked(gathered: LotReport) -> None:
    made = told(gathered)
    assert (made.demo, made.title, made.tag) == (True, "Lot report", "H-0014")
    # Wilson's score interval of 7 in 8, 95 %: 0.5291 to 0.9776. Source: its formula, computed by hand.
    assert made.verdict == "Passed: 7 of 8 (53 to 98 %)"
    rows = table(gathered, "No.").rows
    assert [row[1] for row in rows] == [f"CF-{n}" for n in range(201, 209)]
    assert [row[3] for row in rows].count("FAIL") == 1
    assert rows[4][3:5] == ("FAIL", "run-up")
    assert rows[4][6].startswith("−")
    assert {type(block) for block in made.blocks} >= {Heading, Facts, Table, Picture}
    assert not gathered.damaged


def test_all_of_the_test_and_of_the_bench_is_said(gathered: LotReport) -> None:
    text = text_of(told(gathered))
    for words in (
        *("cold start 12 V, version 1", "foam cradle", "1 m, 4 mm plugs", "21 °C", "17 Nov 2026", "in its frame"),
        *("Rest before         0.500 s", "Held for            1.20 s", "Made from 7 known good units", "95 %"),
        *("Limits 1: kept on ", "and bench called the units good."),
        *("Repeatability", "zero", "short", "61.0 mΩ", "a peak may have been higher", "Wilson's score"),
    ):
        assert words in text
    assert max(map(len, text.splitlines())) <= WIDTH


def test_every_field_of_a_test_has_its_words() -> None:
    test = StartTest(
        name="by hand", version=3, volts=6.0, amps=1.5, trigger=Trigger.AMPS, level=0.2, hysteresis=0.1, interleave=1
    )
    facts = dict(facts_of(test, Say()))
    assert facts["Limit"] == "1.50\u00a0A"
    assert facts["Trigger"] == "amps rising through 200\u00a0mA, after 100\u00a0mA"
    assert facts["Armed for"] == "30.0\u00a0s at most"
    assert (
        dict(facts_of(msgspec.structs.replace(test, trigger=Trigger.OUTPUT_ON, interleave=4), Say()))["Interleaved"]
        == "4 starts in turn"
    )


def test_a_lot_without_limits_judges_nothing_and_says_so() -> None:
    made = report(limits=None, lot=lot(limits_id=None), measured=tuple(measured(n) for n in (1, 2)))
    assert told(made).verdict == "Nothing was judged."
    text = text_of(told(made))
    assert "None were set: nothing is judged." in text
    assert table(made, "Why").rows == (("The lot has no limits.", "CF-201, CF-202"),)
    assert made.pass_rate == Rate(hits=0, count=0)


def test_what_is_not_judged_has_its_reason() -> None:
    by = limits()
    stuck = captured_run(3, result=msgspec.structs.replace(captured_run(3).result, outcome=Outcome.STILL_STUCK))
    doubtful = measured(4, by=by)
    assert doubtful.judged is not None
    unsure = msgspec.structs.replace(doubtful.judged, passed=None, sentence="Check due: zero.", because="Not judged.")
    units = (
        measured(1, by=by),
        msgspec.structs.replace(measured(2), run=None, curves=(), means={}),
        msgspec.structs.replace(measured(3), run=stuck, curves=(), means={}),
        msgspec.structs.replace(doubtful, judged=unsure, unit=msgspec.structs.replace(doubtful.unit, passed=None)),
        measured(5),
    )
    made = report(measured=units)
    assert {row[0]: row[1] for row in table(made, "Why").rows} == {
        "No run yet.": "CF-202",
        "Its run ended as: still stuck.": "CF-203",
        "Check due: zero. Not judged.": "CF-204",
        "Not judged yet.": "CF-205",
    }
    assert "5: 1 passed, 0 failed, 4 not judged" in text_of(told(made))


def test_a_verdict_that_stands_is_told_with_its_run_and_what_came_before_and_after() -> None:
    by = limits()
    one, other = measured(1, by=by), measured(2, by=by)
    repeated = msgspec.structs.replace(one.unit, passed=False, run=9, judged_run=1)
    mended = msgspec.structs.replace(other.unit, judged_run=2, failed_before=True)
    made = report(
        measured=(msgspec.structs.replace(one, unit=repeated), msgspec.structs.replace(other, unit=mended)),
    )
    assert [row[2:4] for row in table(made, "No.").rows] == [("1", "FAIL"), ("2", "pass, failed before")]
    assert table(made, "Why").rows == (("Run 9 was not judged: the verdict of run 1 stands.", "CF-201"),)
    assert made.pass_rate == Rate(hits=1, count=2)
    assert "pass, failed before" in " ".join(text_of(told(made)).split())


def test_the_worst_is_what_is_farthest_outside_by_the_width_of_its_band() -> None:
    made = report()
    ranked = by_margin(made.measured)
    assert ranked[0].unit.serial == "CF-205"
    assert len(ranked) == 7
    assert ranked[0].judged is not None
    worst = worst_figure(ranked[0].judged)
    assert worst is not None
    assert (worst.name, worst.inside) == ("steady_amps", False)
    assert margin_words(worst, Say()).startswith("−")


def test_what_only_stands_beside_the_figures_is_never_the_worst_one() -> None:
    judged = report().measured[0].judged
    assert judged is not None
    beside = JudgedFigure(
        name="ohm", label="resistance", unit="Ω", value=9.0, low=5.0, high=6.0, margin=-3.0, inside=False, why=""
    )
    worst = worst_figure(msgspec.structs.replace(judged, rows=(beside, *judged.rows)))
    assert worst is not None
    assert worst.name != "ohm"


def test_what_failed_is_picked_out_and_where_all_passed_the_nearest_to_a_limit() -> None:
    picture = next(b for b in reversed(told(report()).blocks) if isinstance(b, Picture))
    assert picture.title.endswith("picked out: what failed")
    assert "picked out: CF-205" in picture.drawing.told
    by = limits()
    good = report(measured=tuple(measured(n, by=by) for n in range(1, 5)))
    picture = next(b for b in reversed(told(good).blocks) if isinstance(b, Picture))
    assert picture.title.endswith("picked out: the nearest to a limit")


def test_a_start_without_a_reading_costs_its_unit_the_curve_alone() -> None:
    one = measured(1)
    empty = replace(
        one.curves[0], t_s=one.curves[0].t_s[:0], volts=one.curves[0].volts[:0], amps=one.curves[0].amps[:0]
    )
    made = report(measured=(msgspec.structs.replace(one, curves=(empty,)),))
    assert not [b for b in told(made).blocks if isinstance(b, Heading) and b.text == "Worst curves"]
    assert table(made, "No.").rows[0][1] == "CF-201"


def test_of_more_units_than_paper_holds_what_did_not_pass_is_there() -> None:
    by = limits()
    one, bad = measured(1, by=by), measured(2, by=by, steady=0.53)
    many = [msgspec.structs.replace(one, unit=msgspec.structs.replace(one.unit, number=n)) for n in range(400)]
    made = report(measured=(*many, bad))
    rows = table(made, "No.").rows
    assert len(rows) == MOST_ROWS + 1
    assert rows[0][3] == "FAIL"
    assert rows[-1][1] == "101 more, in the ledger"


def test_a_bench_that_was_not_checked_or_failed_its_check_is_cautioned_of() -> None:
    assert "No zero or short check is on record" in cautions(report(checks=()))
    failed = report(checks=(check(CheckKind.ZERO, 0.02, "A", passed=False),))
    assert "A zero check did not pass on 5 Mar 2026, 08:15." in cautions(failed)
    due = report(due=("zero", "short"), lot=lot(job=job(state=JobState.OPEN, closed_utc=None)))
    assert "Not checked in this shift: zero and short." in cautions(due)
    assert "this shift" not in cautions(report(due=("zero", "short")))  # closed: no shift any more


def test_an_output_that_was_not_confirmed_off_is_cautioned_of() -> None:
    result = msgspec.structs.replace(captured_run(2).result, output_confirmed_off=False)
    one = msgspec.structs.replace(measured(2), run=captured_run(2, result=result))
    assert "Run 2 of CF-202: the output was NOT CONFIRMED off" in cautions(report(measured=(one,)))


def test_a_trace_that_cannot_be_read_costs_its_unit_the_curve_alone(built_demo: Path, tmp_path: Path) -> None:
    path = tmp_path / "spoiled.db"
    shutil.copy(built_demo, path)
    with closing(sqlite3.connect(path)) as connection, connection:
        run = connection.execute("SELECT max(run_id) FROM judged").fetchone()[0]
        connection.execute("UPDATE trace SET data = substr(data, 1, 40) WHERE run_id = ?", (run,))
    with Ledger.open(path) as book:
        made = gather_lot(book, lot_by_number(book, LOT))
    assert [len(one.curves) for one in made.measured] == [2] * 7 + [0]
    assert made.pass_rate.count == 8
    assert len(made.damaged) == 1
    assert "Could not be read" in cautions(made)


def test_nothing_that_was_typed_is_obeyed_and_numbers_have_the_mark_of_the_place() -> None:
    nasty = lot(name=NASTY, operator=NASTY, leads=NASTY, fixture=NASTY)
    first = measured(1, by=limits())
    unit = msgspec.structs.replace(first.unit, serial=NASTY)
    made = report(lot=nasty, measured=(msgspec.structs.replace(first, unit=unit),))
    page = Page(html_of(told(made, Region(decimal=","))))
    assert not page.open
    assert {tag for tag, _ in page.elements} & {"script", "link", "iframe", "img"} == set()
    assert page.words.count(NASTY) >= 4
    assert "12,0" in page.words
    assert "12.0" not in page.words


@pytest.mark.skipif(shutil.which("pdftotext") is None, reason="needs poppler: apt install poppler-utils")
@pytest.mark.parametrize("paper", [*Paper])
def test_on_paper_every_unit_is_read_back_and_no_heading_stands_alone(
    gathered: LotReport, tmp_path: Path, paper: Paper
) -> None:
    pages = poppler("pdftotext", sheet_pdf(told(gathered), paper), tmp_path, "-layout").split("\f")
    text = " ".join(" ".join(pages).split())
    for words in (*(f"CF-{n}" for n in range(201, 209)), "Passed: 7 of 8 (53 to 98 %)", "limit, high", "DEMO"):
        assert words in text
    for page in pages:
        lines = [line.strip() for line in page.splitlines() if line.strip() and "page" not in line]
        assert not lines or lines[-1] not in (
            "How the figures are spread",
            "Worst curves",
            "Units",
            "Zero and short checks",
        )
