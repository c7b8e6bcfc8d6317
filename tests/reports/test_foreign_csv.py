"""Curves from elsewhere: every reasonable form gives the numbers that were written, the rest a sentence and a line."""

import contextlib
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchlog.errors import Refused
from benchlog.reports import foreign_csv
from benchlog.reports.foreign_csv import Choice, Kind, Pick, preview, read

TWO = Choice(time=Pick(column=0), amps=Pick(column=1))
THREE = Choice(time=Pick(column=0), volts=Pick(column=1), amps=Pick(column=2))
NUMBERS = [(-0.001, 0.25, 0.0), (0.0, 12.5, 1.25), (0.001, 12.25, -0.5), (0.0025, 12.0, 0.75)]


def table(separator: str, mark: str, head: str = "", quote: str = "", end: str = "\n") -> bytes:
    lines = [separator.join(f"{quote}{one!r}{quote}".replace(".", mark) for one in row) for row in NUMBERS]
    return (head + end.join(lines) + end).encode()


@pytest.mark.parametrize(
    ("separator", "mark", "quote"),
    [
        (s, m, q)
        for s in foreign_csv.SEPARATORS
        for m in ".,"
        for q in ("", '"')
        if (s != " " or not q) and (s != m or q)
    ],
)
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_separator_and_decimal_mark_are_found_out(separator: str, mark: str, quote: str, end: str) -> None:
    data = table(separator, mark, f"taken at the quay{end}t{separator}u{separator}i{end}", quote, end)
    curve = read(data, THREE)
    assert curve.volts is not None
    assert curve.amps is not None
    assert list(zip(curve.t_s.tolist(), curve.volts.tolist(), curve.amps.tolist(), strict=True)) == NUMBERS
    assert preview(data).layout.first_line == 3


@given(
    st.lists(st.floats(-1e9, 1e9), min_size=2, max_size=20, unique=True),
    st.sampled_from([(";", ","), (";", "."), (",", "."), ("\t", ","), ("\t", "."), (" ", "."), (" ", ","), ("|", ",")]),
    st.sampled_from(["{!r}", "{:+.3f}", "{:.6e}", "{:.4E}", " {:.2f}"]),
)
def test_any_way_to_write_numbers_gives_them_back(
    values: list[float], marks: tuple[str, str], form: Callable[..., str] | str
) -> None:
    separator, mark = marks
    assert isinstance(form, str)
    written = [form.format(value) for value in values]
    lines = [f"{at},0{separator}{one}".replace(",", ".").replace(".", mark) for at, one in enumerate(written)]
    if separator == ",":
        lines = [f"{at}.0,{one}" for at, one in enumerate(written)]
    curve = read("\n".join(lines).encode(), TWO, separator=separator, decimal_mark=mark)
    assert curve.amps is not None
    assert curve.amps.tolist() == [float(one) for one in written]


@given(st.text(st.sampled_from('0123456789.,;-+eE \t\n"_|aV'), max_size=80) | st.binary(max_size=80).map(repr))
def test_any_text_is_a_curve_that_increases_or_is_refused(text: str) -> None:
    with contextlib.suppress(Refused):
        curve = read(text.encode(), TWO)
        assert curve.amps is not None
        assert len(curve.t_s) == len(curve.amps) >= 2
        assert (np.diff(curve.t_s) > 0).all()
        assert np.isfinite(curve.amps).all()


def test_units_are_taken_from_names_or_from_the_line_below_and_scale_the_numbers() -> None:
    for head in ("time;lead;shunt\nms;V;mA\n", "time (ms);lead [V];shunt mA\n", "Time/ms;lead_V;shunt (mA)\n"):
        data = table(";", ",", head)
        seen = preview(data)
        assert [column.unit for column in seen.columns] == ["ms", "V", "mA"]
        assert [column.kind for column in seen.columns] == [Kind.TIME, Kind.VOLTS, Kind.AMPS]
        assert seen.columns[2].values == (0.0, 1.25, -0.5, 0.75)
        curve = read(data, THREE)
        assert curve.t_s == pytest.approx([-1e-6, 0.0, 1e-6, 2.5e-6], abs=1e-15)
        assert curve.amps == pytest.approx([0.0, 1.25e-3, -0.5e-3, 0.75e-3])


def test_micro_signs_of_old_files_are_read() -> None:
    head = "t (µs);u (µV);i\n".encode("latin-1")
    assert [column.unit for column in preview(head + table(";", ",")).columns] == ["us", "uV", ""]


def test_a_guess_says_why_and_none_is_made_up() -> None:
    first, second, third = preview(table(",", ".", "")).columns
    assert (first.kind, second.kind, third.kind) == (Kind.TIME, None, None)
    assert "increases" in first.why
    assert second.why == "nothing says what it is"
    named = preview(table(",", ".", "Current,time,x\n")).columns
    assert (named[0].kind, named[1].kind) == (Kind.AMPS, Kind.TIME)
    assert "no unit is named, so A" in named[0].why
    assert [column.kind for column in preview(table(",", ".", "s,Ch A,Channel_B (V)\n")).columns[1:]] == [
        None,
        Kind.VOLTS,
    ]


def test_a_current_probe_and_a_divider_are_scaled() -> None:
    data = table(",", ".", "s,mV,V\n")
    choice = Choice(time=Pick(column=0), volts=Pick(column=1), amps=Pick(column=2), volts_scale=10, amps_per_volt=10)
    curve = read(data, choice)
    assert curve.volts == pytest.approx([2.5e-3, 0.125, 0.1225, 0.12])
    assert curve.amps == pytest.approx([0.0, 12.5, -5.0, 7.5])  # 100 mV/A is 10 A/V
    again = read(data, Choice(interval_s=0.5, volts=Pick(column=1, unit="V")))
    assert again.t_s.tolist() == [0.0, 0.5, 1.0, 1.5]
    assert again.amps is None
    assert again.volts == pytest.approx([0.25, 12.5, 12.25, 12.0])


