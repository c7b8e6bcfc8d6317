"""The texts of the help by topic, as they are now: another language may have put others in their place."""

import re
from collections.abc import Iterator
from enum import StrEnum

from ui import help_texts, shortcuts, texts

_ITEM = re.compile(r"\n(?=- |\d\. )")


class Topic(StrEnum):
    """In the order in which they are listed: the way of a job, the rooms, then what is of everything."""

    INTAKE = "intake"
    MAKE_SAFE = "make-safe"
    PROBE = "probe"
    FREE = "free"
    PROVE = "prove"
    CLOSE = "close"
    RECORD = "record"
    CURVES = "curves"
    HISTORY = "history"
    SETTINGS = "settings"
    SAFETY = "safety"
    SUPPLY = "supply"
    KEYS = "keys"
    WORDS = "words"


def markdown(topic: Topic) -> str:
    """With its title."""
    return f"# {texts.HELP_TITLES[topic.value]}\n\n{_text(topic).strip()}\n"


def _text(topic: Topic) -> str:
    match topic:
        case Topic.KEYS:
            rows = "\n".join(f"- **{keys}**: {words}" for keys, words in shortcuts.told())
            return f"{help_texts.KEYS}\n\n{rows}\n\n{help_texts.KEYS_AFTER}"
        case Topic.WORDS:
            rows = "\n".join(f"- **{word}**: {meaning}" for word, meaning in help_texts.WORDS)
            return f"{help_texts.WORDS_ABOUT}\n\n{rows}"
        case _:
            return str(getattr(help_texts, topic.name))


def passages(topic: Topic) -> Iterator[str]:
    """Its paragraphs and the lines of its lists, each by itself."""
    for block in _text(topic).strip().split("\n\n"):
        if block.startswith("#"):
            continue
        yield from _ITEM.split(block)


def found(typed: str) -> list[tuple[Topic, str]]:
    """What has every word that is typed, in the order of the topics; whatever case."""
    words = typed.casefold().split()
    hits = []
    for topic in Topic:
        title = texts.HELP_TITLES[topic.value].casefold()
        for passage in passages(topic):
            plain = passage.replace("*", "").casefold()
            if all(word in plain or word in title for word in words) and any(word in plain for word in words):
                hits.append((topic, passage))
    return hits
