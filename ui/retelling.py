"""Finished sentences of one language told in another: whole ones, ones with places, and ones that were joined.

The core writes its sentences out before anybody asks in which language they are read. What is known is a catalogue:
whole sentences, and templates with places %1, %2. Pure text: no Qt, no file.
"""

import re
from collections.abc import Iterable, Mapping
from functools import cached_property, lru_cache

_speaking: "Retelling | None" = None


def told(text: str) -> str:
    """A sentence of the core, or of the record, in the window's language; unchanged where it is not known."""
    return text if _speaking is None else _speaking.told(text)


def tell_in(catalogue: Mapping[str, str]) -> None:
    """From now on `told` is as this says; without any it changes nothing."""
    global _speaking
    _speaking = Retelling(catalogue) if catalogue else None


def as_kept(shown: str, words: Iterable[str]) -> str:
    """The one of the record's `words` that is shown as this; else what is shown, as a person typed it."""
    return next((word for word in words if told(word) == shown), shown)


MOST = 600
"""Characters. Longer ones are no sentence of the core's, and too long to be searched through while one waits."""
_PLACE = re.compile(r"%(\d+)")
_LETTERS = re.compile(r"[^\W\d_]")
_LETTERS_TOGETHER = re.compile(r"[^\W\d_]+")
_UNITS = frozenset(
    (
        "V",
        "mV",
        "A",
        "mA",
        "µA",
        "Ω",
        "mΩ",
        "kΩ",
        "MΩ",
        "W",
        "mW",
        "J",
        "mJ",
        "s",
        "ms",
        "µs",
        "min",
        "h",
        "°C",
        "C",
        "K",
    )
)
_NAMED = re.compile(r"(\D*[^\W\d_]) ([−+-]?\d.*)", re.DOTALL)
"""A name before its figure: "peak 1.77 A"."""
_JOINTS = (". ", "; ", ": ", " (", ", ", " and ")
_FEW_LETTERS = 9
"""A template with fewer letters of its own fits too much: it holds only where all of its places are understood."""
_DEEPEST = 16
_MOST_TRIES = 150
"""Parts of one text that are looked up: what a supply calls itself may be anything, and the window must not wait."""


class Template:
    """One text with places, and what it is in the other language."""

    def __init__(self, source: str, translation: str) -> None:
        self._source, self.translation = _without_stop(source), _without_stop(translation)
        pieces = _PLACE.split(self._source)
        self.literals = [piece for piece in pieces[::2] if piece]
        self.longest = max(self.literals, key=len, default="")
        self.letters = sum(len(_LETTERS.findall(piece)) for piece in self.literals)
        self._pieces = pieces

    def places(self, text: str) -> dict[str, str] | None:
        """What stands at each place of `text`, which ends without a full stop; None where it does not fit.

        Each piece is looked for once, from the left: no text, whatever it is, makes this slow.
        """
        if self.longest not in text or not _begins(text, self._pieces[0]):
            return None
        found: dict[str, str] = {}
        at, waiting = len(self._pieces[0]), list[str]()
        for name, piece in zip(self._pieces[1::2], self._pieces[2::2], strict=True):
            waiting.append(name)
            last = name == self._pieces[-2] and piece is self._pieces[-1]
            if piece == " " and not last:
                continue  # "the winding may be at" + "130" + "°C": told apart from the right, words are in the first
            end = len(text) - len(piece) if last else text.find(piece, at + 1) if piece else at
            if end < at or not text.startswith(piece, end) or not _shared(text[at:end], waiting, found):
                return None
            at, waiting = end + len(piece), []
        return found if at == len(text) else None

    def filled(self, told: Mapping[str, tuple[str, bool]]) -> str:
        return _PLACE.sub(lambda place: told[place[1]][0], self.translation)


def _begins(text: str, piece: str) -> bool:
    """Whatever the case of the first letter."""
    return text[: len(piece)] == piece or (text[:1].lower() + text[1 : len(piece)] == piece[:1].lower() + piece[1:])


def _shared(text: str, names: list[str], found: dict[str, str]) -> bool:
    """Whether a text is so many places with a space between them, each the same wherever it stands."""
    parts = text.rsplit(" ", len(names) - 1)
    if len(parts) != len(names):
        return False
    return all(found.setdefault(name, part) == part for name, part in zip(names, parts, strict=True))


