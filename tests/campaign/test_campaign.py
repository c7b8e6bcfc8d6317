"""The campaign, a short form in the suite. The long one: `python -m tests.campaign --runs 100000 --seed 1`."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from benchlog.recovery.ceilings import Bound, Layer
from drivers.dialect import for_output, shipped, shipped_names
from drivers.simulated.quirks import QUIRKS
from tests.campaign.cases import draw_case
from tests.campaign.checks import broken
from tests.campaign.dialects import draw_any_dialect, in_plain_words
from tests.campaign.faults import FAULTS
from tests.campaign.running import Record, run_case
from tests.campaign.totals import DRAWS, Totals, run_batch

SEED, CASES, DIALECT_CASES = 20, 400, 12
START_UP_SEED, START_UPS = 21, 12
RUN_IN_SEED, RUN_INS = 5, 8
SPOKEN_START_UP_SEED, SPOKEN_START_UPS = 23, 4

REGRESSIONS = {
    "a protector read twice a second is not told as motion": (2, 2185),
    "a hand on the limit before the first setpoint is seen": (2, 1333),
    "a disk full at the first event ends the run as any": (3, 177),
    "a readback of no volts at all ends no probe in a fault": (1, 14721),
    "a protector that was open before the start is not told as motion": (1, 8403),
    "a readback stuck during a level gives no resistance": (1, 11009),
    "a slow probe of an unknown winding counts as locked time": (1, 54532),
    "and under a ceiling of the job's": (1, 68717),
    "a protector that opens with every look is not told as motion": (1, 77999),
    "nor with a supply that ignored the first OFF": (1, 80416),
}
"""What the campaign has found: seed and number of the case. They hold for the cases as they are drawn today."""


@pytest.mark.timeout(240)
def test_nothing_is_above_a_ceiling_left_on_or_lost_in_cases_drawn_at_random() -> None:
    totals = run_batch(SEED, range(CASES))
    assert totals.failures == []
    assert totals.readings > 50 * CASES
    assert set(totals.faults) == set(FAULTS)


def test_nor_where_starts_are_captured() -> None:
    totals = run_batch(START_UP_SEED, range(START_UPS), "start-up")
    assert totals.failures == []
    assert totals.readings > 50 * START_UPS
    assert {"runs", "still-stuck"} <= set(totals.outcomes)


def test_nor_where_a_motor_is_run_in() -> None:
    totals = run_batch(RUN_IN_SEED, range(RUN_INS), "run-in")
    assert totals.failures == []
    assert totals.readings > 50 * RUN_INS
    assert {"runs", "still-stuck"} <= set(totals.outcomes)


@pytest.mark.parametrize("name", REGRESSIONS)
def test_what_was_found_stays_mended(name: str, tmp_path: Path) -> None:
    totals = run_batch(REGRESSIONS[name][0], [REGRESSIONS[name][1]])
    assert totals.failures == []
    assert totals.runs > 0


@pytest.mark.parametrize("number", range(4))
def test_a_case_replays_exactly(number: int, tmp_path: Path) -> None:
    folders = tmp_path / "one", tmp_path / "other"
    for folder in folders:
        folder.mkdir()
    one, other = (run_case(draw_case(SEED, number), folder) for folder in folders)
    assert [ran.log for ran in one.runs] == [ran.log for ran in other.runs]
    assert [ran.judged for ran in one.runs] == [ran.judged for ran in other.runs]
    assert [ran.result for ran in one.runs] == [ran.result for ran in other.runs]
    assert [ran.truth for ran in one.runs] == [ran.truth for ran in other.runs]


@pytest.mark.timeout(120)
def test_the_same_holds_in_other_dialects_and_with_their_habits() -> None:
    totals = run_batch(SEED, range(DIALECT_CASES), "dialects")
    assert totals.failures == []
    assert totals.readings > 20 * DIALECT_CASES


def test_and_where_starts_are_captured_in_other_dialects() -> None:
    totals = run_batch(SPOKEN_START_UP_SEED, range(SPOKEN_START_UPS), "start-up-dialects")
    assert totals.failures == []
    assert totals.readings > 50 * SPOKEN_START_UPS
    assert "runs" in totals.outcomes


def test_other_dialects_leave_the_other_cases_as_they_are_and_are_all_drawn() -> None:
    drawn = [draw_any_dialect(SEED, number) for number in range(300)]
    assert drawn[:20] == [draw_any_dialect(SEED, number) for number in range(20)]
    plain = [draw_case(SEED, number) for number in range(300)]
    assert [case.sequence for case in drawn] == [case.sequence for case in plain]
    assert all(case.dialect is None and case.quirks == () for case in plain)
    spoken = [case.dialect for case in drawn if case.dialect is not None]
    assert len(spoken) == len(drawn)
    assert {shipped(name).name for name in shipped_names()} < {dialect.name for dialect in spoken}
    assert {quirk for case in drawn for quirk in case.quirks} == set(QUIRKS)
    assert {case.output for case in drawn} == {1, 2}


def test_start_ups_and_run_ins_in_other_dialects_are_the_same_runs_on_another_supply() -> None:
    for kind in ("start-up", "run-in"):
        for number in range(20):
            plain, spoken = (DRAWS[name](SEED, number) for name in (kind, f"{kind}-dialects"))
            assert spoken.dialect is not None
            assert plain.dialect is None
            assert (spoken.kind, spoken.start_test, spoken.run_in) == (plain.kind, plain.start_test, plain.run_in)


@pytest.mark.parametrize("name", shipped_names())
def test_the_checks_read_setpoints_and_switches_in_every_dialect(name: str) -> None:
    """Otherwise nothing above a ceiling could be seen."""
    dialect = for_output(shipped(name), 1)
    words = in_plain_words(shipped(name), 1)
    program = dialect.program
    units = [program.both.format(volts="02.50", amps="0.500")] if program.both else []
    units += [unit.format(value="2.500") for unit in (program.volts, program.amps) if unit]
    told = ";".join(words(f":{unit}") for unit in units).replace(":", "").split(";")
    assert sorted(one.partition(" ")[0] for one in told) == ["CURR", "VOLT"]
    assert words(f"{program.on};:{program.off}") == "OUTP ON;OUTP OFF"
    assert words(dialect.readback.volts) == dialect.readback.volts


def _records(folder: Path) -> Iterator[Record]:
    for number in range(50):
        (folder / str(number)).mkdir()
        yield run_case(draw_case(SEED, number), folder / str(number))


def test_the_checks_see_a_run_that_breaks_them(tmp_path: Path) -> None:
    """A run held against a ceiling lower than it had, and with its output left on, fails its checks."""
    record = next(record for record in _records(tmp_path) if record.runs and record.runs[0].result.kicks)
    ran = record.runs[0]
    assert broken(record.case, ran) == {}
    low = Bound(value=0.01, layer=Layer.JOB)
    spoiled = replace(
        ran,
        ceilings=type(ran.ceilings)(**dict.fromkeys(ran.ceilings.__struct_fields__, low)),
        on_at_end=True,
        set_volts_at_end=1.0,
        reachable_at_end=True,
        ignores_off=False,
        judged=ran.judged[:-2],
    )
    wrong = broken(record.case, spoiled)
    assert {
        "no setpoint above a ceiling",
        "terminal volts within the ceiling",
        "driven in a row within the ceiling",
        "kicks within the ceiling",
        "off at the end",
        "confirmed off is off",
        "every reading is in the journal",
    } <= set(wrong)


def test_totals_add_up() -> None:
    one, both = run_batch(SEED, range(2)), Totals()
    both.add(one)
    both.add(run_batch(SEED, range(2, 4)))
    assert both == run_batch(SEED, range(4))
