"""A supply at an address, opened the one way this program opens any."""

from collections.abc import Callable

from drivers.dialect import shipped
from drivers.scpi_supply import ScpiSupply
from drivers.supply import Capabilities


def open_supply(resource: str, now: Callable[[], float], known: Capabilities | None = None) -> ScpiSupply:
    """Through VISA, in the strict dialect. Raises SupplyError."""
    from drivers.visa import VisaSession  # pyvisa takes a while to import: only where a supply is really opened

    dialect = shipped()
    return ScpiSupply(
        lambda timeout_s: VisaSession(resource, termination=dialect.link.termination, timeout_s=timeout_s),
        dialect,
        now,
        known=known,
    )
