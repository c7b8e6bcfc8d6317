"""The window in another language: its own sentences are replaced at the start, the core's told as they are shown.

The record stays in one language, English, whatever the window speaks: what is kept is written as the core says it, and
`retelling.told` puts it over on its way to a widget. A catalogue is one file in the open format of Qt Linguist and is
read straight: some 2 500 messages take about 12 ms, and nothing has to be compiled or kept in step.
"""

import re
from collections.abc import Iterable, Iterator
from importlib import import_module
from pathlib import Path
from types import ModuleType
from xml.parsers import expat

import msgspec
from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QTranslator

from ui.retelling import tell_in

LANGUAGES = {"de": Path(__file__).parent / "languages" / "benchlog_de.ts"}
"""Beside English, which needs no catalogue."""
TEXTS = ("ui.texts", "ui.curve_texts", "ui.help_texts")
"""Modules whose constants are what the window says. They are replaced, so nobody keeps one from before the start."""

RECORD = re.compile(
    r"STOP_\w+|HAND_NOTED|HAND_STEPS|NOTE_KEPT|MOVED_NOTED|SAFE_ROWS|SAFE_CHECKED|SAFE_NOT_FITTING|SAFE_ENTRY"
    r"|INTAKE_ENTRY|AMPS_NO_CEILING|LOAD_STATE|DRY|WET|COUPLED|UNCOUPLED|METHODS|CLEAR_ENTRY|CLEAR_HINT|RUN_IN_CLEAR"
    r"|LAID|LAID_NOT|LAID_CAPTION"
)
"""Constants that go into the record, and so stay English: where one is shown it is told like a sentence of the core."""

_kept: dict[tuple[str, str], object] = {}
"""The English values of constants that were replaced, by module and name."""


class Message(msgspec.Struct, frozen=True, kw_only=True):
    """`context`: the module that says it; `about`: its constant, where there is one; `translation`: "" for none."""

    context: str
    source: str
    about: str = ""
    translation: str = ""


def wanted_language(preferred: str) -> str:
    """`preferred`, else the desktop's, where there is a catalogue for it; else "en"."""
    language = preferred or QLocale.system().uiLanguages()[0].partition("-")[0]
    return language if language in LANGUAGES else "en"


def speak_language(language: str, application: QCoreApplication) -> None:
    """Before there is a widget. The catalogue, and Qt's own words (its file dialog's buttons)."""
    if language in LANGUAGES:
        speak(read_catalogue(LANGUAGES[language]))
        translator = QTranslator(application)
        if translator.load(f"qtbase_{language}", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)):
            application.installTranslator(translator)


def speak(messages: Iterable[Message]) -> None:
    """From now on constants, and what is told of the core, are as these say; without any, English again."""
    for (name, constant), value in _kept.items():
        _put(import_module(name), constant, value)
    _kept.clear()
    own: dict[tuple[str, str], dict[str, str]] = {}
    core: dict[str, str] = {}
    for message in messages:
        if message.translation:
            if message.context in TEXTS:
                own.setdefault((message.context, message.about), {})[message.source] = message.translation
            else:
                core[message.source] = message.translation
    for (name, constant), words in own.items():
        module = import_module(name)
        if (value := getattr(module, constant, None)) is not None:
            _kept[name, constant] = dict(value) if isinstance(value, dict) else value
            _put(module, constant, _replaced(value, words))
    tell_in(core)


def constants_of(module: ModuleType) -> Iterator[tuple[str, object]]:
    """What a module of texts holds to be said, by name."""
    for name, value in vars(module).items():
        if name.isupper() and not name.startswith("_"):
            yield name, value


def strings_of(value: object) -> Iterator[str]:
    match value:
        case str():
            yield value
        case dict():
            for one in value.values():
                yield from strings_of(one)
        case tuple():
            for one in value:
                yield from strings_of(one)


def _replaced(value: object, words: dict[str, str]) -> object:
    match value:
        case str():
            return words.get(value, value)
        case dict():
            return {key: _replaced(one, words) for key, one in value.items()}
        case tuple():
            return tuple(_replaced(one, words) for one in value)
    return value


def _put(module: ModuleType, constant: str, value: object) -> None:
    there = getattr(module, constant)
    if isinstance(there, dict) and isinstance(value, dict):
        there.update(value)  # in place: whoever holds it has the new words as well
    else:
        setattr(module, constant, value)


def read_catalogue(path: Path) -> list[Message]:
    """Raises OSError, or ExpatError where it is no XML."""
    found: list[Message] = []
    at = {"name": "", "source": "", "comment": "", "translation": ""}
    inside = ""

    def begin(tag: str, attributes: dict[str, str]) -> None:
        nonlocal inside
        inside = tag if tag in at else ""
        if tag == "message":
            at.update(source="", comment="", translation="")
        elif tag == "name":
            at["name"] = ""

    def text(words: str) -> None:
        if inside:
            at[inside] += words

    def end(tag: str) -> None:
        nonlocal inside
        inside = ""
        if tag == "message":
            found.append(
                Message(
                    context=at["name"], source=at["source"], about=at["comment"], translation=at["translation"].strip()
                )
            )

    parser = expat.ParserCreate()
    parser.buffer_text = True
    parser.StartElementHandler, parser.CharacterDataHandler, parser.EndElementHandler = begin, text, end
    parser.Parse(path.read_bytes(), True)
    return found
