"""What the columns of a CSV file in its data form are, for programs: W3C metadata for tabular data (CSVW).

Beside `run.csv` it is `run.csv-metadata.json`, where the standard has a reader look for it. A unit is in
`schema:unitText` as people write it ("V") and in `schema:unitCode` as UN/CEFACT Recommendation 20 codes it ("VLT").
"""

import json
from collections.abc import Sequence
from typing import Any

from benchlog.reports.csv_forms import Column, Datatype

SUFFIX = "-metadata.json"
UNIT_CODES = {"s": "SEC", "V": "VLT", "A": "AMP", "J": "JOU", "min": "MIN", "d": "DAY"}
"""Source: UN/CEFACT Recommendation 20, from memory."""


def description(columns: Sequence[Column], *, url: str, title: str, key: Sequence[str] = ()) -> str:
    """JSON text for the table at `url`, relative to the description. `key`: names of the columns that tell rows apart.

    Raises KeyError for a unit without a code.
    """
    schema: dict[str, Any] = {"columns": [_column(column, required=column.name in key) for column in columns]}
    if key:
        schema["primaryKey"] = list(key)
    table = {
        "@context": ["http://www.w3.org/ns/csvw", {"@language": "en"}],
        "url": url,
        "dc:title": title,
        "dialect": {
            "encoding": "utf-8",
            "delimiter": ",",
            "lineTerminators": ["\r\n"],
            "quoteChar": '"',
            "doubleQuote": True,
            "header": True,
            "commentPrefix": None,
        },
        "tableSchema": schema,
    }
    return json.dumps(table, ensure_ascii=False, indent=2) + "\n"


def _column(column: Column, *, required: bool) -> dict[str, Any]:
    told: dict[str, Any] = {
        "name": column.name,
        # A reader holds the header line, which has the name, against these.
        "titles": [column.name, column.title],
        "datatype": {"base": "boolean", "format": "1|0"}
        if column.datatype is Datatype.BOOLEAN
        else column.datatype.value,
        "null": "",
    }
    if required:
        told["required"] = True
    if column.unit:
        told["schema:unitText"] = column.unit
        told["schema:unitCode"] = UNIT_CODES[column.unit]
    return told
