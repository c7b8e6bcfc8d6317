"""Questions to an instrument of which nothing is known: how its lines end, how soon it answers, and what it answers.

Only questions, and what chooses an output, are sent. After a question that got no answer the session is of no use until
the instrument's identity came back: what arrives before that is a late answer, and taken for one. Everything ends at a
deadline.
"""

import contextlib
import statistics
from collections.abc import Callable
from typing import NamedTuple, TypeAlias

import msgspec

from drivers import scpi
from drivers.dialect import Errors, Link
from drivers.exchange import QUIET_S, Session
from drivers.finding_parts import ERROR_QUERIES, GAPS_S, LEAST_GAP_S, NONSENSE, TERMINATIONS
from drivers.foreign import inert
from drivers.supply import SupplyError, SupplyGarbled, SupplyLost, SupplyTimeout

FIRST_REPLY_S = 1.0
"""s that an unknown instrument gets for its first answer; two slow ones in a row still end before the deadline."""
_LEAST_WAIT_S = 0.05
MEASURED_WITHIN_S = 0.3
"""A measurement may take longer than what is only looked up."""
_IDENTITY = "*IDN?"

Open: TypeAlias = Callable[[Link, float], Session]
"""A session whose lines end as the Link says; replies that nothing ends are asked for by their bytes."""


class Strange(Exception):
    """No supply that could be spoken to; the text says why, in plain words."""


class OutOfTime(Exception):
    """The deadline has come."""


class Answered(NamedTuple):
    """One question with its answer, None for none, and how long it took."""

    unit: str
    reply: str | None
    took_s: float


