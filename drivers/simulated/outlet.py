"""One output of an instrument, as its commands see it: ranges, latches, relay, what is read back."""

from collections.abc import Callable

from drivers.simulated.quirks import Quirks
from drivers.simulated.readback import nearest_step
from drivers.simulated.status import Refusal
from drivers.simulated.supply_model import Mode, OutputStage, SupplyData, Trip

NEVER_S = float("inf")


class Outlet:
    """`steps`: what setpoints are rounded to, V and A. `acquire`: what the meter shows for the window that ends now."""

    def __init__(
        self,
        data: SupplyData,
        output: OutputStage,
        acquire: Callable[[], tuple[float, float]],
        quirks: Quirks,
        *,
        over_amps_on: bool,
    ) -> None:
        self.data = data
        self.output = output
        self.steps = data.step_v, data.step_a
        self.acquire = acquire
        self._quirks = quirks
        self._relay: tuple[float, bool] | None = None
        output.over_amps_on = over_amps_on
        if quirks.over_amps_masked_s is not None:
            output.mask_s = quirks.over_amps_masked_s

    def set_volts(self, value: float) -> None:
        """Raises Refusal."""
        value = nearest_step(self._within(value, self.data.volts_max), self.steps[0])
        share = self._quirks.over_volts_least_share
        if share and self.output.over_volts_on and value * (1.0 + share) > self.output.over_volts:
            raise Refusal(-221, "setpoint too near to the over-voltage level")
        self.output.change(set_v=value)

    def set_amps(self, value: float) -> None:
        """Raises Refusal."""
        self.output.change(limit_a=nearest_step(self._within(value, self.data.amps_max), self.steps[1]))

    def set_over_volts(self, value: float) -> None:
        """Raises Refusal."""
        value = self._within(value, 1.1 * self.data.volts_max)
        share = self._quirks.over_volts_least_share
        if share and value < self.output.set_v * (1.0 + share):
            raise Refusal(-221, "over-voltage level too near to the setpoint")
        self.output.over_volts = value

    def set_over_amps(self, value: float) -> None:
        """Raises Refusal."""
        self.output.over_amps = self._within(value, 1.1 * self.data.amps_max)

    def switch(self, on: bool, at_s: float) -> None:
        """Raises Refusal where a latch has tripped."""
        if on and self.output.trip is not None:
            raise Refusal(-221, "ON while tripped")
        if self._quirks.relay_s:
            self._relay = at_s + self._quirks.relay_s, on
        else:
            self.output.switch(on)

    @property
    def told_on(self) -> bool:
        """As it is read back: what was last asked of it, unless a latch has tripped."""
        wanted = self.output.wanted_on if self._relay is None else self._relay[1]
        return wanted and self.output.trip is None

    @property
    def holds_amps(self) -> bool:
        """Whether the current limit holds."""
        return self.output.on and self.output.mode is Mode.CC

    @property
    def tripped(self) -> Trip | None:
        return self.output.trip

    @property
    def due_s(self) -> float:
        """When the relay moves."""
        return NEVER_S if self._relay is None else self._relay[0]

    def happen(self, at_s: float) -> None:
        """The relay moves, where it is time."""
        if self._relay is not None and self._relay[0] <= at_s:
            self.output.switch(self._relay[1])
            self._relay = None

    def _within(self, value: float, most: float) -> float:
        if 0.0 <= value <= most:
            return value
        if self._quirks.lax:
            return min(max(0.0, value), most)
        raise Refusal(-222, f"{value:g}")
