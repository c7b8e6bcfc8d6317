"""The line to an instrument of which nothing is known: how messages and replies end on it, whether it echoes, how soon
an answer comes, and how long it wants to be left alone.

Only one question is asked here: who it is.
"""

import statistics
from collections.abc import Callable
from typing import TypeAlias

import msgspec

from drivers import scpi
from drivers.dialect import Link
from drivers.exchange import QUIET_S, Session
from drivers.finding_parts import GAPS_S, LEAST_GAP_S, TERMINATIONS
from drivers.foreign import inert
from drivers.supply import SupplyError, SupplyGarbled, SupplyTimeout

FIRST_REPLY_S = 1.0
"""s that an unknown instrument gets for its first answer; one that is silent at every line end is told in time."""
_LEAST_WAIT_S = 0.05
_LEAST_PATIENCE_S = 0.15
"""s for one of three in a row; one that comes later makes the gap longer, which does no harm."""
IDENTITY = "*IDN?"

Open: TypeAlias = Callable[[Link, float], Session]
"""A session whose lines end as the Link says; replies that nothing ends are asked for by their bytes."""


class Strange(Exception):
    """No supply that could be spoken to; the text says why, in plain words."""


class Line:
    """`wait` returns at a time of `now`. `ahead`: a second question may be on its way while the first is answered.
    `reply_s`: the longest that an answer took; `heard_s`: the last one's; `identity_s`: those to who it is."""

    def __init__(self, open_session: Open, now: Callable[[], float], wait: Callable[[float], None]) -> None:
        self.now, self._wait, self._open = now, wait, open_session
        self._session: Session | None = None
        self.free_s = self._sent_s = now()
        self.heard_s = 0.0
        self.reply_s = FIRST_REPLY_S
        self.ahead = False
        self.sent: list[str] = []
        self.link = Link(termination="\n", compound=False)
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
                f"nothing that it takes for a question: it answered {IDENTITY} within {FIRST_REPLY_S:g} s with none of "
                "four line ends. It may be off, no instrument, at another speed, or held by another program"
            )
        if self.link.termination and not self.link.reply_ends:
            self._do_without_ends(self.link.termination)
        self._find_gap()

    def _first_words(self, termination: str) -> bool:
        """Whether it answers at all with this line end; then its ends, echo and identity are known."""
        self.close()
        gap_s = 0.0 if termination else LEAST_GAP_S
        self.link = Link(termination=termination, reply_termination="", compound=False, gap_s=gap_s)
        self._session = session = self._open(self.link, FIRST_REPLY_S)
        began_s, heard = self.now(), ""
        try:
            self.send(IDENTITY)
            while heard.strip() in ("", IDENTITY):
                heard += session.read_until_quiet(QUIET_S).decode("latin-1")
        except (SupplyTimeout, SupplyGarbled) as error:
            if not heard:
                return False
            raise Strange(
                f"it sends back what it is sent and answers nothing ({IDENTITY} came back as it was): a printer or a "
                "terminal does that, no supply"
            ) from error
        self._learn_ends(heard, began_s)
        return True

    def _do_without_ends(self, termination: str) -> None:
        """What ends no reply seldom wants its messages ended; what is sent for nothing would come back as an echo."""
        if not self._first_words(""):
            self._first_words(termination)

    def _learn_ends(self, heard: str, began_s: float) -> None:
        echo = heard.startswith(IDENTITY)
        said = heard.removeprefix(IDENTITY).lstrip("\r\n") if echo else heard
        if said.startswith("HTTP/") or "<html" in said.lower():
            raise Strange("a web server answers there, no instrument: the port may be another")
        ends = "\r\n" if said.endswith("\r\n") else said[-1:] if said[-1:] in ("\n", "\r") else ""
        try:
            self.identity = scpi.identity(said, 1)
        except ValueError as error:
            raise Strange(f"what answers does not identify itself ({inert(str(error))})") from error
        if "?" in self.identity and not said.strip().isprintable():
            raise Strange(f'what answers does not identify itself: "{self.identity[:40]}"')
        self.reply_s = max(self.now() - began_s, _LEAST_WAIT_S)
        self.now_link(reply_termination=ends, echo=echo)

    def _find_gap(self) -> None:
        """The shortest gap at which three questions in a row are answered; and how soon."""
        for gap_s in GAPS_S:
            if gap_s < self.link.gap_s:
                continue
            self.now_link(gap_s=gap_s)
            if self._three_in_a_row():
                self._leave_alone_unended()
                self.ahead = not gap_s and bool(self.link.reply_ends) and self._takes_two_at_once()
                return
        raise Strange(f'"{self.identity}" identified itself once, and then not three times in a row')

    def _leave_alone_unended(self) -> None:
        """Where nothing ends a reply it was heard out until the line was quiet: no shorter gap was tried."""
        if not self.link.reply_ends:
            self.now_link(gap_s=max(self.link.gap_s, QUIET_S))

    def _three_in_a_row(self) -> bool:
        self.fresh()
        took_s = []
        for _ in range(3):
            try:
                self.send(IDENTITY)
                if self.hear(max(2 * self.reply_s, _LEAST_PATIENCE_S)) != self.identity:
                    return False
            except (SupplyTimeout, SupplyGarbled):
                return False
            took_s.append(self.heard_s)
        self.identity_s = took_s
        self.reply_s = max(took_s)
        return True

    def _takes_two_at_once(self) -> bool:
        """Whether a second question may be on its way while the first is answered. Then nothing has to be waited for:
        the identity comes behind every answer, and alone where there is none."""
        try:
            self.send(IDENTITY)
            self.send(IDENTITY)
            return [self.hear(self.patience_s), self.hear(self.patience_s)] == [self.identity] * 2
        except (SupplyTimeout, SupplyGarbled):
            self.fresh()
            return False

    @property
    def patience_s(self) -> float:
        return max(_LEAST_WAIT_S, 1.5 * self.reply_s)

    def second_client_is_served(self) -> bool:
        """Whether another session is answered while this one is open."""
        try:
            other = self._open(self.link, max(3 * self.latency_s, 0.2))
        except SupplyError:
            return False
        try:
            self._wait(self.free_s)
            other.write(IDENTITY)
            return bool(other.read() if self.link.reply_ends else other.read_until_quiet(QUIET_S))
        except SupplyError:
            return False
        finally:
            other.close()

    def close(self) -> None:
        if self._session is not None:
            self._session.close()
            self._session = None

    def now_link(self, **found: object) -> None:
        self.link = msgspec.structs.replace(self.link, **found)

    def fresh(self) -> None:
        self.close()
        self._session = self._open(self.link, max(FIRST_REPLY_S, self.patience_s))
        self.free_s = self.now() + self.link.gap_s

    def send(self, message: str) -> None:
        session = self._session
        assert session is not None
        if self.link.gap_s and self.now() < self.free_s:
            self._wait(self.free_s)
        self.sent.append(message)
        self._sent_s = self.now()
        session.write(message)

    def heard_or_none(self, timeout_s: float) -> str | None:
        try:
            return self.hear(timeout_s)
        except (SupplyTimeout, SupplyGarbled):
            return None

    def hear(self, timeout_s: float) -> str:
        """One answer; what was sent and comes back before it is left out. Raises SupplyError."""
        session = self._session
        assert session is not None
        session.set_timeout(timeout_s)
        try:
            while True:
                text = session.read() if self.link.reply_ends else session.read_until_quiet(QUIET_S).decode("latin-1")
                self.heard_s = self.now() - self._sent_s
                if self.link.echo and not self.link.reply_ends:
                    text = text.removeprefix(self.sent[-1] + self.link.termination).removeprefix(self.sent[-1])
                    if not text:
                        continue
                if not (self.link.echo and text.strip() in self.sent[-2:]):
                    return text if not self.link.reply_ends else text.strip("\r\n")
        finally:
            self.free_s = self.now() + self.link.gap_s
