"""The catalogue holds every sentence the window can show, and each is translated."""

import re

import pytest

from tests.words import gathered, renewed, sentences_of, written
from ui.translating import LANGUAGES, Message, read_catalogue

THE_SAME = frozenset(
    (
        "Tab",
        "Enter",
        "Esc",
        "Export",
        "Gate",
        "Name",
        "Trigger",
        "Cursor",
        "DEMO",
        "DEMO: {thing}",
        "USB",
        "VISA",
        "Pulldown",
        "Deutsch",
        "English",
        "benchlog",
        "min",
        "{count} min",
        "Esc, Pause",
        "JPEG XL",
        "JPEG 2000",
    )
)
"""Words that are the same in the other language, beside those with no word of three letters."""


def of(language: str) -> list[Message]:
    return read_catalogue(LANGUAGES[language])


def places(text: str) -> list[str]:
    return sorted(re.findall(r"\{[^}]*\}|%\d+", text))


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_catalogue_is_what_the_code_says_now_and_python_m_tests_words_renews_it(language: str) -> None:
    there = of(language)
    found = LANGUAGES[language].read_text(encoding="utf-8")
    missing = {message.source for message in renewed(there)} ^ {message.source for message in there}
    assert not missing
    assert found == written(language, renewed(there)), "renew it: python -m tests.words"


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_sentence_is_left_untranslated(language: str) -> None:
    assert [message.source for message in of(language) if not message.translation] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_translation_has_the_places_of_its_source(language: str) -> None:
    assert [
        (message.source, message.translation)
        for message in of(language)
        if places(message.source) != places(message.translation)
    ] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_translation_is_the_source_again(language: str) -> None:
    def has_words(text: str) -> bool:
        return bool(re.search(r"[^\W\d_]{3,}", re.sub(r"\{[^}]*\}|%\d+", " ", text)))

    same = {message.source for message in of(language) if message.source == message.translation}
    assert {text for text in same if has_words(text)} - THE_SAME <= set(gathered_examples())


def gathered_examples() -> list[str]:
    """Examples that are typed or read as they stand: addresses, file kinds, markings."""
    return [
        message.source
        for message in gathered()
        if message.about in ("SUPPLY_EXAMPLE", "EXPORT_FILTERS", "MARKING_HINT")
    ]


def test_sentences_are_found_with_their_places_and_code_is_left_out() -> None:
    code = '''
"""A docstring of words."""
_log.info("only logged %s", here)
raise Refused(f"job {number} is closed" + f": {why}")
connection.execute("SELECT id FROM job")
say = f"Start {n}: {'it turned' if turned else 'it stood still'}."
'''
    assert list(sentences_of(code)) == ["job %1 is closed: %2", "Start %1: %2.", "it turned", "it stood still"]
