"""Text from elsewhere: read within bounds, and shown inert. Pure."""

import tomllib
from typing import Any

MAX_TEXT = 64 * 1024
"""Characters in a TOML file; what is longer is none of this program's."""

MAX_LINE = 4096
"""Characters in a line of it: the time to read a dotted key grows with the square of its length."""


def inert(text: str) -> str:
    """One line that no terminal obeys: what is not printable, such as control and bidi characters, becomes "?"."""
    return "".join(c if c.isprintable() else "?" for c in text)


def toml(text: str) -> dict[str, Any]:
    """A TOML document. Raises ValueError for anything else, in bounded time and room."""
    if len(text) > MAX_TEXT:
        raise ValueError(f"longer than {MAX_TEXT} characters")
    if any(len(line) > MAX_LINE for line in text.splitlines()):
        raise ValueError(f"a line of more than {MAX_LINE} characters")
    try:
        return tomllib.loads(text)
    except RecursionError as error:
        raise ValueError("nested too deep") from error
