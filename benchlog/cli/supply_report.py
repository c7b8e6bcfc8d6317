"""What came of asking one supply: asked, measured, kept, and told in words or as plain values."""

from pathlib import Path
from textwrap import fill
from typing import TYPE_CHECKING, Any

import msgspec

from benchlog.bench.dialect_words import dialect_in_words
from benchlog.cli.options import say
from benchlog.cli.supply_words import ABOUT_GAPS, MEASURED_NEXT, NOT_MEASURED, WIDTH, gaps, working
from benchlog.errors import Refused
from benchlog.quantities import show

if TYPE_CHECKING:
    from benchlog.cli.supply_settling import Settled
    from benchlog.ledger.store import Ledger
    from drivers.dialect import Dialect
    from drivers.finding import Found
    from drivers.finding_measured import Measured
    from drivers.finding_tried import Tried


class Report:
    """What came of asking one supply."""

    def __init__(self, resource: str, output: int, *, settles: bool = False) -> None:
        self.resource, self._output, self._settles = resource, output, settles
        self._found: Found | None = None
        self.measured: Measured | None = None
        self._tried: Tried | None = None
        self._problem = ""
        self.dialect: Dialect | None = None
        self.settled: Settled | None = None
        self._told = False
        self._kept = ""

    @property
    def usable(self) -> bool:
        return self.measured is not None

    def take(self, told: str | None, ranges: tuple[float, float] | None, within_s: float, *, tries: bool) -> None:
        """Asks, and measures what was found. Raises Refused for a dialect that can't be read, or a supply in use."""
        from benchlog.bench.supply_lock import hold

        with hold(self.resource, what='"benchlog supply", which asks it'):
            self._take(told, ranges, within_s, tries=tries)

    def _take(self, told: str | None, ranges: tuple[float, float] | None, within_s: float, *, tries: bool) -> None:
        from benchlog.bench.opening import ask_supply, measure_supply, try_supply
        from benchlog.clock import SystemClock
        from drivers.dialect import DialectError, Ranges, check
        from drivers.supply import SupplyError

        now = SystemClock().now
        if told is not None:
            self.dialect = _told(told)
        else:
            self._found = ask_supply(self.resource, now, within_s, self._output)
            self.dialect, self._problem = self._found.dialect, self._found.why
        if self.dialect is None:
            return
        if ranges is not None:
            count = self.dialect.outputs.count
            known = Ranges(volts_max=(ranges[0],) * count, amps_max=(ranges[1],) * count)
            self.dialect = msgspec.structs.replace(self.dialect, ranges=known)
        try:
            check(self.dialect)
            if tries:
                self._tried = try_supply(self.resource, now, self.dialect)
                self.dialect = self._tried.dialect
            self.measured = measure_supply(self.resource, now, self.dialect, output=self._output, found=self._found)
        except DialectError as error:
            self._problem = str(error)
        except SupplyError as error:
            self._problem = error.what if error.resource == self.resource else str(error)

    def keep(self, ledger: Path, *, told: bool) -> None:
        """What was found, for the runs on this supply. What can't be kept is said and changes nothing."""
        if self.measured is None or self.dialect is None:
            return
        from benchlog.cli.supply_settling import kept_settling
        from benchlog.ledger.store import Ledger

        self._told = told
        with Ledger.open(ledger) as book:
            self.settled = kept_settling(book, self.resource, self.measured.capabilities)
            self.keep_in(book)

    def keep_in(self, book: "Ledger") -> None:
        """Raises LedgerError."""
        from benchlog.ledger.supplies import FOUND, TOLD, keep_supply
        from drivers.dialect import to_json

        assert self.dialect is not None
        assert self.measured is not None
        self._kept = keep_supply(
            book,
            resource=self.resource,
            identity=self.measured.capabilities.identity,
            output=self._output,
            kind=TOLD if self._told else FOUND,
            dialect=to_json(self.dialect),
            content=self.plain(),
        ).utc

    def plain(self) -> dict[str, Any]:
        """The report as plain values."""
        found, measured, dialect = self._found, self.measured, self.dialect
        can = None if measured is None else measured.capabilities
        missing = [] if dialect is None else gaps(dialect, measured)
        return {
            "event": "supply",
            "resource": self.resource,
            "output": self._output,
            "usable": self.usable,
            "identity": can.identity if can is not None else found.identity if found is not None else "",
            "why": self._problem,
            "dialect": None if dialect is None else msgspec.to_builtins(dialect),
            "speaks": "" if dialect is None else f"{dialect.name}: {dialect_in_words(dialect)}",
            "works": [] if dialect is None else working(dialect, measured),
            "missing": {gap: ABOUT_GAPS[gap] for gap in missing},
            "questions": self._questions(),
            "untried": list(found.untried) if found is not None else [],
            "tried": [] if self._tried is None else list(self._tried.obeyed),
            "refused": [] if self._tried is None else list(self._tried.refused),
            "remarks": list(found.remarks) if found is not None else [],
            "volts_max": can.volts_max if can is not None else None,
            "amps_max": can.amps_max if can is not None else None,
            "volts_step": can.volts_step if can is not None else None,
            "amps_step": can.amps_step if can is not None else None,
            "latency_s": found.latency_s if found is not None else can.reply_s if can is not None else None,
            "latencies_s": {} if found is None else {a.unit: a.took_s for a in found.answered if a.reply is not None},
            "reading_s": measured.reading_s if measured is not None else None,
            "readings_per_s": measured.readings_per_s if measured is not None else None,
            "least_kick_s": self._least_kick_s,
            "settling": None if self.settled is None else msgspec.to_builtins(self.settled),
            "asked": len(found.answered) if found is not None else 0,
            "took_s": found.took_s if found is not None else None,
        }

    @property
    def _least_kick_s(self) -> float | None:
        """As it was tried, else as it is reckoned."""
        if self.settled is not None and self.settled.kick_s is not None:
            return self.settled.kick_s
        return None if self.measured is None else self.measured.least_kick_s

    def _questions(self) -> list[str]:
        told = self._found.questions if self._found is not None else ()
        answered = self.dialect is not None and self.dialect.ranges is not None
        return [question for question in told if not (answered and question.startswith("How many volts"))]

    def tell(self) -> None:
        """The report in words."""
        found, measured, dialect = self._found, self.measured, self.dialect
        identity = self.plain()["identity"]
        say(f'"{identity}" answers at {self.resource}.' if identity else f"At {self.resource}:")
        if dialect is None:
            say(f"\nI don't know how to use it, because: {self._problem}.")
            return
        spoken = f"  Speaks    {dialect.name}: {dialect_in_words(dialect)}."
        say(fill(spoken, WIDTH, subsequent_indent=" " * 12))
        _listed("Works", working(dialect, measured))
        if measured is not None:
            self._figures(measured)
        missing = gaps(dialect, measured)
        if missing:
            say("\nMissing, and what the program does about it:")
            for gap in missing:
                _point(f"{gap}. {ABOUT_GAPS[gap]}")
        if self._questions():
            say(
                "\nNo question to it tells, so please say (--most-volts, --most-amps; or --write FILE, complete it, and"
            )
            say("come back with --dialect FILE):")
            for question in self._questions():
                _point(question)
        if found is not None:
            for remark in found.remarks:
                say(f"\n{remark} (--within 30)")
            if self._tried is None:
                units = ", ".join(found.untried)
                say("\n" + fill(f"Not sent yet, and first tried by a run or by --try: {units}.", WIDTH))
            chosen = " but for choosing outputs, which was put back" if dialect.outputs.select else ""
            written = "" if self._tried is not None else f"; nothing was set or switched{chosen}"
            say(f"{len(found.answered)} questions in {show(found.took_s, 's')}{written}.")
        if self._tried is not None:
            say(f"Tried with the output off, setpoints put back: {', '.join(self._tried.obeyed) or 'nothing'} obeyed.")
            for refused in self._tried.refused:
                _point(f"not obeyed: {refused}.")
        if self._kept:
            say("Usable. Kept: runs on this address open with it.")
        else:
            say(f"Not usable: {self._problem}.")

    def _figures(self, measured: "Measured") -> None:
        from benchlog.cli.supply_settling import in_words

        can, last = measured.capabilities, measured.last
        state = (
            f"{'on' if last.output_on else 'off'} now, {show(last.set_volts, 'V')} and {show(last.set_amps, 'A')} set"
        )
        say(f"  Output    {can.output} of {can.outputs}, {state}; gives at most {_range(can.volts_max, can.amps_max)}.")
        latency_s = can.reply_s if self._found is None else self._found.latency_s
        quick = f"{_ms(measured.reading_s)} a reading, at worst {_ms(measured.worst_s)}"
        say(f"  Latency   {_ms(latency_s)} a question; {quick}; {measured.readings_per_s:.0f} readings a second.")
        say(f"  Reads to  {show(can.volts_step, 'V')} and {show(can.amps_step, 'A')}.")
        if self.settled is not None:
            kicks = f"  Kicks     from {_ms(self._least_kick_s)} on. {in_words(self.settled)}"
            say(fill(kicks, WIDTH, subsequent_indent=" " * 12))
            return
        settling = f"{_ms(can.settle_s)} of settling, as the dialect says, and its slowest reading"
        say(f"  Kicks     from {_ms(measured.least_kick_s)} on. Reckoned: {settling};")
        say(f"            {MEASURED_NEXT if self._settles else NOT_MEASURED}.")


def _point(text: str) -> None:
    say(fill(f"  - {text}", WIDTH, subsequent_indent=" " * 4))


def _listed(head: str, items: list[str]) -> None:
    for place, item in enumerate(items):
        say(f"  {head if not place else '':<9} {item}{',' if place < len(items) - 1 else '.'}")


def _range(volts: float | None, amps: float | None) -> str:
    return "what it does not tell" if volts is None or amps is None else f"{show(volts, 'V')} and {show(amps, 'A')}"


def _ms(value: float | None) -> str:
    return "—" if value is None else f"{1e3 * value:.1f} ms" if value < 0.1 else f"{1e3 * value:.0f} ms"


def _told(text: str) -> "Dialect":
    """A dialect by its name or file. Raises Refused."""
    from drivers.dialect import DialectError, read, shipped, shipped_names

    try:
        return shipped(text) if text in shipped_names() else read(Path(text))
    except DialectError as error:
        raise Refused(f"dialect: {error}; or one of {', '.join(shipped_names())}") from error
