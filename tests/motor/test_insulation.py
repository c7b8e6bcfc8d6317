"""Thermal classes and what a winding of a class may be brought to."""

import pytest

from benchlog.errors import Refused
from benchlog.motor.insulation import CLASS_C, MOST_C, UNKNOWN_CLASS, class_of, winding_ceiling_c
from benchlog.recovery.ceilings import CLASS_A


def test_the_classes_are_those_of_the_standard() -> None:
    # Source: IEC 60085:2007 table 1, as published.
    published = {"Y": 90, "A": 105, "E": 120, "B": 130, "F": 155, "H": 180, "N": 200, "R": 220, "250": 250}
    assert published == CLASS_C


@pytest.mark.parametrize(
    # Class less 15 K of hot spot; at most 140 °C: magnet, adhesive, plastic (common practice, no source).
    ("thermal_class", "ceiling_c"),
    [("Y", 75), ("A", 90), ("E", 105), ("B", 115), ("F", 140), ("H", 140), ("250", 140), (" b ", 115)],
)
def test_a_class_gives_its_temperature_less_the_margin_and_never_more_than_the_rest_bears(
    thermal_class: str, ceiling_c: float
) -> None:
    assert winding_ceiling_c(thermal_class) == ceiling_c


def test_an_unknown_class_is_class_a_also_where_the_guard_is_told_nothing() -> None:
    assert UNKNOWN_CLASS == "A"
    assert winding_ceiling_c() == winding_ceiling_c("A") == CLASS_A.winding_c


def test_a_smaller_margin_never_passes_what_the_rest_of_the_motor_bears() -> None:
    assert winding_ceiling_c("A", 5.0) == 100.0
    assert max(winding_ceiling_c(name, 5.0) for name in CLASS_C) == MOST_C


@pytest.mark.parametrize("margin_k", [4.9, 0.0, -10.0, float("nan")])
def test_a_margin_below_what_hot_spots_have_is_an_error(margin_k: float) -> None:
    with pytest.raises(ValueError, match="hot spot"):
        winding_ceiling_c("F", margin_k)


@pytest.mark.parametrize("unknown", ["", "C", "155", "AA", "A" * 500])
def test_what_is_no_class_is_refused_and_the_text_kept_short(unknown: str) -> None:
    with pytest.raises(Refused) as refused:
        winding_ceiling_c(unknown)
    assert len(str(refused.value)) < 120


@pytest.mark.parametrize(("ceiling_c", "name"), [(75.0, "Y"), (90.0, "A"), (140.0, "F"), (88.0, "A"), (None, "A")])
def test_a_ceiling_is_told_back_as_the_lowest_class_that_has_it(ceiling_c: float | None, name: str) -> None:
    assert class_of(ceiling_c) == name