class Asking:
    """One instrument, from the first line on. `wait` returns at a time of `now`."""

    def __init__(
        self, open_session: Open, now: Callable[[], float], wait: Callable[[float], None], until_s: float
    ) -> None:
        self.now, self._wait = now, wait
        self._open, self._until_s = open_session, until_s
        self._session: Session | None = None
        self._free_s = self._sent_s = now()
        self._heard_s = 0.0
        self._known: dict[str, str | None] = {}
        self._complaint: str | None = None
        self._ahead = False
        self._reply_s = FIRST_REPLY_S
        self.answered: list[Answered] = []
        self.sent: list[str] = []
        self.link = Link(termination="\n", compound=False)
        self.errors = Errors(form="none")
        self.identity = ""
        self.identity_s: list[float] = []

    @property
    def latency_s(self) -> float:
        """The usual time to an answer."""
        return statistics.median(self.identity_s)

    def meet(self) -> None:
        """Line ends, echo, identity, latency, gap. Raises Strange."""
        for termination in TERMINATIONS:
            if self._first_words(termination):
                break
        else:
            raise Strange(
                f"nothing that it takes for a question: it answered {_IDENTITY} within {FIRST_REPLY_S:g} s with none "
                "of four line ends. It may be off, no instrument, at another speed, or held by another program"
            )
        if self.link.termination and not self.link.reply_ends:
            self._do_without_ends(self.link.termination)
        self._find_gap()
        self._see_whether_it_understands()
        self._errors_and_compound()

    def ask(self, unit: str) -> str | None:
        """The answer, None where it has none to give. Each question is asked once. Raises OutOfTime, SupplyLost."""
        if unit not in self._known:
            if self.now() > self._until_s:
                raise OutOfTime
            self._known[unit] = reply = self._reply_to(unit)
            self.answered.append(Answered(unit, reply, self._heard_s))
        return self._known[unit]

    def number(self, unit: str) -> float | None:
        """The answer as a number, with its unit taken off where answers have one."""
        reply = self.ask(unit)
        with contextlib.suppress(ValueError):
            return None if reply is None else scpi.number(reply, self.unit_of(reply))
        return None

    def unit_of(self, reply: str) -> str:
        """ "V" or "A" where an answer ends so, else "". Once one does, all do."""
        last = reply.strip()[-1:]
        return last if last in ("V", "A") else ""

    def chosen_after(self, message: str, query: str) -> str | None:
        """Chooses an output: housekeeping of the session, and all that is sent but questions. Returns what the query
        for it answers then."""
        if self.now() > self._until_s:
            raise OutOfTime
        self._send(message)
        self._free_s = self.now() + self.link.gap_s
        return self._plainly(query)

    def drain(self) -> None:
        """The error queue, as far as there is time."""
        for _ in range(self.errors.deepest if self.errors.form != "none" else 0):
            if self.now() > self._until_s:
                return
            reply = self._plainly(self.errors.ask)
            if reply is None or reply.strip().split(",")[0].lstrip("+-").strip("0") == "":
                return

    def second_client_is_served(self) -> bool:
        """Whether another session is answered while this one is open."""
        if self.now() > self._until_s:
            raise OutOfTime
        try:
            other = self._open(self.link, max(3 * self.latency_s, 0.2))
        except SupplyError:
            return False
        try:
            self._wait(self._free_s)
            other.write(_IDENTITY)
            return bool(other.read() if self.link.reply_ends else other.read_until_quiet(QUIET_S))
        except SupplyError:
            return False
        finally:
            other.close()

    def close(self) -> None:
        if self._session is not None:
            self._session.close()
            self._session = None

    def _first_words(self, termination: str) -> bool:
        """Whether it answers at all with this line end; then its ends, echo and identity are known."""
        self.close()
        gap_s = 0.0 if termination else LEAST_GAP_S
        self.link = Link(termination=termination, reply_termination="", compound=False, gap_s=gap_s)
        self._session = session = self._open(self.link, FIRST_REPLY_S)
        began_s, heard = self.now(), ""
        try:
            self._send(_IDENTITY)
            while heard.strip() in ("", _IDENTITY):
                heard += session.read_until_quiet(QUIET_S).decode("latin-1")
        except (SupplyTimeout, SupplyGarbled) as error:
            if not heard:
                return False
            raise Strange(
                f"it sends back what it is sent and answers nothing ({_IDENTITY} came back as it was): a printer or a "
                "terminal does that, no supply"
            ) from error
        self._learn_ends(heard, began_s)
        return True

    def _do_without_ends(self, termination: str) -> None:
        """What ends no reply seldom wants its messages ended; what is sent for nothing would come back as an echo."""
        if not self._first_words(""):
            self._first_words(termination)

    def _learn_ends(self, heard: str, began_s: float) -> None:
        echo = heard.startswith(_IDENTITY)
        said = heard.removeprefix(_IDENTITY).lstrip("\r\n") if echo else heard
        if said.startswith("HTTP/") or "<html" in said.lower():
            raise Strange("a web server answers there, no instrument: the port may be another")
        ends = "\r\n" if said.endswith("\r\n") else said[-1:] if said[-1:] in ("\n", "\r") else ""
        try:
            self.identity = scpi.identity(said, 1)
        except ValueError as error:
            raise Strange(f"what answers does not identify itself ({inert(str(error))})") from error
        if "?" in self.identity and not said.strip().isprintable():
            raise Strange(f'what answers does not identify itself: "{self.identity[:40]}"')
        self._reply_s = max(self.now() - began_s, _LEAST_WAIT_S)
        self._now_link(reply_termination=ends, echo=echo)

    def _find_gap(self) -> None:
        """The shortest gap at which three questions in a row are answered; and how soon."""
        for gap_s in GAPS_S:
            if gap_s < self.link.gap_s:
                continue
            self._now_link(gap_s=gap_s)
            if self._three_in_a_row():
                self._leave_alone_unended()
                self._ahead = not gap_s and bool(self.link.reply_ends) and self._takes_two_at_once()
                return
        raise Strange(f'"{self.identity}" identified itself once, and then not three times in a row')

    def _leave_alone_unended(self) -> None:
        """Where nothing ends a reply it was heard out until the line was quiet: no shorter gap was tried."""
        if not self.link.reply_ends:
            self._now_link(gap_s=max(self.link.gap_s, QUIET_S))

    def _three_in_a_row(self) -> bool:
        self._fresh()
        took_s = []
        for _ in range(3):
            try:
                self._send(_IDENTITY)
                if self._hear(max(3 * self._reply_s, 0.3)) != self.identity:
                    return False
            except (SupplyTimeout, SupplyGarbled):
                return False
            took_s.append(self._heard_s)
        self.identity_s = took_s
        self._reply_s = max(took_s)
        return True

    def _takes_two_at_once(self) -> bool:
        """Whether a second question may be on its way while the first is answered. Then nothing has to be waited for:
        the identity comes behind every answer, and alone where there is none."""
        try:
            self._send(_IDENTITY)
            self._send(_IDENTITY)
            return [self._hear(self._patience_s), self._hear(self._patience_s)] == [self.identity] * 2
        except (SupplyTimeout, SupplyGarbled):
            self._fresh()
            return False

    def _see_whether_it_understands(self) -> None:
        """Raises Strange for what answers anything, or answers late."""
        self._send(NONSENSE)
        try:
            reply = self._hear(self._patience_s)
        except (SupplyTimeout, SupplyGarbled):
            self._come_back()
            return
        if reply == self.identity:
            self._send(_IDENTITY)
            after = self._heard_or_none(self._patience_s)
            if after == self.identity:
                raise Strange(f'it answers any question with its identification, "{self.identity}"')
            raise Strange(f'"{self.identity}" answers late by one: each answer belongs to the question before')
        with contextlib.suppress(ValueError):
            scpi.number(reply)
            raise Strange(
                f'"{self.identity}" answers a question that no instrument knows with {inert(reply[:20])}: none of '
                "its answers means anything"
            )
        self._complaint = reply
        self._send(_IDENTITY)
        if self._heard_or_none(self._patience_s) != self.identity:
            raise Strange(f'"{self.identity}" answers late by one: each answer belongs to the question before')

    def _errors_and_compound(self) -> None:
        for query in ERROR_QUERIES:
            reply = self.ask(query)
            form = None if reply is None else _error_form(reply)
            if form is None:
                continue
            self.errors = Errors(form=form, ask=query, deepest=32)  # type: ignore[arg-type]
            self.drain()
            if self.link.reply_ends and form == "scpi":
                self._try_compound(f"{query};:{query}", lambda text: scpi.after_error(text) is not None)
            return

    def try_compound(self, first: str, second: str) -> None:
        """Two questions in one message, each of which it answers. Only where the error queue did not tell already."""
        if self.errors.form != "scpi" and self.link.reply_ends and self.link.termination:
            self._try_compound(f"{first};:{second}", lambda text: len(scpi.replies(text, 2)) == 2)

    def _try_compound(self, message: str, is_both: Callable[[str], bool]) -> None:
        reply = self.ask(message)
        with contextlib.suppress(ValueError):
            if reply is not None and is_both(reply):
                self._now_link(compound=True)

    @property
    def _patience_s(self) -> float:
        return max(_LEAST_WAIT_S, 1.5 * self._reply_s)

    def _reply_to(self, unit: str) -> str | None:
        if self.link.compound and self._tells_errors and ";" not in unit:
            return self._behind_errors(unit)
        if self._ahead:
            is_one = ";" not in unit
            reply = self._before_errors(unit) if is_one and self._tells_errors else self._before_identity(unit)
        else:
            reply = self._plainly(unit)
        return None if reply is not None and reply == self._complaint else reply

    def _behind_errors(self, unit: str) -> str | None:
        """In one message behind the query for the error queue, which makes sure of an answer."""
        text = self._plainly(scpi.join(self.errors.ask, unit))
        with contextlib.suppress(ValueError):
            return None if text is None else scpi.after_error(text)
        return None

    def _before_errors(self, unit: str) -> str | None:
        """As before the identity, and the queue is drained by the way."""
        try:
            self._send(unit)
            self._send(self.errors.ask)
            first = self._hear(self._patience_s)
            if _is_entry(first):
                return None
            if not _is_entry(self._hear(self._patience_s)):
                raise SupplyGarbled(self.identity, "something else where its error queue was asked for")
        except (SupplyTimeout, SupplyGarbled):
            self._fresh()
            return None
        return first

    def _before_identity(self, unit: str) -> str | None:
        try:
            self._send(unit)
            self._send(_IDENTITY)
            replies = self._until(self._is_identity)
        except (SupplyTimeout, SupplyGarbled):
            self._fresh()
            return None
        return replies[0] if replies else None

    def _plainly(self, unit: str) -> str | None:
        self._send(unit)
        try:
            return self._hear(max(self._patience_s, MEASURED_WITHIN_S if unit.startswith("MEAS") else 0.0))
        except SupplyTimeout:
            return self._come_back()
        except SupplyGarbled:
            self._fresh()
            return None

    def _come_back(self) -> str | None:
        """After silence: its error queue, else its identity is asked for, whose answers are like no other. One that
        comes before was late, so that more patience is needed from now on."""
        try:
            self._send(self.errors.ask if self._tells_errors else _IDENTITY)
            late = self._until(_is_entry if self._tells_errors else self._is_identity)
        except (SupplyTimeout, SupplyGarbled):
            self._fresh()
            return None
        if late:
            self._reply_s *= 2.0
        return late[0] if late else None

    def _until(self, is_it: Callable[[str], bool]) -> list[str]:
        """What comes before an answer that is known by its form."""
        before: list[str] = []
        while not is_it(reply := self._hear(3.0 * self._patience_s)):
            before.append(reply)
            if len(before) > 8:
                raise SupplyGarbled(self.identity, "it does not come back to what was asked")
        return before

    def _is_identity(self, reply: str) -> bool:
        return reply == self.identity

    @property
    def _tells_errors(self) -> bool:
        return self.errors.form == "scpi"

    def _now_link(self, **found: object) -> None:
        self.link = msgspec.structs.replace(self.link, **found)

    def _fresh(self) -> None:
        self.close()
        self._session = self._open(self.link, max(FIRST_REPLY_S, self._patience_s))
        self._free_s = self.now() + self.link.gap_s

    def _send(self, message: str) -> None:
        session = self._session
        assert session is not None
        if self.link.gap_s and self.now() < self._free_s:
            self._wait(self._free_s)
        self.sent.append(message)
        self._sent_s = self.now()
        session.write(message)

    def _heard_or_none(self, timeout_s: float) -> str | None:
        try:
            return self._hear(timeout_s)
        except (SupplyTimeout, SupplyGarbled):
            return None

    def _hear(self, timeout_s: float) -> str:
        """One answer; what was sent and comes back before it is left out. Raises SupplyError."""
        session = self._session
        assert session is not None
        session.set_timeout(timeout_s)
        try:
            while True:
                text = session.read() if self.link.reply_ends else session.read_until_quiet(QUIET_S).decode("latin-1")
                self._heard_s = self.now() - self._sent_s
                if self.link.echo and not self.link.reply_ends:
                    text = text.removeprefix(self.sent[-1] + self.link.termination).removeprefix(self.sent[-1])
                    if not text:
                        continue
                if not (self.link.echo and text.strip() in self.sent[-2:]):
                    return text if not self.link.reply_ends else text.strip("\r\n")
        finally:
            self._free_s = self.now() + self.link.gap_s


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


def lost(error: SupplyError) -> str:
    """Why nothing could be asked, in words."""
    what = error.what if isinstance(error, SupplyLost) else str(error.what)
    return inert(what)
