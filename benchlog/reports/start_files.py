"""Tables of captured starts as files: CSV with its description, NumPy's .npz, HDF5. All as bytes: nothing is written.

In .npz and HDF5 a column is `table/column`: float64 with NaN, int64, bool or text with "" where nothing is known.
"""

import io
import json
from collections.abc import Sequence
from typing import Any

import numpy as np
import numpy.typing as npt

from benchlog.errors import Refused
from benchlog.reports import csvw
from benchlog.reports.csv_forms import DATA, Column, Datatype, Form, Value, write_table
from benchlog.reports.start_tables import Table

ABOUT = "about"
"""Name of the array that tells what the others are, as JSON text."""


def csv_files(tables: Sequence[Table], name: str, form: Form = DATA) -> dict[str, bytes]:
    """Contents by name: the first table is `name`, the others are named after it; in the data form each with its
    description beside it. `name` ends in ".csv"."""
    stem, files = name.removesuffix(".csv"), {}
    for number, table in enumerate(tables):
        file = name if number == 0 else f"{stem}-{table.name}.csv"
        text = io.StringIO(newline="")
        write_table(table.columns, table.rows, form, text)
        files[file] = text.getvalue().encode()
        if form is DATA:
            told = csvw.description(table.columns, url=file, title=table.title, key=table.key)
            files[file + csvw.SUFFIX] = told.encode()
    return files


def npz(tables: Sequence[Table]) -> bytes:
    """Plain arrays only, no pickles: `numpy.load` reads it as it is set up to."""
    arrays = {f"{table.name}/{name}": values for table in tables for name, values in arrays_of(table).items()}
    buffer = io.BytesIO()
    np.savez_compressed(buffer, **{ABOUT: np.array(about(tables))}, **arrays)  # type: ignore[arg-type]
    return buffer.getvalue()


def hdf5(tables: Sequence[Table]) -> bytes:
    """A group a table, a data set a column, with its title and unit as attributes. Raises Refused without h5py."""
    try:
        import h5py
    except ImportError as error:
        raise Refused('HDF5 needs h5py: pip install "benchlog[hdf5]"; .npz and .csv need nothing more') from error
    buffer = io.BytesIO()
    with h5py.File(buffer, "w", track_order=True) as file:
        file.attrs[ABOUT] = about(tables)
        for table in tables:
            group = file.create_group(table.name, track_order=True)
            group.attrs["title"] = table.title
            for column, values in zip(table.columns, arrays_of(table).values(), strict=True):
                if values.dtype.kind == "U":
                    coded = np.char.encode(values, "utf-8")
                    values = coded.astype(h5py.string_dtype("utf-8", max(coded.dtype.itemsize, 1)))
                packed = {"compression": "gzip", "shuffle": True} if len(values) else {}
                made = group.create_dataset(column.name, data=values, **packed)
                made.attrs["title"], made.attrs["unit"] = column.title, column.unit
    return buffer.getvalue()


def arrays_of(table: Table) -> dict[str, npt.NDArray[Any]]:
    """A column each, in the table's order."""
    return {column.name: _array(column, values) for column, values in zip(table.columns, table.values, strict=True)}


def _array(column: Column, values: Sequence[Value]) -> npt.NDArray[Any]:
    match column.datatype:
        case Datatype.DOUBLE:
            return np.array([np.nan if value is None else value for value in values], dtype=np.float64)
        case Datatype.INTEGER if any(value is None for value in values):
            # A whole number that is not known has no place among int64.
            return np.array([np.nan if value is None else value for value in values], dtype=np.float64)
        case Datatype.INTEGER:
            return np.array(values, dtype=np.int64)
        case Datatype.BOOLEAN:
            return np.array(values, dtype=np.bool_)
        case Datatype.STRING | Datatype.INSTANT:
            return np.array(["" if value is None else str(value) for value in values], dtype=np.str_)


def about(tables: Sequence[Table]) -> str:
    """JSON text: what each table and column is."""
    told = {
        table.name: {
            "title": table.title,
            "key": list(table.key),
            "columns": {
                column.name: {"title": column.title, "unit": column.unit, "datatype": column.datatype.value}
                for column in table.columns
            },
        }
        for table in tables
    }
    return json.dumps(told, ensure_ascii=False)
