"""The catalogue of every sentence the window can show: gathered from the code, kept beside what was translated.

`python -m tests.words` renews `ui/languages/*.ts`: what is new is added unfinished, what is gone is dropped, and what
was translated stays. Said then: how many are unfinished. The files are those of Qt Linguist, which opens them.
"""

import ast
import re
import sys
from collections.abc import Iterable, Iterator
from functools import cache
from importlib import import_module
from itertools import groupby
from pathlib import Path
from types import ModuleType
from xml.sax.saxutils import escape

import msgspec

from tests.single_words import WORDS
from ui.translating import LANGUAGES, RECORD, TEXTS, Message, constants_of, read_catalogue, strings_of

ROOT = Path(__file__).parents[1]
TERMINAL = re.compile(
    r"HELP_(ITEM|RATED|COMPLAINT|LEDGER|SUPPLY|DEMO|THEME|SNAPSHOT)|NO_QT|NO_LIBRARY\w*|NO_DISPLAY|NO_LEDGER|ABOUT"
)
"""Constants of `ui.texts` that are said where there is no window: the terminal speaks English."""

CORE = (
    "benchlog/bench",
    "benchlog/board",
    "benchlog/errors.py",
    "benchlog/history",
    "benchlog/ledger",
    "benchlog/money.py",
    "benchlog/motor",
    "benchlog/outcome.py",
    "benchlog/pictures",
    "benchlog/quantities.py",
    "benchlog/records.py",
    "benchlog/recovery",
    "benchlog/reports/foreign_csv.py",
    "benchlog/reports/sheet_pdf.py",
    "benchlog/reports/start_files.py",
    "benchlog/settings.py",
    "drivers",
    "ui/record_texts.py",
)
NOT_SHOWN = re.compile(
    r"drivers/simulated/.*|benchlog/ledger/(schema|sql_text|trace_codec|column_codec|dense_codec|restoring)\.py"
    r"|benchlog/recovery/(replay|comparing)\.py|benchlog/bench/(journal|file_lock)\.py|drivers/finding_parts\.py"
    r"|benchlog/history/__main__\.py|drivers/(children|udev)\.py"
)
"""Said on the terminal alone, or by nothing that a person reads."""

_UNREAD_CALLS = re.compile(
    r"(_log|logging|log|re|struct|subprocess)\.\w+|(sa\.)?text|getattr|hasattr|TypeVar|NewType|\w*\.(execute|encode|decode"
    r"|exec_driver_sql|scalar|scalars|fetchone|split|rsplit|partition|rpartition|startswith|endswith|removeprefix"
    r"|removesuffix|replace|strftime|compile|query|ask|write|mkdir|open|literal_column|text|match)|open|Path|_sql\w*|ForeignKey"
    r"|CheckConstraint|_scalar|_pragma|_rows|frozenset|str\.maketrans"
)
_CODE = re.compile(
    r"(SELECT|PRAGMA|BEGIN|CREATE|DELETE|DROP|INSERT|UPDATE|VACUUM|ALTER|ATTACH|INST|VOLT|CURR|OUTP|MEAS|SYST|ROLLBACK)\b.*"
    r"|.*\bsqlite_\w+.*|\\A.*",
    re.DOTALL,
)
NO_SENTENCES = frozenset(
    ("DEMO ·", "· DEMO", "Sans Serif", "CH LI", "lan %1%2%3 %4", "tcp %1 %2", "benchlog %1", "APPL %1{volts},{amps}")
)
UNITS = frozenset(
    ("V", "A", "s", "W", "J", "C", "Ω", "ms", "mV", "mA", "mΩ", "µs", "min", "h", "K", "Hz", "kHz", "bytes", "mm")
)
_WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*")


def texts_messages(module: ModuleType) -> Iterator[Message]:
    """Every string of a module's constants, each under its constant's name; those of the record with places."""
    name = module.__name__
    for constant, value in constants_of(module):
        if name == "ui.texts" and TERMINAL.fullmatch(constant):
            continue
        for text in dict.fromkeys(strings_of(value)):
            if re.search(r"[^\W\d_]|[“”]", re.sub(r"\{[^}]*\}", "", text)):
                if RECORD.fullmatch(constant):
                    parts = re.split(r"\{\w+\}", text)
                    yield Message(context="record", source=_template([*_between(parts)]))
                else:
                    yield Message(context=name, source=text, about=constant)


def _between(parts: list[str]) -> Iterator[str | None]:
    for number, part in enumerate(parts):
        yield from (part,) if number == 0 else (None, part)


def core_messages() -> Iterator[Message]:
    """Every sentence, and every text with places %1, %2, that the core may hand to the window."""
    told: set[str] = set()
    for path in _core_files():
        context = path.relative_to(ROOT).as_posix()
        for source in _toml_texts(path) if path.suffix == ".toml" else sentences_of(path.read_text()):
            if source not in told:  # which module says it can't be told from a sentence, so one entry holds for all
                told.add(source)
                yield Message(context=context, source=source)


