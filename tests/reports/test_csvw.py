"""The description beside an export, read by a public CSVW reader: csvw from PyPI."""

import json
from pathlib import Path

import csvw  # type: ignore[import-untyped]
import msgspec
import numpy as np
import pytest

from benchlog.records import FLAG_CC, FLAG_ON, Item, Job, JobState, Motor
from benchlog.reports import jobs_csv, trace_csv
from benchlog.reports.csvw import SUFFIX, UNIT_CODES, description
from tests.reports.test_trace_csv import run_of, trace_of

JOB = Job(
    id=3,
    number=1,
    tag="BP-0001",
    opened_utc="2026-11-25T10:00:00.000Z",
    closed_utc=None,
    state=JobState.OPEN,
    item=Item(kind="bilge pump", model='12", old', serial="=1+1"),
    motor=Motor(rated_volts=12.0),
    complaint='hums,\r\nthen "nothing"',
    load_state="uncoupled",
    last_outcome="freed",
    runs=2,
)


def test_a_public_reader_finds_the_trace_as_it_was(tmp_path: Path) -> None:
    path = tmp_path / "run.csv"
    trace = trace_of([1.25, float("nan"), 12.004], flags=[FLAG_ON | FLAG_CC, 0, 0])
    with path.open("w", encoding="utf-8", newline="") as out:
        trace_csv.write_csv(run_of(3), trace, out)
    Path(f"{path}{SUFFIX}").write_text(description(trace_csv.COLUMNS, url=path.name, title="run 1"), encoding="utf-8")
    found = csvw.CSVW(f"{path}{SUFFIX}", validate=True)
    assert found.is_valid
    rows = list(found.tables[0])
    assert np.allclose([row["t_s"] for row in rows], trace.t_s, atol=1e-9)
    assert [row["volts"] for row in rows] == [1.25, None, 12.004]
    assert [row["output_on"] for row in rows] == [True, False, False]
    assert [row["regulation"] for row in rows] == ["CC", "unknown", "unknown"]
    units = {c.name: c.common_props.get("schema:unitCode") for c in found.tables[0].tableSchema.columns}
    assert (units["t_s"], units["volts"], units["amps"], units["regulation"]) == ("SEC", "VLT", "AMP", None)


def test_a_public_reader_finds_the_jobs_as_they_were(tmp_path: Path) -> None:
    path = tmp_path / "jobs.csv"
    other = msgspec.structs.replace(JOB, number=2, closed_utc="2026-11-26T10:00:00.000Z", state=JobState.CLOSED)
    with path.open("w", encoding="utf-8", newline="") as out:
        jobs_csv.write_jobs([other, JOB], out)
    text = description(jobs_csv.COLUMNS, url=path.name, title="jobs", key=jobs_csv.KEY)
    Path(f"{path}{SUFFIX}").write_text(text, encoding="utf-8")
    found = csvw.CSVW(f"{path}{SUFFIX}", validate=True)
    assert found.is_valid
    found.tables[0].check_primary_key()
    closed, opened = list(found.tables[0])
    assert (opened["number"], opened["serial"], opened["model"]) == (1, "=1+1", '12", old')
    assert opened["complaint"] == JOB.complaint
    assert (opened["closed_utc"], opened["rated_volts"], opened["runs"]) == (None, 12.0, 2)
    assert closed["closed_utc"].isoformat() == "2026-11-26T10:00:00+00:00"


@pytest.mark.filterwarnings("default")  # the reader gathers its own warnings into its verdict
def test_the_public_reader_sees_a_table_that_is_not_as_described(tmp_path: Path) -> None:
    path = tmp_path / "run.csv"
    path.write_text("t_s,volts\r\n0.1,none\r\n", encoding="utf-8", newline="")
    Path(f"{path}{SUFFIX}").write_text(description(trace_csv.COLUMNS[:2], url=path.name, title=""), encoding="utf-8")
    assert not csvw.CSVW(f"{path}{SUFFIX}", validate=True).is_valid


def test_a_description_is_of_the_standard_and_every_unit_has_a_code() -> None:
    # W3C Recommendation "Metadata Vocabulary for Tabular Data", 2015: context, table schema, primary key (from memory).
    told = json.loads(description(jobs_csv.COLUMNS, url="jobs.csv", title="jobs", key=jobs_csv.KEY))
    assert told["@context"][0] == "http://www.w3.org/ns/csvw"
    assert told["tableSchema"]["primaryKey"] == ["number"]
    assert [c["name"] for c in told["tableSchema"]["columns"]] == [c.name for c in jobs_csv.COLUMNS]
    assert {c.unit for c in (*jobs_csv.COLUMNS, *trace_csv.COLUMNS)} - {""} <= set(UNIT_CODES)
