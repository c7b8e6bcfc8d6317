"""What a search looks through: text without case and accents, folded once when it is written."""

import unicodedata

from benchlog.records import Item

_LETTERS = str.maketrans({"ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "æ": "ae", "œ": "oe", "ı": "i"})
"""Letters that Unicode does not take apart into a plain one and a mark."""


def folded(text: str) -> str:
    """Text as it is compared: "Lüfter" and "LUFTER" are the same."""
    apart = unicodedata.normalize("NFKD", text.casefold())
    return "".join(letter for letter in apart if not unicodedata.combining(letter)).translate(_LETTERS)


def searched(item: Item, *, tag: str, complaint: str, cause: str = "", outcome: str = "") -> str:
    """All that a job is found by. A line each, so that no search matches across two of them."""
    return folded("\n".join((tag, item.kind, item.make, item.model, item.serial, complaint, cause, outcome)))