def sentences_of(code: str) -> Iterator[str]:
    """Of a module's source, its docstrings, names, patterns and what is only logged aside."""
    tree = ast.parse(code)
    unread = {id(one.value) for one in ast.walk(tree) if isinstance(one, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.AnnAssign):
            unread.add(id(node.annotation))
    yield from _sentences(tree, unread)


def _sentences(node: ast.AST, unread: set[int]) -> Iterator[str]:
    if isinstance(node, ast.Call) and _UNREAD_CALLS.fullmatch(ast.unparse(node.func)):
        inside = [part for part in ast.walk(node) if isinstance(part, ast.JoinedStr)]
        if not inside or not ast.unparse(node.func).endswith(("removesuffix", "replace", "removeprefix")):
            return
    if isinstance(node, ast.Compare):
        return
    if id(node) in unread and not isinstance(node, ast.Expr | ast.Call | ast.Await | ast.Yield | ast.YieldFrom):
        return
    parts = _parts(node)
    if parts is not None:
        if is_read(template := _template(parts)):
            yield template
        for part in ast.walk(node):
            if isinstance(part, ast.FormattedValue):
                yield from _sentences(part.value, unread)
        return
    for child in ast.iter_child_nodes(node):
        yield from _sentences(child, unread)


def _parts(node: ast.AST) -> list[str | None] | None:
    """Texts and places (None) of a string, an f-string, or a sum of them; None for anything else."""
    match node:
        case ast.Constant(value=str(text)):
            return [text]
        case ast.JoinedStr(values=values):
            return [str(one.value) if isinstance(one, ast.Constant) else None for one in values]
        case ast.BinOp(left=left, op=ast.Add(), right=right):
            first, second = _parts(left), _parts(right)
            if first is None and second is None:
                return None
            return [*(first or [None]), *(second or [None])]
    return None


def _template(parts: list[str | None]) -> str:
    places = iter(range(1, len(parts) + 1))
    return "".join(f"%{next(places)}" if part is None else part for part in parts).strip()


def is_read(template: str) -> bool:
    """Whether a text is for a person: words, more than one of them or with a place, that are not units alone."""
    if template in NO_SENTENCES or _CODE.fullmatch(template):
        return False
    words = [word for word in _WORD.findall(re.sub(r"%\d+", " ", template)) if word not in UNITS and len(word) > 1]
    return bool(words) and " " in template


def _core_files() -> Iterator[Path]:
    for name in CORE:
        place = ROOT / name
        paths = [place] if place.is_file() else sorted([*place.rglob("*.py"), *place.rglob("sequences/*.toml")])
        yield from (path for path in paths if not NOT_SHOWN.fullmatch(path.relative_to(ROOT).as_posix()))


def _toml_texts(path: Path) -> Iterator[str]:
    yield from re.findall(r'^(?:name|text|about) = "(.*)"$', path.read_text(), re.MULTILINE)


@cache
def gathered() -> list[Message]:
    """All of it, in the order in which it stands in the code; single words that are told by themselves at the end."""
    texts = [message for name in TEXTS for message in texts_messages(import_module(name))]
    own = [message for message in texts if message.context != "record"]
    core = [message for message in texts if message.context == "record"]
    there = {message.source for message in core}
    core += [message for message in core_messages() if message.source not in there]
    there |= {message.source for message in core}
    return [*own, *core, *(Message(context="words", source=word) for word in WORDS if word not in there)]


def renewed(there: Iterable[Message]) -> list[Message]:
    """What is gathered, with the translations that are there already: of the same place, else of the same words."""
    kept: dict[tuple[str, str, str], str] = {}
    same: dict[str, str] = {}
    for message in there:
        kept[_key(message)] = message.translation
        same.setdefault(message.source, message.translation)
    return [
        msgspec.structs.replace(message, translation=kept.get(_key(message)) or same.get(message.source, ""))
        for message in gathered()
    ]


def _key(message: Message) -> tuple[str, str, str]:
    return message.context, message.about, message.source


def written(language: str, messages: Iterable[Message]) -> str:
    """As Qt Linguist writes it: one context a module, unfinished where there is no translation."""
    lines = ['<?xml version="1.0" encoding="utf-8"?>', "<!DOCTYPE TS>"]
    lines.append(f'<TS version="2.1" language="{language}" sourcelanguage="en">')
    for context, group in groupby(messages, key=lambda message: message.context):
        lines += ["<context>", f"    <name>{escape(context)}</name>"]
        for message in group:
            lines += ["    <message>", f"        <source>{escape(message.source)}</source>"]
            if message.about:
                lines.append(f"        <comment>{escape(message.about)}</comment>")
            unfinished = "" if message.translation else ' type="unfinished"'
            lines.append(f"        <translation{unfinished}>{escape(message.translation)}</translation>")
            lines.append("    </message>")
        lines.append("</context>")
    return "\n".join([*lines, "</TS>", ""])


def main() -> int:
    left = 0
    for language, path in LANGUAGES.items():
        messages = renewed(read_catalogue(path) if path.exists() else ())
        path.write_text(written(language, messages), encoding="utf-8")
        unfinished = [message for message in messages if not message.translation]
        left += len(unfinished)
        sys.stdout.write(f"{path.name}: {len(messages)} messages, {len(unfinished)} unfinished\n")
        for message in unfinished[:40]:
            sys.stdout.write(f"  {message.context} {message.about}: {message.source}\n")
    return 1 if left else 0


if __name__ == "__main__":
    raise SystemExit(main())
