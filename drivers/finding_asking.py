"""Questions to an instrument whose line is known, and its answers.

Only questions, and what chooses an output, are sent. After a question that got no answer the session is of no use until
its error queue, or its identity, came back: what arrives before that is a late answer, and taken for one. Everything
ends at a deadline.
"""

import contextlib
from collections.abc import Callable
from typing import NamedTuple

from drivers import scpi
from drivers.dialect import Errors
from drivers.finding_line import IDENTITY, Line, Strange
from drivers.finding_parts import ERROR_QUERIES, NONSENSE
from drivers.foreign import inert
from drivers.supply import SupplyGarbled, SupplyTimeout

MEASURED_WITHIN_S = 0.3
"""A measurement may take longer than what is only looked up."""
SURELY_WITHIN_S = 1.0
"""s for an answer that is sure to come, because something is asked with it that is always answered."""


class OutOfTime(Exception):
    """The deadline has come."""


class Answered(NamedTuple):
    """One question with its answer, None for none, and how long it took."""

    unit: str
    reply: str | None
    took_s: float


class Asking:
    """Each question is asked once. `until_s`: the deadline."""

    def __init__(self, line: Line, until_s: float) -> None:
        self._line, self._until_s = line, until_s
        self._known: dict[str, str | None] = {}
        self._complaint: str | None = None
        self.answered: list[Answered] = []
        self.errors = Errors(form="none")

    @property
    def line(self) -> Line:
        return self._line

    def refuse_late(self) -> None:
        """Raises OutOfTime."""
        if self._line.now() > self._until_s:
            raise OutOfTime

    def meet(self) -> None:
        """Whether it understands what it is asked, its error queue, and whether several go in one message. Raises
        Strange."""
        self._see_whether_it_understands()
        self._errors_and_compound()

    def ask(self, unit: str) -> str | None:
        """The answer, None where it has none to give. Each question is asked once. Raises OutOfTime, SupplyLost."""
        if unit not in self._known:
            self.refuse_late()
            self._known[unit] = reply = self._reply_to(unit)
            self.answered.append(Answered(unit, reply, self._line.heard_s))
        return self._known[unit]

    def is_known_silent(self, unit: str) -> bool:
        """Whether it was asked and got no answer; asks nothing."""
        return unit in self._known and self._known[unit] is None

    def heard(self, unit: str) -> str | None:
        """The answer, if it was asked; asks nothing."""
        return self._known.get(unit)

    def number(self, unit: str) -> float | None:
        """The answer as a number, with its unit taken off where answers have one."""
        reply = self.ask(unit)
        with contextlib.suppress(ValueError):
            return None if reply is None else scpi.number(reply, self.unit_of(reply))
        return None

    def unit_of(self, reply: str) -> str:
        """ "V" or "A" where an answer ends so, else ""."""
        last = reply.strip()[-1:]
        return last if last in ("V", "A") else ""

    def chosen_after(self, message: str, query: str) -> str | None:
        """Chooses an output: housekeeping of the session, and all that is sent but questions. Returns what the query
        for it answers then."""
        self.refuse_late()
        self._line.send(message)
        self._line.free_s = self._line.now() + self._line.link.gap_s
        return self._plainly(query)

    def drain(self) -> None:
        """The error queue, as far as there is time."""
        for _ in range(self.errors.deepest if self.errors.form != "none" else 0):
            if self._line.now() > self._until_s:
                return
            reply = self._plainly(self.errors.ask)
            if reply is None or reply.strip().split(",")[0].lstrip("+-").strip("0") == "":
                return

    def _see_whether_it_understands(self) -> None:
        """Raises Strange for what answers anything, or answers late."""
        self._line.send(NONSENSE)
        try:
            reply = self._line.hear(self._line.patience_s)
        except (SupplyTimeout, SupplyGarbled):
            self._come_back()
            return
        if reply == self._line.identity:
            self._line.send(IDENTITY)
            after = self._line.heard_or_none(self._line.patience_s)
            if after == self._line.identity:
                raise Strange(f'it answers any question with its identification, "{self._line.identity}"')
            raise Strange(f'"{self._line.identity}" answers late by one: each answer belongs to the question before')
        with contextlib.suppress(ValueError):
            scpi.number(reply)
            raise Strange(
                f'"{self._line.identity}" answers a question that no instrument knows with {inert(reply[:20])}: none '
                "of its answers means anything"
            )
        self._complaint = reply
        self._line.send(IDENTITY)
        if self._line.heard_or_none(self._line.patience_s) != self._line.identity:
            raise Strange(f'"{self._line.identity}" answers late by one: each answer belongs to the question before')

    def _errors_and_compound(self) -> None:
        for query in ERROR_QUERIES:
            reply = self.ask(query)
            form = None if reply is None else _error_form(reply)
            if form is None:
                continue
            self.errors = Errors(form=form, ask=query, deepest=32)  # type: ignore[arg-type]
            self.drain()
            if self._line.link.reply_ends and form == "scpi":
                self._try_compound(f"{query};:{query}", lambda text: scpi.after_error(text) is not None)
            return

    def try_compound(self, first: str, second: str) -> None:
        """Two questions in one message, each of which it answers. Only where the error queue did not tell already."""
        if self.errors.form != "scpi" and self._line.link.reply_ends and self._line.link.termination:
            self._try_compound(f"{first};:{second}", lambda text: len(scpi.replies(text, 2)) == 2)

    def _try_compound(self, message: str, is_both: Callable[[str], bool]) -> None:
        reply = self.ask(message)
        with contextlib.suppress(ValueError):
            if reply is not None and is_both(reply):
                self._line.now_link(compound=True)

    def _reply_to(self, unit: str) -> str | None:
        if self._line.link.compound and self._tells_errors and ";" not in unit:
            return self._behind_errors(unit)
        if self._line.ahead:
            is_one = ";" not in unit
            reply = self._before_errors(unit) if is_one and self._tells_errors else self._before_identity(unit)
        else:
            reply = self._plainly(unit)
        return None if reply is not None and reply == self._complaint else reply

    def _behind_errors(self, unit: str) -> str | None:
        """In one message behind the query for the error queue, which makes sure of an answer."""
        text = self._plainly(scpi.join(self.errors.ask, unit), SURELY_WITHIN_S)
        with contextlib.suppress(ValueError):
            return None if text is None else scpi.after_error(text)
        return None

    def _before_errors(self, unit: str) -> str | None:
        """As before the identity, and the queue is drained by the way."""
        try:
            self._line.send(unit)
            self._line.send(self.errors.ask)
            first = self._line.hear(SURELY_WITHIN_S)
            if _is_entry(first):
                return None
            if not _is_entry(self._line.hear(SURELY_WITHIN_S)):
                raise SupplyGarbled(self._line.identity, "something else where its error queue was asked for")
        except (SupplyTimeout, SupplyGarbled):
            self._line.fresh()
            return None
        return first

    def _before_identity(self, unit: str) -> str | None:
        try:
            self._line.send(unit)
            self._line.send(IDENTITY)
            replies = self._until(self._is_identity)
        except (SupplyTimeout, SupplyGarbled):
            self._line.fresh()
            return None
        return replies[0] if replies else None

    def _plainly(self, unit: str, within_s: float = 0.0) -> str | None:
        self._line.send(unit)
        try:
            return self._line.hear(max(self._line.patience_s, within_s, MEASURED_WITHIN_S if "MEAS" in unit else 0.0))
        except SupplyTimeout:
            return self._come_back()
        except SupplyGarbled:
            self._line.fresh()
            return None

    def _come_back(self) -> str | None:
        """After silence: its error queue, else its identity is asked for, whose answers are like no other. One that
        comes before was late, so that more patience is needed from now on."""
        try:
            self._line.send(self.errors.ask if self._tells_errors else IDENTITY)
            late = self._until(_is_entry if self._tells_errors else self._is_identity)
        except (SupplyTimeout, SupplyGarbled):
            self._line.fresh()
            return None
        if late:
            self._line.reply_s *= 2.0
        return late[0] if late else None

    def _until(self, is_it: Callable[[str], bool]) -> list[str]:
        """What comes before an answer that is known by its form."""
        before: list[str] = []
        while not is_it(reply := self._line.hear(max(3.0 * self._line.patience_s, MEASURED_WITHIN_S))):
            before.append(reply)
            if len(before) > 8:
                raise SupplyGarbled(self._line.identity, "it does not come back to what was asked")
        return before

    def _is_identity(self, reply: str) -> bool:
        return reply == self._line.identity

    @property
    def _tells_errors(self) -> bool:
        return self.errors.form == "scpi"


def _is_entry(reply: str) -> bool:
    """Of an error queue, and nothing behind it."""
    with contextlib.suppress(ValueError):
        return scpi.after_error(reply) is None
    return False


def _error_form(reply: str) -> str | None:
    with contextlib.suppress(ValueError):
        scpi.error(reply)
        return "scpi"
    with contextlib.suppress(ValueError):
        return "number" if scpi.number(reply).is_integer() else None
    return None
