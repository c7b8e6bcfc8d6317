"""Limits from known good ones: kept as they were worked out, never changed."""

import math
from collections.abc import Iterator
from pathlib import Path

import msgspec
import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import Refused
from benchlog.ledger.known_good import keep_limits, kept_limits, limits_for
from benchlog.ledger.lots import add_unit
from benchlog.ledger.store import Ledger
from benchlog.motor.limits import Band, CurveBand
from benchlog.records import Item
from tests.ledger.benches import BILGE_PUMP, FANS, a_lot, file_start_up, fresh_ledger, limits_like


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with fresh_ledger(tmp_path, VirtualClock()) as ledger:
        yield ledger


@pytest.fixture
def runs(ledger: Ledger, tmp_path: Path) -> tuple[int, ...]:
    lot = a_lot(ledger)
    return tuple(
        file_start_up(ledger, tmp_path, serial, job=lot.job.id, unit=add_unit(ledger, lot, serial).id)
        for serial in ("CF-1", "CF-2")
    )


def test_limits_are_read_back_number_for_number_and_say_of_what_they_are(ledger: Ledger, runs: tuple[int, ...]) -> None:
    third = 1 / 3
    curve = CurveBand(
        t_s=(0.0, 0.02),
        low_amps=(1.0, third),
        high_amps=(2.0, 1.0),
        mean_amps=(1.5, 2 * third),
        n=5,
        factor=5.079,
        claim="95 % of units at each instant",
    )
    open_below = Band(low=None, high=0.1 + 0.2, mean=0.2, spread=third, n=5, factor=4.2)
    limits = limits_like(runs)
    limits = msgspec.structs.replace(limits, curve=curve, bands=limits.bands | {"ripple_amps": open_below})
    key = keep_limits(ledger, limits, " day bench ")
    kept = kept_limits(ledger, key)
    assert kept.limits == limits
    assert (kept.id, kept.who, kept.utc) == (key, "day bench", "2026-01-01T00:00:00.000Z")
    assert kept.item == FANS


def test_the_same_limits_again_are_others_and_the_first_stay(ledger: Ledger, runs: tuple[int, ...]) -> None:
    first = keep_limits(ledger, limits_like(runs))
    second = keep_limits(ledger, msgspec.structs.replace(limits_like(runs), n=6))
    assert second != first
    assert kept_limits(ledger, first).limits.n == 5
    assert [kept.id for kept in limits_for(ledger, "quick look", 1, FANS.model)] == [second, first]


def test_limits_are_found_by_test_version_and_model(ledger: Ledger, runs: tuple[int, ...]) -> None:
    first, second = keep_limits(ledger, limits_like(runs)), keep_limits(ledger, limits_like(runs, version=2))
    assert [kept.id for kept in limits_for(ledger)] == [second, first]
    assert [kept.id for kept in limits_for(ledger, "quick look", 2)] == [second]
    assert [kept.id for kept in limits_for(ledger, "quick look", 1, "12 V, 150 mm")] == [first]
    assert limits_for(ledger, "quick look", 1, "24 V, 150 mm") == []
    assert limits_for(ledger, "another") == []


def test_limits_that_can_not_be_what_they_say_are_refused_and_nothing_is_kept(
    ledger: Ledger, runs: tuple[int, ...], tmp_path: Path
) -> None:
    good = limits_like(runs)
    pumps = a_lot(ledger, name="pumps", item=Item(kind="bilge pump", model=BILGE_PUMP.model))
    pump = file_start_up(ledger, tmp_path, "p", job=pumps.job.id)
    nothing = Band(low=math.nan, high=2.2, mean=2.0, spread=0.04, n=5, factor=5.079)
    for wrong, why in (
        (limits_like(()), "none is named"),
        (limits_like((*runs, 4711)), "no run 4711"),
        (limits_like((*runs, pump)), "different things.*bilge pump 12 V; cabin fan 12 V, 150 mm"),
        (msgspec.structs.replace(good, bands={"peak_amps": nothing}), "is none"),
    ):
        with pytest.raises(Refused, match=why):
            keep_limits(ledger, wrong)
    assert limits_for(ledger) == []
    with pytest.raises(Refused, match="no limits with the key 1"):
        kept_limits(ledger, 1)
