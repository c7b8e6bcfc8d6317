"""Captured starts as files, read back by others' readers exactly as they were: csvw from PyPI, NumPy, h5py."""

import io
import json
import sys
from pathlib import Path

import csvw  # type: ignore[import-untyped]
import numpy as np
import pytest

from benchlog.errors import Refused
from benchlog.reports.csv_forms import spreadsheet
from benchlog.reports.csvw import SUFFIX
from benchlog.reports.start_files import ABOUT, arrays_of, csv_files, hdf5, npz
from benchlog.reports.start_tables import Table, Taken, tables_of
from tests.reports.starts import captured, limits


@pytest.fixture(scope="module")
def tables() -> tuple[Table, ...]:
    taken = [
        Taken(serial='CF-"201",\nleft', captured=captured(1, dense=True)),
        Taken(serial="=1+1", captured=captured(2, run_up=None)),
    ]
    return tables_of(taken, limits())


def test_a_public_reader_finds_every_table_as_it_was(tables: tuple[Table, ...], tmp_path: Path) -> None:
    files = csv_files(tables, "fans.csv")
    tables_there = ["fans.csv", "fans-figures.csv", "fans-limits.csv", "fans-band.csv"]
    assert sorted(files) == sorted([*tables_there, *(name + SUFFIX for name in tables_there)])
    for name, data in files.items():
        (tmp_path / name).write_bytes(data)
    for name, table in zip(tables_there, tables, strict=True):
        found = csvw.CSVW(str(tmp_path / f"{name}{SUFFIX}"), validate=True)
        assert found.is_valid
        assert found.tables[0].common_props["dc:title"] == table.title
        rows = list(found.tables[0])
        assert len(rows) == len(table.values[0])
        for column, values in zip(table.columns, table.values, strict=True):
            expected = [None if value == "" else value for value in values]
            assert [row[column.name] for row in rows] == expected, column.name


def test_the_spreadsheet_form_is_described_by_nothing_and_runs_nothing(tables: tuple[Table, ...]) -> None:
    files = csv_files(tables, "fans.csv", spreadsheet("de_DE"))
    assert sorted(files) == ["fans-band.csv", "fans-figures.csv", "fans-limits.csv", "fans.csv"]
    text = files["fans.csv"].decode("utf-8-sig")
    assert text.startswith("Serial;Run;Start;")
    assert "'=1+1;2;1;0;" in text
    assert ";-0,09" in text


def test_numpy_reads_back_every_column_without_a_pickle(tables: tuple[Table, ...]) -> None:
    with np.load(io.BytesIO(npz(tables)), allow_pickle=False) as read:
        for table in tables:
            for name, values in arrays_of(table).items():
                assert np.array_equal(read[f"{table.name}/{name}"], values, equal_nan=values.dtype.kind == "f")
        assert read["curves/amps"].dtype == np.float64
        assert np.isnan(read["figures/run_up_s"][3:]).all()
        assert read["figures/run_up_s_why"][3] == "not over by the end"
        about = json.loads(str(read[ABOUT]))
    assert about["figures"]["columns"]["energy_j"] == {"title": "Energy", "unit": "J", "datatype": "double"}
    assert set(about) == {"curves", "figures", "limits", "band"}


def test_hdf5_reads_back_every_column_with_its_unit(tables: tuple[Table, ...]) -> None:
    h5py = pytest.importorskip("h5py", reason="the extra [hdf5] is not installed")
    with h5py.File(io.BytesIO(hdf5(tables)), "r") as read:
        for table in tables:
            assert read[table.name].attrs["title"] == table.title
            assert list(read[table.name]) == [column.name for column in table.columns]
            for column, values in zip(table.columns, arrays_of(table).values(), strict=True):
                there = read[table.name][column.name]
                found = there.asstr()[:] if values.dtype.kind == "U" else there[:]
                assert np.array_equal(found, values, equal_nan=values.dtype.kind == "f"), column.name
                assert there.attrs["unit"] == column.unit
        assert json.loads(read.attrs[ABOUT])["curves"]["columns"]["t_s"]["unit"] == "s"


def test_without_h5py_it_is_said_what_to_install(tables: tuple[Table, ...], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "h5py", None)
    with pytest.raises(Refused, match=r'pip install "benchlog\[hdf5\]"'):
        hdf5(tables)


def test_the_same_tables_are_the_same_bytes(tables: tuple[Table, ...]) -> None:
    assert npz(tables) == npz(tables)
    assert csv_files(tables, "fans.csv") == csv_files(tables, "fans.csv")
