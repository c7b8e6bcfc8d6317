"""Under which licences the parts of this program come, as they say themselves."""

import re
import sqlite3
import sys
from dataclasses import dataclass
from email.message import Message
from importlib import metadata
from typing import cast

PROGRAM = "benchlog"

QT_NOTE = (
    "The window is drawn by Qt through PySide6, both under the LGPL version 3. They come as libraries of their own,"
    " unchanged: you may replace them with other versions, or with ones that you changed and built yourself, and take"
    " them apart to see why a change does not work. Their sources are at https://code.qt.io and"
    " https://download.qt.io; the text of the licence is at https://www.gnu.org/licenses/lgpl-3.0.html."
)
"""Source: LGPL 3.0, section 4: notice, relinking, and reverse engineering for debugging such modifications."""

_FROM_CLASSIFIER = "License :: OSI Approved :: "
_LONGEST = 80


@dataclass(frozen=True, slots=True, kw_only=True)
class Licence:
    """A part of the program. `licence`: an SPDX expression where the part gives one, else its own words."""

    name: str
    version: str
    licence: str


def listing() -> tuple[Licence, ...]:
    """What is installed of what this program needs, and what that needs, by name; Python and SQLite as well."""
    found: dict[str, Licence] = {}
    wanted = [PROGRAM]
    while wanted:
        name = wanted.pop()
        if _key(name) in found:
            continue
        try:
            part = metadata.distribution(name)
        except metadata.PackageNotFoundError:
            continue  # for another system or another Python
        found[_key(name)] = Licence(name=part.metadata["Name"], version=part.version, licence=_licence(part))
        wanted += [_name(need) for need in part.requires or () if not _is_extra(need)]
    beside = (
        Licence(name="Python", version=sys.version.partition(" ")[0], licence="PSF-2.0"),
        Licence(name="SQLite", version=sqlite3.sqlite_version, licence="public domain"),
    )
    return tuple(sorted((*found.values(), *beside), key=lambda part: part.name.lower()))


def _key(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).lower()


def _name(requirement: str) -> str:
    found = re.match(r"[A-Za-z0-9._-]+", requirement)
    return found.group() if found else ""


def _is_extra(requirement: str) -> bool:
    return "extra" in requirement.partition(";")[2]


def _licence(part: metadata.Distribution) -> str:
    told = cast(Message, part.metadata)
    if expression := told.get("License-Expression"):
        return str(expression)
    words = str(told.get("License") or "").strip()
    if words and "\n" not in words and len(words) <= _LONGEST:
        return words
    classes = [str(one).removeprefix(_FROM_CLASSIFIER) for one in told.get_all("Classifier") or ()]
    named = [one for one in classes if not one.startswith(("License :: ",)) and "License" in one]
    return ", ".join(named) or "none stated"
