"""Command sets put together at random: valid, all different, none of those that come, and every habit among them."""

import pytest

from drivers.dialect import check, shipped, shipped_names, to_json
from drivers.identifying import gaps_of
from drivers.supply import UNUSABLE
from tests.drivers.contract import OF_ANY, hold, speaking
from tests.drivers.random_dialects import draw, several

EVERY = several(1, 50)


def test_fifty_are_valid_usable_all_different_and_none_of_them_is_shipped() -> None:
    for dialect in EVERY:
        assert check(dialect) is dialect
        assert not gaps_of(dialect) & UNUSABLE
    bodies = {to_json(one).replace(one.name, "") for one in EVERY}
    assert len(bodies) == len(EVERY)
    assert not bodies & {to_json(shipped(name)).replace(shipped(name).name, "") for name in shipped_names()}


def test_the_same_numbers_give_the_same_dialect() -> None:
    assert several(1, 50) == EVERY
    assert draw(1, 0) == EVERY[0]
    assert draw(2, 0) != draw(1, 0)


def test_all_that_supplies_differ_in_is_among_them() -> None:
    every = several(1, 200)
    links, volts = [one.link for one in every], [one.program.volts for one in every]
    assert {link.termination for link in links} == {"\n", "\r\n", "\r", ""}
    assert {link.compound for link in links} == {link.echo for link in links} == {True, False}
    assert {link.units_in_replies for link in links} == {link.one_client for link in links} == {True, False}
    assert any(link.gap_s for link in links)
    assert {one.outputs.select for one in every} == {"", "INST:NSEL {n}", "INST:SEL CH{n}"}
    for part in ("(@{n})", "CH{n}", "SOUR{n}:", "VSET{n}:"):
        assert any(part in unit for unit in volts), part
    assert any(one.program.both for one in every)
    assert {one.errors.form for one in every} == {"scpi", "number", "none"}
    for name in ("condition", "mode", "status", "over_volts", "over_amps", "watchdog", "sense", "ranges"):
        assert len({getattr(one, name) is None for one in every}) == 2, name


@pytest.mark.parametrize("number", range(0, 50, 5))
def test_a_supply_over_one_of_them_keeps_the_contract_of_any(number: int) -> None:
    dialect = EVERY[number]
    hold(speaking(dialect, output=min(2, dialect.outputs.count)), OF_ANY)
