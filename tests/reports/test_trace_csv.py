"""A trace as text that any program reads: exact, and the same in every locale."""

import csv
import io
import locale
import re
from pathlib import Path

import msgspec
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchlog.outcome import Outcome, RunResult
from benchlog.records import FLAG_CC, FLAG_CV, FLAG_ON, Run, RunKind, Trace
from benchlog.reports.trace_csv import HEADER, write_csv


def run_of(samples: int) -> Run:
    return Run(
        id=1,
        job=1,
        kind=RunKind.RECOVERY,
        started_utc="2026-11-25T10:00:00.000Z",
        duration_s=1.0,
        resource="",
        identity="=1+1",
        rated_volts=12.0,
        load_state="",
        sequence_name="@short",
        request="{}",
        ceilings="{}",
        program="",
        result=RunResult(outcome=Outcome.FREED, reason="=cmd"),
        complete=True,
        samples=samples,
    )


def trace_of(
    volts: list[float], amps: list[float] | None = None, flags: list[int] | None = None, sent: list[int] | None = None
) -> Trace:
    samples = len(volts)
    begun = np.array(sent if sent is not None else range(0, 104 * samples, 104), dtype=np.int64)
    return Trace(
        sent=begun,
        received=begun + 9,
        volts=np.array(volts, dtype=np.float64),
        amps=np.array(amps if amps is not None else [0.0] * samples, dtype=np.float64),
        set_volts=np.full(samples, 12.0),
        set_amps=np.full(samples, 0.5),
        flags=np.array(flags if flags is not None else [FLAG_ON | FLAG_CV] * samples, dtype=np.uint8),
    )


def text_of(trace: Trace) -> str:
    out = io.StringIO(newline="")
    write_csv(run_of(len(trace.sent)), trace, out)
    return out.getvalue()


def test_the_text_is_as_the_supply_said_it() -> None:
    trace = trace_of([1.25, 12.004], [0.5, 1.0], [FLAG_ON | FLAG_CC, 0])
    assert text_of(trace) == (
        "t_s,volts,amps,set_volts,set_amps,output_on,regulation\r\n"
        "0.00045,1.250,0.5,12,0.5,1,CC\r\n"
        "0.01085,12.004,1.0,12,0.5,0,unknown\r\n"
    )


def test_a_run_without_readings_is_a_header() -> None:
    assert text_of(trace_of([])) == ",".join(HEADER) + "\r\n"


def test_a_time_before_the_run_began_has_its_sign() -> None:
    trace = trace_of([0.0, 0.0], sent=[-14, 36_000_000])
    assert [line.split(",")[0] for line in text_of(trace).splitlines()[1:]] == ["-0.00095", "3600.00045"]


def test_what_is_no_number_is_an_empty_field_and_leaves_the_others_their_form() -> None:
    trace = trace_of([float("nan"), 1.25, float("inf"), float("-inf")])
    assert [line.split(",")[1] for line in text_of(trace).splitlines()[1:]] == ["", "1.25", "", ""]


def test_the_states_of_the_supply_are_words() -> None:
    flags = [0, FLAG_ON, FLAG_ON | FLAG_CV, FLAG_ON | FLAG_CC, FLAG_ON | FLAG_CC | 8, FLAG_CV]
    rows = list(csv.DictReader(io.StringIO(text_of(trace_of([0.0] * 6, flags=flags)), newline="")))
    assert [row["output_on"] for row in rows] == ["0", "1", "1", "1", "1", "0"]
    assert [row["regulation"] for row in rows] == ["unknown", "unknown", "CV", "CC", "CC", "CV"]


def test_a_trace_of_another_run_is_refused_before_a_word_is_written() -> None:
    out = io.StringIO()
    with pytest.raises(ValueError, match="not that of run 1"):
        write_csv(msgspec.structs.replace(run_of(3), samples=4), trace_of([0.0] * 3), out)
    assert out.getvalue() == ""


@settings(deadline=None)
@given(volts=st.lists(st.floats(width=64) | st.integers(-(10**6), 10**6).map(lambda n: n / 1000), max_size=20))
def test_every_field_is_a_number_that_reads_back_equal_and_never_a_formula(volts: list[float]) -> None:
    rows = list(csv.DictReader(io.StringIO(text_of(trace_of(volts)), newline="")))
    assert len(rows) == len(volts)
    number = re.compile(r"-?\d+(\.\d+)?(e[+-]\d+)?")
    for row, value in zip(rows, volts, strict=True):
        if np.isfinite(value):
            assert float(row["volts"]) == value
        else:
            assert row["volts"] == ""
        assert all(number.fullmatch(field) for name, field in row.items() if name != "regulation" and field)
        assert row["regulation"] in {"CC", "CV", "unknown"}


def test_another_locale_and_a_file_change_nothing(tmp_path: Path) -> None:
    trace = trace_of([1.5, 2.25])
    path = tmp_path / "trace.csv"
    before = locale.setlocale(locale.LC_NUMERIC)
    try:
        for name in ("de_DE.UTF-8", "C.UTF-8"):
            try:
                locale.setlocale(locale.LC_NUMERIC, name)
            except locale.Error:
                continue
            with path.open("w", encoding="ascii", newline="") as out:
                write_csv(run_of(2), trace, out)
            assert path.read_bytes().decode() == text_of(trace)
    finally:
        locale.setlocale(locale.LC_NUMERIC, before)
    assert path.read_bytes().count(b"\r\n") == 3
