"""What the window has to say beside a run's own sentences: how urgent each thing is, which comes first, what was said.

Three levels, each with a word, a shape and a colour that mean nothing else; what is only told has none of them.
"""

from collections import deque
from dataclasses import dataclass
from enum import Enum

KEPT = 50
"""Of what was said, so many can be read again."""
MOST_OPEN = 200
"""More at once nobody sees off; the oldest goes, but none that has to be acknowledged."""


class Level(Enum):
    """In order: the first is shown before the others."""

    ACT_NOW = "red"
    LOOK = "amber"
    YOUR_TURN = "blue"
    SAID = "grey"


class What(Enum):
    """Every kind of thing that the window can say in its notice, on the red card and in a question."""

    LINK_LOST = "a run of this window ended, and nothing says that the output is off"
    FOUND_ON = "an earlier run ended so, and nobody has said that it was switched off by hand"
    FAULT = "a bug in the window, which pressed output off"
    LEDGER = "the ledger, the disk or a file can't be used"
    READ_ONLY = "another program writes to the ledger"
    BACKUP = "there is no backup, or it lacks something"
    NO_START = "a run could not be begun"
    LEFT_BEHIND = "a run that a crash left behind was filed"
    REFUSED = "a rule refused what was asked for"
    ACKNOWLEDGE_FIRST = "first a person has to say that the supply was switched off by hand"
    QUESTION = "a run asks something"
    NEEDED = "what was pressed lacks something that a person has to give"
    SAID = "what was asked for was done, or can't be now"


LEVEL_OF: dict[What, Level] = {
    What.LINK_LOST: Level.ACT_NOW,
    What.FOUND_ON: Level.ACT_NOW,
    What.FAULT: Level.ACT_NOW,
    What.LEDGER: Level.LOOK,
    What.READ_ONLY: Level.LOOK,
    What.BACKUP: Level.LOOK,
    What.NO_START: Level.LOOK,
    What.LEFT_BEHIND: Level.LOOK,
    What.REFUSED: Level.LOOK,
    What.ACKNOWLEDGE_FIRST: Level.YOUR_TURN,
    What.QUESTION: Level.YOUR_TURN,
    What.NEEDED: Level.YOUR_TURN,
    What.SAID: Level.SAID,
}
HELD = frozenset({What.LINK_LOST, What.FOUND_ON})
"""Not seen off with the others: a person has to say that the supply was switched off."""
_PASSING = frozenset({What.REFUSED, What.ACKNOWLEDGE_FIRST, What.NEEDED, What.SAID})
"""The answer to the last press; the answer to the next one takes its place."""
_ORDER = list(Level)


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """One thing said. `at`: time of day, as shown. `number` tells it from every other."""

    number: int
    what: What
    words: str
    at: str

    @property
    def level(self) -> Level:
        return LEVEL_OF[self.what]

    @property
    def held(self) -> bool:
        return self.what in HELD


class Alarms:
    """What is open, and the last of all that was said."""

    def __init__(self) -> None:
        self._open: list[Told] = []
        self._count = 0
        self.kept: deque[Told] = deque(maxlen=KEPT)

    def tell(self, words: str, what: What, at: str) -> Told:
        """Said again, it counts once, with the later time."""
        self._count += 1
        told = Told(number=self._count, what=what, words=words, at=at)
        same = [one for one in self._open if (one.what, one.words) == (what, words)]
        for one in same:
            if one in self.kept:  # it may be open for longer than it is kept
                self.kept.remove(one)
        gone = same + [one for one in self._open if what in _PASSING and one.what in _PASSING]
        self._open = [one for one in self._open if one not in gone]
        self._open.append(told)
        if len(self._open) > MOST_OPEN:
            self._open.remove(next((one for one in self._open if not one.held), told))
        self.kept.append(told)
        return told

    @property
    def top(self) -> Told | None:
        """The most urgent; of several the last that was said."""
        return min(self._open, key=lambda one: (_ORDER.index(one.level), -one.number), default=None)

    @property
    def newest(self) -> Told | None:
        return self._open[-1] if self._open else None

    @property
    def count(self) -> int:
        return len(self._open)

    @property
    def urgent(self) -> bool:
        """Whether something of the highest level was not acknowledged."""
        return any(one.level is Level.ACT_NOW for one in self._open)

    def dismiss(self, number: int) -> None:
        """This one was seen; no other. What is held stays."""
        self._open = [one for one in self._open if one.number != number or one.held]

    def settle(self, *whats: What) -> None:
        """What these were about is over."""
        self._open = [one for one in self._open if one.what not in whats]

    def put_away(self) -> None:
        """Something else begins: all but what has to be acknowledged."""
        self._open = [one for one in self._open if one.level is Level.ACT_NOW]
