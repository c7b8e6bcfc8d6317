"""A supply at an address, opened the one way this program opens any."""

from collections.abc import Callable

from drivers.dialect import Dialect, Link, from_json, shipped
from drivers.exchange import Session
from drivers.finding import WITHIN_S, Found, find_dialect
from drivers.finding_measured import Measured, capabilities_of, measure
from drivers.finding_tried import Tried, try_spellings
from drivers.scpi_supply import ScpiSupply
from drivers.supply import Capabilities, NotASupply


def dialect_of(text: str) -> Dialect:
    """A dialect as JSON, or the usual one for "". Raises DialectError."""
    return from_json(text) if text else shipped()


def open_session(resource: str, link: Link, timeout_s: float) -> Session:
    """A session whose lines end as the dialect's link says. Raises SupplyError."""
    from drivers.visa import VisaSession  # pyvisa takes a while to import: only where a supply is really opened

    return VisaSession(resource, termination=link.termination, reply_ends=link.reply_termination, timeout_s=timeout_s)


def open_supply(
    resource: str,
    now: Callable[[], float],
    known: Capabilities | None = None,
    *,
    dialect: Dialect | None = None,
    output: int = 1,
    identity: str = "",
) -> ScpiSupply:
    """Through VISA, in the usual dialect where none is given. `identity`: whom it was found for, "" for anyone.

    Raises SupplyError, NotASupply also where somebody else answers.
    """
    spoken = shipped() if dialect is None else dialect
    supply = ScpiSupply(
        lambda timeout_s: open_session(resource, spoken.link, timeout_s), spoken, now, output=output, known=known
    )
    found = supply.capabilities.identity
    if identity and found != identity:
        supply.close()
        what = f'"{found}" answers where "{identity}" did when it was asked what it is: ask it anew, then begin again'
        raise NotASupply(resource, what)
    return supply


def ask_supply(resource: str, now: Callable[[], float], within_s: float = WITHIN_S, output: int = 1) -> Found:
    """Which dialect the supply at an address speaks, by questions only. Never raises."""
    return find_dialect(
        lambda link, timeout_s: open_session(resource, link, timeout_s), now, within_s=within_s, output=output
    )


def try_supply(resource: str, now: Callable[[], float], dialect: Dialect) -> Tried:
    """Spellings that no answer tells, with the output off: writes, where the user agreed. Raises SupplyError."""
    return try_spellings(lambda link, timeout_s: open_session(resource, link, timeout_s), dialect, now)


def measure_supply(
    resource: str, now: Callable[[], float], dialect: Dialect, *, output: int = 1, found: Found | None = None
) -> Measured:
    """How quick and how fine it is, by readings only. `found`: its answers need not be asked for again.

    Raises SupplyError.
    """
    known = capabilities_of(found, now, output) if found is not None and found.dialect is dialect else None
    supply = open_supply(resource, now, known, dialect=dialect, output=output)
    try:
        return measure(supply, now)
    finally:
        supply.close()