@pytest.mark.parametrize(
    ("choice", "words"),
    [
        (Choice(amps=Pick(column=2)), "one of the two"),
        (Choice(time=Pick(column=0), interval_s=1.0, amps=Pick(column=2)), "one of the two"),
        (Choice(time=Pick(column=0)), "volts or of amps"),
        (Choice(interval_s=0.0, amps=Pick(column=2)), "interval can't be 0"),
        (Choice(time=Pick(column=0), amps=Pick(column=3)), "no column 4; it has 3"),
        (Choice(time=Pick(column=1), amps=Pick(column=2)), "column 2 is in mV, which is no unit of time"),
        (Choice(time=Pick(column=0), amps=Pick(column=1)), "amps per volt are needed"),
        (Choice(time=Pick(column=0), amps=Pick(column=2), amps_per_volt=10), "column 3 is in A, which is no unit of"),
        (Choice(time=Pick(column=0), volts=Pick(column=1), amps_per_volt=10), "no column of amps"),
        (Choice(time=Pick(column=0, unit="h"), amps=Pick(column=2)), '"h" is not a unit'),
    ],
)
def test_a_choice_that_cannot_be_is_refused(choice: Choice, words: str) -> None:
    with pytest.raises(Refused, match=words):
        read(table(",", ".", "s,mV,A\n"), choice)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "empty"),
        ("0,1\x00\n1,2\n", "NUL"),
        ("name,place\npump,quay\n", "no two lines of numbers"),
        ("0.0,1\n1.0,2\n2.0,\n3.0,4\n", "line 3: column 2 is blank"),
        ("0.0,1\n1.0,9.9E37\n2.0,2\n", "line 2: column 2 is blank or no measurement"),
        ("0.0,1\n1.0,2\n\n2.0,2\n3.0,2\n4.0,2\n", "line 3: column 1 is blank"),
        ("0.0,1\n1.0,off\n2.0,2\n3.0,3\n", 'line 2: "off" in column 2 is not a number'),
        ("0.0,1\n1.0,nan\n2.0,2\n3.0,3\n", 'line 2: "nan" in column 2'),
        ("0.0,1\n1.0,1_0\n2.0,2\n3.0,3\n", 'line 2: "1_0" in column 2'),
        ("0.0,1\n1.0,2\n1.0,3\n", "line 3: its time is not after"),
        ("0.0,1\n1.0,2\n2.0,3,4\n", "line 3: has 3 cells, the others 2"),
        ('0.0,1\n1.0,2\n"2.0,3\n3.0,4\n', "quote is not closed"),
        ("0,0;1,5\n1,0;2.5\n2,0;3,5\n3,0;4,5\n", 'line 2: "2.5" in column 2 has another decimal mark'),
        ("0.5;1.5\n1,0;2,5\n2,0;3,5\n3,0;4,5\n", 'line 1: "0.5" in column 1 has another decimal mark'),
        ("0,5;1.5\n1,0;2.5\n2,0;3.5\n", "decimal marks are mixed"),
        ("0,5\n1,5\n2,5\n", "read in two ways"),
        ("0.0,1\n" + "1" * 5000 + ",2\n", "line 2: is longer than"),
    ],
)
def test_what_is_in_doubt_is_refused_in_a_sentence(text: str, words: str) -> None:
    with pytest.raises(Refused, match=words):
        read(text.encode(), TWO)


def test_two_ways_to_read_it_are_settled_by_saying_which() -> None:
    curve = read(b"0,5\n1,5\n2,5\n", Choice(interval_s=1.0, amps=Pick(column=0)), separator=";", decimal_mark=",")
    assert curve.amps is not None
    assert curve.amps.tolist() == [0.5, 1.5, 2.5]
    assert preview(b"0,5\n1,5\n2,5\n", separator=",").layout.columns == 2
    with pytest.raises(Refused, match="must be one of"):
        preview(b"0,5\n1,5\n", separator="x")


def test_blanks_at_both_ends_are_left_out_and_other_columns_may_have_any() -> None:
    curve = read(b"t,i,n\n0,,\n1,5,\n2,6,9\n3,7,\n4,,\n\n", TWO)
    assert curve.t_s.tolist() == [1.0, 2.0, 3.0]
    assert curve.amps is not None
    assert curve.amps.tolist() == [5.0, 6.0, 7.0]


def test_faults_far_down_are_told_with_their_line(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(foreign_csv, "_CHUNK", 100)
    lines = [f"{at}.0,{at % 7}" for at in range(1000)]
    lines[777] = "777.0,?"
    with pytest.raises(Refused, match='line 779: "\\?" in column 2'):
        read("\n".join(["t,i", *lines]).encode(), TWO)


def test_what_is_too_large_is_refused_before_it_is_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "long.csv"
    path.write_bytes(b"0,1\n" * 8_000_001)
    with pytest.raises(Refused, match=r"long\.csv: 32\.0 MB are more"):
        read(path, TWO)
    monkeypatch.setattr(foreign_csv, "MOST_LINES", 3)
    with pytest.raises(Refused, match="more than 3 lines"):
        read(table(",", "."), TWO)


def test_a_name_in_the_file_is_nothing_that_a_terminal_obeys() -> None:
    assert preview(b"t,\x1b[2J\n0,1\n1,2\n").columns[1].name == "?[2J"
