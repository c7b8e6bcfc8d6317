"""Captured starts as tables: every reading, every figure with its interval or its reason, limits as they are."""

import pytest

from benchlog.motor.start_figures import FIGURES
from benchlog.reports.start_tables import Table, Taken, band_table, curves_table, figures_table, limits_table, tables_of
from tests.reports.starts import captured, limits

TAKEN = [Taken(serial="CF-201", captured=captured(1, dense=True)), Taken(serial="", captured=captured(2, run_up=None))]


def column(table: Table, name: str) -> list[object]:
    return list(table.values[[one.name for one in table.columns].index(name)])


def test_every_reading_of_every_start_is_a_row_and_the_supplys_own_are_marked() -> None:
    table = curves_table(TAKEN)
    curves = [curve for one in TAKEN for curve in (*one.captured.curves, *one.captured.dense_curves)]
    assert len(curves) == 7
    assert column(table, "amps") == [value for curve in curves for value in curve.amps.tolist()]
    assert column(table, "t_s") == [value for curve in curves for value in curve.t_s.tolist()]
    assert sum(bool(one) for one in column(table, "dense")) == len(curves[3].t_s)
    assert set(column(table, "serial")) == {"CF-201", ""}
    assert set(zip(column(table, "run"), column(table, "start"), strict=True)) == {
        (r, s) for r in (1, 2) for s in (1, 2, 3)
    }


def test_a_start_is_a_row_with_every_figure_its_interval_and_its_pace() -> None:
    table = figures_table(TAKEN)
    told = [figures for one in TAKEN for figures in one.captured.figures]
    for kind in FIGURES:
        for suffix, of in (("", "value"), ("_low", "low"), ("_high", "high")):
            expected = [getattr(one.values[kind.name], of) if kind.name in one.values else None for one in told]
            assert column(table, kind.name + suffix) == expected
    assert column(table, "interval_s") == [0.02] * 6
    assert column(table, "trigger_s") == [3.0, 7.0, 11.0] * 2
    assert set(column(table, "turning")) == {"turning"}


def test_a_figure_that_is_not_told_has_its_reason_and_no_number() -> None:
    table = figures_table(TAKEN)
    assert column(table, "run_up_s")[3:] == [None] * 3
    assert column(table, "run_up_s_why") == [None] * 3 + ["not over by the end"] * 3


def test_limits_are_a_row_a_figure_and_their_curve_a_row_a_point() -> None:
    by = limits()
    table, band = limits_table(by), band_table(by)
    assert column(table, "figure") == [kind.name for kind in FIGURES]
    assert column(table, "low") == [by.bands[kind.name].low for kind in FIGURES]
    assert column(table, "n") == [8] * 5
    assert "95 % coverage at 95 % confidence" in table.title
    assert by.curve is not None
    assert column(band, "high_amps") == list(by.curve.high_amps)
    assert by.curve.claim in band.title


def test_without_limits_or_their_curve_there_are_no_such_tables() -> None:
    from msgspec.structs import replace

    by = replace(limits(), curve=None)
    assert [table.name for table in tables_of(TAKEN)] == ["curves", "figures"]
    assert [table.name for table in tables_of(TAKEN, by)] == ["curves", "figures", "limits"]
    with pytest.raises(ValueError, match="no curve"):
        band_table(by)
