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


MOST = 1200
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
_DEEPEST = 6


class Template:
    """One text with places, and what it is in the other language."""

    def __init__(self, source: str, translation: str) -> None:
        self._source, self.translation = _without_stop(source), _without_stop(translation)
        pieces = _PLACE.split(self._source)
        self.literals = [piece for piece in pieces[::2] if piece]
        self.longest = max(self.literals, key=len, default="")
        self.letters = sum(len(_LETTERS.findall(piece)) for piece in self.literals)
        self._pattern: re.Pattern[str] | None = None

    def places(self, text: str) -> dict[str, str] | None:
        """What stands at each place of `text`, which ends without a full stop; None where it does not fit."""
        if self.longest not in text:
            return None
        if self._pattern is None:  # only of those that may fit: compiling all of them would be felt at the start
            self._pattern = re.compile(self._expression(), re.DOTALL)
        fits = self._pattern.fullmatch(text)
        return None if fits is None else {name[1:]: value for name, value in fits.groupdict().items()}

    def filled(self, told: Mapping[str, tuple[str, bool]]) -> str:
        return _PLACE.sub(lambda place: told[place[1]][0], self.translation)

    def _expression(self) -> str:
        pieces = _PLACE.split(self._source)
        made: list[str] = []
        seen: set[str] = set()
        for index, piece in enumerate(pieces):
            if index % 2 == 0:
                made.append(_first_of_either_case(piece) if index == 0 else re.escape(piece))
            elif piece in seen:
                made.append(f"(?P=p{piece})")
            else:
                seen.add(piece)
                last, after = index == len(pieces) - 2, pieces[index + 1]
                nothing = (last and not after) or (index > 1 and not pieces[index - 1])
                longest = last or after == " "  # "the winding may be at" + "130" + "°C": the words are in the first
                made.append(f"(?P<p{piece}>.{'*' if nothing else '+'}{'' if longest else '?'})")
        return "".join(made)


class Retelling:
    """`catalogue`: translations by their source. `told` never raises, and leaves what it does not know as it is."""

    def __init__(self, catalogue: Mapping[str, str]) -> None:
        self._catalogue = catalogue
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
        found, all_of_it = self._one(bare, deep)
        return f"{before}{found}{after}", all_of_it

    def _one(self, text: str, deep: int) -> tuple[str, bool]:
        if deep > _DEEPEST:
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


def _first_of_either_case(piece: str) -> str:
    first = piece[:1]
    if first.lower() == first.upper():
        return re.escape(piece)
    return f"[{first.lower()}{first.upper()}]{re.escape(piece[1:])}"


def _as_in(text: str, words: str) -> str:
    """`words` with a large first letter and a full stop where `text` has them."""
    words = _without_stop(words)
    if text[:1].isupper():
        words = words[:1].upper() + words[1:]
    last = text[-1:]
    return words + last if last in (".", ":", ";") and not words.endswith((".", "!", "?", "…")) else words
