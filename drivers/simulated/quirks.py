"""Habits of supplies and their lines that a driver has to live with, each of them by its name.

The sizes are this simulation's own choices; that there are such supplies is common experience, no source.
"""

from collections.abc import Iterable

import msgspec

from drivers.dialect import Dialect, Errors


class Quirks(msgspec.Struct, frozen=True, kw_only=True):
    """`reply_s`: latency of every reply. `crlf`: replies end in CR LF whatever the dialect says.

    `over_volts_least_share`: the over-voltage level stays above the setpoint by that share, else -221.
    `over_amps_masked_s`: over-current is not looked at for so long after a change. `relay_s`: from the command until
    the output follows; it is read back at once. `watchdog_s`: off after so long a silence, without being asked.
    `lax`: what is out of range becomes the nearest that is in it, of several units the first is done, states are told
    as ON and OFF.
    """

    reply_s: float | None = None
    crlf: bool = False
    no_compound: bool = False
    units: bool = False
    one_client: bool = False
    echo: bool = False
    no_error_queue: bool = False
    over_volts_least_share: float = 0.0
    over_amps_masked_s: float | None = None
    relay_s: float = 0.0
    watchdog_s: float | None = None
    lax: bool = False

    def described(self, dialect: Dialect) -> Dialect:
        """The dialect as it has to be written for an instrument with these habits. A reply's form is part of it; how
        long things take, and what is refused, is not. Where nothing ends a reply, it gets no unit: its length counts.
        """
        link, replace = dialect.link, msgspec.structs.replace
        ends = bool(link.reply_ends)
        link = replace(
            link,
            compound=link.compound and not self.no_compound,
            units_in_replies=link.units_in_replies or (self.units and ends),
            one_client=link.one_client or self.one_client,
            echo=link.echo or self.echo,
        )
        changed = replace(dialect, link=link, array=None if link.echo else dialect.array)
        return replace(changed, errors=Errors(form="none"), array=None) if self.no_error_queue else changed


QUIRKS: dict[str, Quirks] = {
    "slow": Quirks(reply_s=0.09),
    "crlf": Quirks(crlf=True),
    "no-compound": Quirks(no_compound=True),
    "units": Quirks(units=True),
    "one-client": Quirks(one_client=True),
    "echo": Quirks(echo=True),
    "no-error-queue": Quirks(no_error_queue=True),
    "over-volts-margin": Quirks(over_volts_least_share=0.05),
    "over-amps-masked": Quirks(over_amps_masked_s=0.1),
    "relay": Quirks(relay_s=0.03),
    "watchdog": Quirks(watchdog_s=5.0),
    "lax": Quirks(lax=True),
}


def together(names: Iterable[str]) -> Quirks:
    """All of them at once. Raises KeyError for a name that there is not."""
    plain = Quirks()
    changed = {
        field: getattr(one, field)
        for one in (QUIRKS[name] for name in names)
        for field in one.__struct_fields__
        if getattr(one, field) != getattr(plain, field)
    }
    return msgspec.structs.replace(plain, **changed)
