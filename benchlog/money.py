"""Amounts of money as people write and read them; whole cents inside."""

import re

from benchlog.errors import Refused
from benchlog.quantities import plain_digits

MOST_CENTS = 100_000_000_00
_TYPED = re.compile(r"(\d{1,3}(?:[ '’\u00a0\u202f]\d{3})+|\d+)(?:[.,](\d*))?", re.ASCII)


def parse_money(text: str) -> int:
    """Cents of "12", "12.5", "12,50", "1 250.00". Raises Refused for anything else, and for a part of a cent."""
    match = _TYPED.fullmatch(plain_digits(text.strip()))
    if match is None:
        raise Refused(f'"{text[:40]}" is not an amount of money; write it as 12.50')
    whole, part = re.sub(r"\D", "", match[1]), match[2] or ""
    if len(part) > 2:
        raise Refused(f'"{text[:40]}" has more than two decimals: a price is in whole cents')
    cents = int(whole) * 100 + int((part + "00")[:2])
    if cents > MOST_CENTS:
        raise Refused(f'"{text[:40]}" is above {show_money(MOST_CENTS)}')
    return cents


def show_money(cents: int | None, currency: str = "") -> str:
    """ "12.50 EUR"; "—" where there is none."""
    if cents is None:
        return "—"
    sign, (whole, part) = "-" if cents < 0 else "", divmod(abs(cents), 100)
    return f"{sign}{whole:,}.{part:02d}".replace(",", "\u202f") + (f" {currency}" if currency else "")
