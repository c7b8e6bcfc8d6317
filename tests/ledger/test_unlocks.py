"""Unlocks: who may go how far, for how long, and what stays closed."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.clock import VirtualClock
from benchlog.errors import LedgerDamaged, Refused
from benchlog.ledger.store import Ledger
from benchlog.ledger.unlocks import owner_layer, raised, unlock, unlocks
from benchlog.records import Closing
from benchlog.recovery.ceilings import PROGRAM, Layer, Limits, intersect
from benchlog.settings import Settings
from tests.ledger.benches import BILGE_PUMP, MOTOR

SETTINGS = Settings(ceilings=Limits(volts=24.0, amps=5.0, kicks=20), unlocked=Limits(volts=30.0, kicks=40))
WHO, WHY = "dock foreman", "24 V hatch actuator, frozen at both ends"
HALF_A_DAY_S = 12 * 3600.0


@pytest.fixture
def clock() -> VirtualClock:
    return VirtualClock()


@pytest.fixture
def ledger(tmp_path: Path, clock: VirtualClock) -> Iterator[Ledger]:
    with Ledger.open(tmp_path / "workshop.ledger", clock=clock) as ledger:
        yield ledger


@pytest.fixture
def job(ledger: Ledger) -> int:
    return new_job(ledger)


def new_job(ledger: Ledger) -> int:
    return ledger.new_job(item=BILGE_PUMP, motor=MOTOR, complaint="hums", load_state="dry").id


def test_without_an_unlock_the_owner_s_usual_ceilings_hold(ledger: Ledger, job: int) -> None:
    layer = owner_layer(ledger, SETTINGS, job)
    assert (layer.limits, layer.unlock, layer.unlocked) == (SETTINGS.ceilings, None, "")


def test_an_unlock_raises_what_the_settings_name_for_this_job_alone(ledger: Ledger, job: int) -> None:
    unlock(ledger, SETTINGS, job, who=WHO, why=WHY)
    layer = owner_layer(ledger, SETTINGS, job)
    assert layer.limits == Limits(volts=30.0, amps=5.0, kicks=40)
    assert layer.unlocked == f"unlocked by {WHO} until 12:00 UTC: {WHY}"
    assert owner_layer(ledger, SETTINGS, new_job(ledger)).limits == SETTINGS.ceilings
    assert owner_layer(ledger, SETTINGS, None).limits == SETTINGS.ceilings


def test_it_is_an_entry_with_who_when_why_and_how_far(ledger: Ledger, job: int) -> None:
    made = unlock(ledger, SETTINGS, job, who=f"  {WHO}\n", why=WHY)
    assert unlocks(ledger, job) == [made]
    assert (made.who, made.why, made.limits) == (WHO, WHY, SETTINGS.unlocked)
    assert (made.utc, made.until_utc) == ("2026-01-01T00:00:00.000Z", "2026-01-01T12:00:00.000Z")


def test_it_ends_after_half_a_day_and_stays_on_record(ledger: Ledger, job: int, clock: VirtualClock) -> None:
    unlock(ledger, SETTINGS, job, who=WHO, why=WHY)
    clock.advance(HALF_A_DAY_S - 0.001)
    assert owner_layer(ledger, SETTINGS, job).limits.volts == 30.0
    clock.advance(0.001)
    assert owner_layer(ledger, SETTINGS, job).limits.volts == 24.0
    assert len(unlocks(ledger)) == 1


def test_a_clock_set_back_unlocks_nothing(tmp_path: Path) -> None:
    late, early = VirtualClock(), VirtualClock()
    late.advance(60.0)
    with Ledger.open(tmp_path / "l", clock=late) as ledger:
        job = new_job(ledger)
        unlock(ledger, SETTINGS, job, who=WHO, why=WHY)
    with Ledger.open(tmp_path / "l", clock=early) as ledger:
        assert owner_layer(ledger, SETTINGS, job).unlock is None


def test_the_owner_can_take_it_back_in_the_file_but_not_widen_one_that_was_given(ledger: Ledger, job: int) -> None:
    unlock(ledger, SETTINGS, job, who=WHO, why=WHY)
    lower = Settings(ceilings=Limits(volts=24.0), unlocked=Limits(volts=26.0))
    none = Settings(ceilings=Limits(volts=24.0))
    wider = Settings(ceilings=Limits(volts=24.0, amps=5.0), unlocked=Limits(volts=40.0, amps=9.0))
    raised_since = Settings(ceilings=Limits(volts=36.0), unlocked=Limits(volts=40.0))
    assert owner_layer(ledger, lower, job).limits.volts == 26.0
    assert owner_layer(ledger, none, job).limits.volts == 24.0
    assert owner_layer(ledger, wider, job).limits == Limits(volts=30.0, amps=5.0)
    assert owner_layer(ledger, raised_since, job).limits.volts == 36.0


def test_a_second_unlock_is_a_second_entry_and_the_last_one_holds(
    ledger: Ledger, job: int, clock: VirtualClock
) -> None:
    first = unlock(ledger, SETTINGS, job, who=WHO, why=WHY)
    clock.advance(3600.0)
    lower = Settings(ceilings=Limits(volts=24.0), unlocked=Limits(volts=26.0))
    second = unlock(ledger, lower, job, who=WHO, why="less will do")
    assert unlocks(ledger, job) == [first, second]
    assert owner_layer(ledger, SETTINGS, job).limits.volts == 26.0


@pytest.mark.parametrize(
    ("who", "why", "words"),
    [
        (" \t ", WHY, "who unlocks"),
        (WHO, "", "the reason"),
        (WHO, "stuck", "one word"),
        ("x" * 81, WHY, "81 characters"),
        (WHO, "two words\x1b[2J", "can't be shown"),
    ],
)
def test_without_a_name_and_a_reason_nothing_is_unlocked(
    ledger: Ledger, job: int, who: str, why: str, words: str
) -> None:
    with pytest.raises(Refused, match=words):
        unlock(ledger, SETTINGS, job, who=who, why=why)
    assert unlocks(ledger) == []


def test_where_the_settings_allow_none_the_job_is_closed_or_not_there_nothing_is_unlocked(
    ledger: Ledger, job: int
) -> None:
    with pytest.raises(Refused, match=r"no \[unlocked\] ceilings"):
        unlock(ledger, Settings(ceilings=Limits(volts=24.0)), job, who=WHO, why=WHY)
    with pytest.raises(Refused, match="key 77"):
        unlock(ledger, SETTINGS, 77, who=WHO, why=WHY)
    ledger.close_job(job, Closing(cause="rust", work_done="", prognosis=""))
    with pytest.raises(Refused, match="closed"):
        unlock(ledger, SETTINGS, job, who=WHO, why=WHY)
    assert unlocks(ledger) == []


@pytest.mark.parametrize(
    ("column", "value", "words"),
    [("who", "  ", "who_not_blank"), ("why", "", "why_not_blank"), ("until_utc", "2025", "ends_after")],
)
def test_the_table_itself_takes_no_unlock_without_them(
    ledger: Ledger, job: int, column: str, value: str, words: str
) -> None:
    row = {"job_id": job, "utc": "2026", "until_utc": "2027", "who": "a", "why": "b c", "limits": "{}", column: value}
    with closing(sqlite3.connect(ledger.path)) as connection, pytest.raises(sqlite3.IntegrityError, match=words):
        connection.execute(f"INSERT INTO unlock ({', '.join(row)}) VALUES (?, ?, ?, ?, ?, ?)", list(row.values()))


@pytest.mark.parametrize("limits", ["", "{", '{"volts": -1.0}', '{"colour": 1.0}', '{"volts": "30"}'])
def test_an_unlock_that_can_not_be_read_is_damage(ledger: Ledger, job: int, limits: str) -> None:
    unlock(ledger, SETTINGS, job, who=WHO, why=WHY)
    with closing(sqlite3.connect(ledger.path, isolation_level=None)) as connection:
        connection.execute("UPDATE unlock SET limits = ?", (limits,))
    with pytest.raises(LedgerDamaged, match="unlock 1"):
        owner_layer(ledger, SETTINGS, job)


def test_what_a_terminal_would_obey_is_not_read_from_a_ledger(ledger: Ledger, job: int) -> None:
    unlock(ledger, SETTINGS, job, who=WHO, why=WHY)
    with closing(sqlite3.connect(ledger.path, isolation_level=None)) as connection:
        connection.execute("UPDATE unlock SET why = ?", ("two words\x1b[2J",))
    with pytest.raises(LedgerDamaged, match="unlock 1"):
        unlocks(ledger)


positive = st.none() | st.floats(min_value=0.01, max_value=1e4)
some_limits = st.builds(Limits, volts=positive, amps=positive, locked_s=positive)


@given(usual=some_limits, allowed=some_limits, given_then=some_limits, of_job=some_limits)
def test_no_unlock_passes_the_program_s_own_the_job_s_or_the_settings_ceilings(
    usual: Limits, allowed: Limits, given_then: Limits, of_job: Limits
) -> None:
    got = raised(usual, allowed, given_then)
    ceilings = intersect({Layer.OWNER: got, Layer.JOB: of_job})
    for name in ("volts", "amps", "locked_s"):
        value = getattr(ceilings, name).value
        assert value <= getattr(PROGRAM, name)
        if (bound := getattr(of_job, name)) is not None:
            assert value <= bound
        low, most = getattr(usual, name), getattr(allowed, name)
        if low is not None:
            assert value <= max(low, most or low)