class Retelling:
    """`catalogue`: translations by their source. `told` never raises, and leaves what it does not know as it is."""

    def __init__(self, catalogue: Mapping[str, str]) -> None:
        self._catalogue = catalogue
        self._left = 0
        self._known: dict[str, tuple[str, bool]] = {}
        """Parts of the text that is being told."""
        self.told = lru_cache(maxsize=4096)(self._told)

    @cached_property
    def _whole(self) -> dict[str, str]:
        return {_key(source): words for source, words in self._catalogue.items() if not _PLACE.search(source)}

    @cached_property
    def _templates(self) -> list[Template]:
        """Made when something is first told: the start has no time to give."""
        made = (Template(source, words) for source, words in self._catalogue.items() if _PLACE.search(source))
        return sorted(made, key=lambda one: -one.letters)

    def _told(self, text: str) -> str:
        self._left = _MOST_TRIES
        self._known.clear()
        return text if len(text) > MOST else self._tried(text, 0)[0]

    def _tried(self, text: str, deep: int) -> tuple[str, bool]:
        """The text told, and whether all of it is understood."""
        bare = text.strip()
        before, after = text[: len(text) - len(text.lstrip())], text[len(text.rstrip()) :]
        whole = self._whole.get(_key(bare))
        if whole is not None:
            return f"{before}{_as_in(bare, whole)}{after}", True
        named = _NAMED.fullmatch(bare)
        if named is not None and deep <= _DEEPEST and (name := self._whole.get(_key(named[1]))):
            figure, known = self._tried(named[2], deep + 1)
            if known:
                return f"{before}{_as_in(named[1], name)} {figure}{after}", True
        if _is_figure(bare):
            return text, True
        if bare not in self._known:
            self._known[bare] = self._one(bare, deep)
        found, all_of_it = self._known[bare]
        return f"{before}{found}{after}", all_of_it

    def _one(self, text: str, deep: int) -> tuple[str, bool]:
        self._left -= 1
        if deep > _DEEPEST or self._left < 0:
            return text, False
        stopped = _without_stop(text)
        for template in self._templates:
            places = template.places(stopped)
            if places is not None:
                told = {number: self._tried(value, deep + 1) for number, value in places.items()}
                if template.letters >= _FEW_LETTERS or all(known for _, known in told.values()):
                    return _as_in(text, template.filled(told)), all(known for _, known in told.values())
        return self._joined(text, deep)

    def _joined(self, text: str, deep: int) -> tuple[str, bool]:
        best = (text, False)
        for joint in _JOINTS:
            if joint not in text:
                continue
            tail = ")" if joint == " (" and text.endswith(")") else ""
            first, _, rest = text.removesuffix(tail).partition(joint)
            (first, first_known), (rest, rest_known) = self._tried(first, deep + 1), self._tried(rest, deep + 1)
            told = f"{first}{self._joint(joint)}{rest}{tail}"
            if first_known and rest_known:
                return told, True
            if best[0] == text and told != text and joint in (". ", "; ", ": "):
                best = (told, False)
        return best

    def _joint(self, joint: str) -> str:
        return joint if not joint.strip().isalpha() else f" {self._whole.get(joint.strip(), joint.strip())} "


def _is_figure(text: str) -> bool:
    """Values with their units, times, markings: nothing that could be put into another language."""
    together = _LETTERS_TOGETHER.findall(text)
    return all(letters in _UNITS or (len(letters) < 3 and letters.isupper()) for letters in together)


def _key(text: str) -> str:
    """By which a whole sentence is known: its first letter may be large or small, and a full stop may be missing."""
    text = _without_stop(text.strip())
    return text[:1].lower() + text[1:]


def _without_stop(text: str) -> str:
    """Without a full stop, or what joins it to the next sentence."""
    return text[:-1] if text.endswith((".", ":", ";")) and not text.endswith("..") else text


def _as_in(text: str, words: str) -> str:
    """`words` with a large first letter and a full stop where `text` has them."""
    words = _without_stop(words)
    if text[:1].isupper():
        words = words[:1].upper() + words[1:]
    last = text[-1:]
    return words + last if last in (".", ":", ";") and not words.endswith((".", "!", "?", "…")) else words
