"""Numbers, money, instants and people's own words as paper bears them."""

import re
from datetime import datetime, tzinfo

import msgspec

from benchlog.money import show_money
from benchlog.motor.fit import Fitted
from benchlog.quantities import show
from benchlog.reports.regions import Region
from drivers.foreign import inert

MOST_TEXT, MOST_CELL, MOST_WORD = 4000, 700, 160
"""Letters of a text, of a table's cell, and of a field of one line that go on paper; the ledger has the rest."""
SHORTENED = " … [shortened here; whole in the ledger]"
NOTHING = "—"
_BEFORE_UNIT = re.compile(r"(?<=\d) (?=[µmkM]?(?:V|A|Ω|W|J|s|°C|%)(?:\W|$))")
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


class Say(msgspec.Struct, frozen=True):
    """Numbers, money and instants as the place writes them."""

    region: Region = Region()
    zone: tzinfo | None = None
    currency: str = ""

    def number(self, text: str) -> str:
        """Numbers that this program wrote with a point; a unit stays on the line of its number."""
        return _BEFORE_UNIT.sub("\u00a0", re.sub(r"(?<=\d)\.(?=\d)", self.region.decimal, text))

    def quantity(self, value: float | None, unit: str) -> str:
        return self.number(show(value, unit)).strip()

    def between(self, value: float | None, low: float | None, high: float | None, unit: str) -> str:
        told = self.quantity(value, unit)
        return (
            told
            if low is None or high is None
            else f"{told} ({self.quantity(low, unit)} to {self.quantity(high, unit)})"
        )

    def fitted(self, value: Fitted | None, unit: str) -> str:
        return NOTHING if value is None else self.between(value.value, value.low, value.high, unit)

    def money(self, cents: int) -> str:
        return self.number(show_money(cents, one_line(self.currency))).replace("-", "−")

    def day(self, utc: str) -> str:
        """ "5 Mar 2026": no order of figures to guess."""
        at = self._local(utc)
        return one_line(utc) if at is None else f"{at.day} {MONTHS[at.month - 1]} {at.year}"

    def instant(self, utc: str) -> str:
        at = self._local(utc)
        return one_line(utc) if at is None else f"{at.day} {MONTHS[at.month - 1]} {at.year}, {at:%H:%M}"

    def zone_words(self, utc: str) -> str:
        at = self._local(utc)
        if at is None:
            return "UTC"
        offset = at.strftime("%z")
        return f"UTC{offset[:3]}:{offset[3:5]}" if offset.strip("+-0") else "UTC"

    def _local(self, utc: str) -> datetime | None:
        try:
            return datetime.fromisoformat(utc.replace("Z", "+00:00")).astimezone(self.zone)
        except (ValueError, OverflowError):
            return None


def one_line(text: str, at_most: int = MOST_WORD) -> str:
    """Inert, on one line, and no longer than paper bears."""
    return inert(" ".join(_bounded(text, at_most).split()))


def short(text: str, at_most: int) -> str:
    """Inert, on one line, at most so many letters, with a sign where there were more."""
    told = inert(" ".join(text[: 2 * at_most + 1].split()))
    return told if len(told) <= at_most else told[: at_most - 1].rstrip() + "…"


def lines(text: str, at_most: int = MOST_TEXT) -> str:
    """As it was written, line by line, inert and bounded."""
    return "\n".join(inert(line.replace("\t", " ")) for line in _bounded(text, at_most).strip().splitlines())


def _bounded(text: str, at_most: int) -> str:
    return text if len(text) <= at_most else text[:at_most].rstrip() + SHORTENED
