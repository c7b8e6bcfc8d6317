"""Which command a header means: mnemonics in exact short or long form, optional nodes, suffix 1, compound paths.

Source: SCPI-1999 volume 1 chapter 6 and IEEE 488.2-1992, as published: a node is accepted in its short form or its
long form and nothing between; a numeric suffix defaults to 1; after a semicolon a header without a leading colon
continues at the last header's level; common commands leave that level alone.
"""

import re
from dataclasses import dataclass
from typing import Generic, TypeVar

from drivers.simulated.status import Refusal

Meaning = TypeVar("Meaning")

_HEADER = re.compile(r"(?P<root>:?)(?P<nodes>[A-Za-z][A-Za-z0-9_]*(?::[A-Za-z][A-Za-z0-9_]*)*)(?P<query>\??)\Z")
_COMMON = re.compile(r"\*[A-Za-z]{2,}\??\Z")
_NODE = re.compile(r"(?P<open>\[?):?(?P<name>[A-Za-z]+):?(?P<close>\]?)")
_SPELLED = re.compile(r"(?P<name>.*?)(?P<suffix>[0-9]*)\Z")


@dataclass(frozen=True, slots=True, kw_only=True)
class Node:
    """One mnemonic of a command's definition."""

    short: str
    long: str
    optional: bool

    def accepts(self, spelled: str) -> bool:
        return spelled in (self.short, self.long)


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """One program message unit: where its header leads, and its parameter text."""

    header: str
    path: tuple[str, ...]
    query: bool
    parameters: str


def nodes_of(definition: str) -> tuple[Node, ...]:
    """ "[SOURce:]VOLTage[:LEVel]" to nodes; capitals are the short form."""
    nodes = []
    for part in _NODE.finditer(definition):
        name = part["name"]
        short = "".join(letter for letter in name if letter.isupper())
        nodes.append(Node(short=short, long=name.upper(), optional=bool(part["open"])))
    return tuple(nodes)


def units_of(message: str) -> list[Unit | Refusal]:
    """A program message to its units, paths resolved. A refusal ends the list: nothing behind it is parsed."""
    units: list[Unit | Refusal] = []
    level: tuple[str, ...] = ()
    texts = message.split(";")
    if len(texts) > 1 and not texts[-1].strip():
        texts.pop()
    for text in texts:
        header, *rest = text.split(None, 1) or [""]
        if _COMMON.match(header):
            path: tuple[str, ...] = (header.rstrip("?").upper(),)
        elif found := _HEADER.match(header):
            spelled = tuple(found["nodes"].upper().split(":"))
            path = spelled if found["root"] else level + spelled
            level = path[:-1]
        else:
            units.append(Refusal(-102, header))
            break
        parameters = rest[0].strip() if rest else ""
        units.append(Unit(header=header, path=path, query=header.endswith("?"), parameters=parameters))
    return units


class Tree(Generic[Meaning]):
    """All commands of an instrument, each definition with its meaning. Queries are defined with a trailing "?"."""

    def __init__(self, definitions: dict[str, Meaning]) -> None:
        self._common = {name: meaning for name, meaning in definitions.items() if name.startswith("*")}
        self._entries = [
            (nodes_of(name.rstrip("?")), name.endswith("?"), meaning)
            for name, meaning in definitions.items()
            if not name.startswith("*")
        ]

    def find(self, unit: Unit) -> Meaning:
        """The meaning of a unit. Raises Refusal -113 or, for a suffix other than 1, -114."""
        if unit.path[0].startswith("*"):
            common = self._common.get(unit.path[0] + ("?" if unit.query else ""))
            if common is None:
                raise Refusal(-113, unit.header)
            return common
        names, bad_suffix = [], False
        for spelled in unit.path:
            parts = _SPELLED.match(spelled)
            names.append(parts["name"] if parts else spelled)
            bad_suffix |= bool(parts and parts["suffix"] and parts["suffix"].lstrip("0") != "1")
        for nodes, query, meaning in self._entries:
            if query == unit.query and _leads_through(nodes, names):
                if bad_suffix:
                    raise Refusal(-114, unit.header)
                return meaning
        raise Refusal(-113, unit.header)


def _leads_through(nodes: tuple[Node, ...], names: list[str]) -> bool:
    if not nodes:
        return not names
    if names and nodes[0].accepts(names[0]) and _leads_through(nodes[1:], names[1:]):
        return True
    return nodes[0].optional and _leads_through(nodes[1:], names)
