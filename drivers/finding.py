"""Which dialect a supply speaks, found by asking: nothing is switched, set, cleared or reset.

What is sent is questions, and where outputs are chosen by a message of its own that one, which is put back: both are
housekeeping of a session. What no question can tell is asked of the user, not guessed: see `Found.questions`; and what
follows from a question without having been sent is listed: see `Found.untried`.
"""

import time
from collections.abc import Callable
from dataclasses import dataclass

from drivers.dialect import Dialect, DialectError
from drivers.finding_asking import Answered, Asking, OutOfTime
from drivers.finding_assembly import Assembly
from drivers.finding_line import Line, Open, Strange
from drivers.finding_search import Search
from drivers.foreign import inert
from drivers.identifying import gaps_of
from drivers.supply import UNUSABLE, SupplyError

WITHIN_S = 7.5
"""For the asking; opening the supply in the dialect that was found takes more, 10 s together."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """What came of it. `dialect`: None where there is none, then `why` says so in plain words.

    `questions`: what no question to the instrument tells. `untried`: what follows from its answers but was not sent.
    `remarks`: what else is to be known. `answered`: every question with its answer, in order; `sent`: every message.
    """

    identity: str = ""
    dialect: Dialect | None = None
    why: str = ""
    questions: tuple[str, ...] = ()
    untried: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    answered: tuple[Answered, ...] = ()
    sent: tuple[str, ...] = ()
    latency_s: float | None = None
    took_s: float = 0.0

    @property
    def usable(self) -> bool:
        """Whether runs may be made with it."""
        return self.dialect is not None and not UNUSABLE & gaps_of(self.dialect)


def find_dialect(
    open_session: Open,
    now: Callable[[], float],
    *,
    wait: Callable[[float], None] | None = None,
    within_s: float = WITHIN_S,
    output: int = 1,
) -> Found:
    """Never raises: what is no supply, or not there, is a Found without a dialect. `output`: the one whose range is of
    interest."""
    began_s = now()
    sleep = wait or (lambda until_s: time.sleep(max(0.0, until_s - now())))
    line = Line(open_session, now, sleep)
    asking = Asking(line, began_s + within_s)
    parts = Assembly(asking)
    search = Search(asking, parts)
    dialect, why = None, ""
    try:
        line.meet()
        asking.meet()
        dialect = search.find()
        search.ask_range(dialect, output)
        dialect = search.with_clients(dialect)
        asking.drain()
    except Strange as strange:
        why = str(strange)
    except OutOfTime:
        why = f'"{line.identity}" answers too slowly: {within_s:g} s were not enough to ask what matters'
    except SupplyError as error:
        why = inert(error.what)
    except DialectError as error:
        why = f'what "{line.identity}" answers makes no whole: {error}'
    finally:
        line.close()
    return Found(
        identity=line.identity,
        dialect=dialect,
        why=why,
        questions=tuple(parts.questions) if dialect is not None else (),
        untried=tuple(parts.untried) if dialect is not None else (),
        remarks=tuple(parts.remarks),
        answered=tuple(asking.answered),
        sent=tuple(line.sent),
        latency_s=line.latency_s if line.identity_s else None,
        took_s=now() - began_s,
    )
