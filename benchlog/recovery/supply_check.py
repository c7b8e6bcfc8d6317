"""What a check of a supply is: a resistor of known value, and what is stated about it and about the supply. Pure."""

import msgspec


class SupplyCheck(msgspec.Struct, frozen=True, kw_only=True):
    """`ohm`: of the resistor, right to the share `ohm_share`; `share`: what volts and amps may be wrong by; `volts`:
    the highest that is set. `latch_v`: where the over-voltage latch is set in a run that is about that alone."""

    ohm: float
    ohm_share: float
    share: float
    volts: float
    latch_v: float | None = None

    @property
    def amps(self) -> float:
        """A that flow at the highest volts."""
        return self.volts / self.ohm
