"""Starts over each other: named at their ends, legible without colour, within the paper, the same as SVG and PNG."""

import io
from dataclasses import replace
from itertools import pairwise
from xml.etree import ElementTree

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from benchlog.motor.overlay import Curve, overlay
from benchlog.reports.drawing import INK, Boxes, Drawing, Line, Words, svg
from benchlog.reports.sheet_pdf import drawing_png
from benchlog.reports.start_picture import BAND, LEFT, OTHERS, PANE, PICKED, RIGHT, TOP, WIDTH, draw_starts, spread_out
from tests.reports.starts import curve, limits


def lines(drawing: Drawing, ink: str) -> list[Line]:
    return [mark for mark in drawing.marks if isinstance(mark, Line) and mark.ink == ink]


def words(drawing: Drawing) -> list[str]:
    return [mark.text for mark in drawing.marks if isinstance(mark, Words)]


@pytest.fixture(scope="module")
def whole() -> Drawing:
    curves = [curve(k) for k in range(1, 6)]
    slow = [curve(9, steady=0.5, tau=0.3, name="CF-205"), curve(9, steady=0.45, tau=0.2, name="CF-208")]
    return draw_starts([*curves, *slow], mean=overlay([*curves, *slow]), band=limits().curve, picked=slow)


def test_all_are_grey_the_picked_are_dashed_each_its_own_way_and_named(whole: Drawing) -> None:
    assert len(lines(whole, OTHERS)) == 7
    assert [line.dash for line in lines(whole, PICKED)] == [(), (2.2, 0.9)]
    said = words(whole)
    assert {"CF-205", "CF-208", "mean of 7", "limit, high", "limit, low", "trigger"} <= set(said)
    assert "since the trigger; current as read back" in said
    assert "7 starts" in whole.told
    assert "8 known good units" in whole.told
    assert "picked out: CF-205, CF-208" in whole.told


def test_the_first_picked_shows_each_of_its_readings(whole: Drawing) -> None:
    dots = [mark for mark in whole.marks if isinstance(mark, Boxes) and mark.ink == PICKED]
    assert len(dots) == 1
    assert len(dots[0].boxes) == len(curve(9).t_s)


def test_the_band_lies_under_the_starts_and_they_under_what_is_named(whole: Drawing) -> None:
    inks = [mark.ink for mark in whole.marks]
    assert inks.index(BAND) < inks.index(OTHERS) < inks.index(PICKED)


def test_the_trigger_is_at_no_seconds_and_every_line_within_the_pane(whole: Drawing) -> None:
    trigger = next(line for line in lines(whole, INK) if line.dash == (0.6, 0.6))
    zero = next(
        mark for mark in whole.marks if isinstance(mark, Words) and mark.text in ("0", "−0") and mark.anchor == "middle"
    )
    assert trigger.points[0][0] == pytest.approx(zero.at[0])
    for line in (*lines(whole, OTHERS), *lines(whole, PICKED)):
        assert all(LEFT - 1e-6 <= x <= WIDTH - RIGHT + 1e-6 for x, _ in line.points)
        assert all(TOP - 1e-6 <= y <= TOP + PANE + 1e-6 for _, y in line.points)


def test_curves_are_drawn_where_the_overlay_moved_them() -> None:
    curves = [curve(1), curve(2)]
    plain, mean = draw_starts(curves), overlay(curves)
    late = draw_starts(curves, mean=replace(mean, offsets_s=np.array([0.0, 0.1])))
    first, second = lines(plain, OTHERS), lines(late, OTHERS)
    assert second[1].points[20][0] > first[1].points[20][0] + 1.0


def test_a_mean_of_some_ends_where_the_first_of_them_ends_and_the_others_stay_at_their_trigger() -> None:
    long, other = curve(1), curve(2)
    short = replace(curve(3), t_s=curve(3).t_s[:40], volts=curve(3).volts[:40], amps=curve(3).amps[:40])
    drawing = draw_starts([long, short, other], mean=overlay([long, short]))
    assert "mean of 2" in words(drawing)
    assert "with the mean of 2 of them" in drawing.told
    mean = next(line for line in lines(drawing, INK) if line.width == 0.55)
    greys = lines(drawing, OTHERS)
    assert mean.points[-1][0] == pytest.approx(greys[1].points[-1][0], abs=3.0)
    assert greys[2].points == lines(draw_starts([other, long]), OTHERS)[0].points


@given(st.lists(st.floats(0, 80), max_size=12))
def test_labels_keep_their_order_and_do_not_touch(wanted: list[float]) -> None:
    places = spread_out(sorted(wanted), 3.6, 5.0, 81.0)
    assert all(b - a >= 3.6 - 1e-9 for a, b in pairwise(places))
    assert all(place >= 5.0 - 1e-9 for place in places)
    assert all(place <= 81.0 + 1e-9 for place in places)


def test_hundreds_of_starts_stay_a_picture_of_bounded_size_and_keep_their_peaks() -> None:
    t_s = np.linspace(-0.1, 1.5, 2000)
    amps = np.where(t_s > 0, 0.3, 0.0)
    amps[700] = 1.9
    many = [Curve(name="", run=1, number=n, t_s=t_s, volts=t_s, amps=amps, window_s=0.02) for n in range(1, 501)]
    drawing = draw_starts(many)
    assert sum(len(line.points) for line in lines(drawing, OTHERS)) <= 130_000
    tops = {round(min(y for _, y in line.points), 3) for line in lines(drawing, OTHERS)}
    assert len(tops) == 1
    assert tops.pop() == pytest.approx(TOP + PANE * (2.0 - 1.9) / 2.0, abs=0.01)


def test_as_svg_it_is_one_element_that_asks_for_nothing_outside(whole: Drawing) -> None:
    text = svg(whole)
    root = ElementTree.fromstring(text)
    assert root.attrib["aria-label"] == whole.told
    assert {one.tag.rpartition("}")[2] for one in root.iter()} == {"svg", "polyline", "path", "text"}
    assert "href" not in text


def test_as_png_it_is_the_same_picture_at_its_size(whole: Drawing) -> None:
    with Image.open(io.BytesIO(drawing_png(whole, 5.0))) as image:
        assert image.size == (round(whole.width * 5), round(whole.height * 5))
        assert image.text["Description"] == whole.told  # type: ignore[attr-defined]
        pixels = np.asarray(image.convert("RGB")).reshape(-1, 3)
    assert (pixels[0] == 255).all()
    orange = (abs(pixels.astype(int) - [0xD5, 0x5E, 0x00]).max(axis=1) < 30).sum()
    assert orange > 500


def test_nothing_to_draw_is_said() -> None:
    none = replace(curve(1), t_s=np.empty(0), volts=np.empty(0), amps=np.empty(0))
    lost = replace(curve(1), amps=np.full(55, np.nan))
    for curves in ([], [none], [lost]):
        with pytest.raises(ValueError, match="no start to draw"):
            draw_starts(curves)


def test_readings_that_are_no_numbers_are_left_out_and_the_rest_is_drawn() -> None:
    amps = curve(1).amps.copy()
    amps[10:14] = np.nan
    drawing = draw_starts([replace(curve(1), amps=amps), replace(curve(1), t_s=np.empty(0), amps=np.empty(0))])
    drawn = [line for line in lines(drawing, OTHERS) if line.points]
    assert [len(line.points) for line in drawn] == [51]
    assert "nan" not in svg(drawing)
