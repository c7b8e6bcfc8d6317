"""What a check of a supply is: a resistor of known value, or leads that are open, and what is stated about it. Pure."""

import msgspec


class SupplyCheck(msgspec.Struct, frozen=True, kw_only=True):
    """`ohm`: of the resistor, right to the share `ohm_share`; `share`: what volts and amps may be wrong by; `volts`:
    the highest that is set. `latch_v`, `latch_a`: where the over-voltage or the over-current latch is set in a run that
    is about that alone. `cleared`: a run after those, about whether it goes on again. `settling_a`: the current limit
    of a run that is about how quick the supply is: its leads are open, and there is no resistor."""

    ohm: float
    ohm_share: float
    share: float
    volts: float
    latch_v: float | None = None
    latch_a: float | None = None
    cleared: bool = False
    settling_a: float | None = None

    @property
    def amps(self) -> float:
        """A that flow at the highest volts."""
        return 0.0 if self.settling_a is not None else self.volts / self.ohm
