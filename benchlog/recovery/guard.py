"""Refuse, trip, or go: what may be sent, and what a reading must look like.

`admit` decides before a byte is sent; it refuses and never clamps. `judge` decides on every reading; a trip is a value,
so that no `except` can swallow it. The guard asks the world: the output is as commanded, the setpoint is still what was
sent, the current obeys the limit, the volts follow, and after a step down they stay up only at no current, falling. How
long the supply may take for that is measured on the run's own first setpoints, which are small.
"""

import math
from dataclasses import dataclass

from benchlog.motor.motion import Motion
from benchlog.outcome import Outcome
from benchlog.recovery.budget import Budget
from benchlog.recovery.ceilings import Bound, Ceilings
from benchlog.recovery.commands import Acquire, Apply, Ask, Command, Fetch, Switch
from drivers.supply import Capabilities, Reading, Regulation

COARSEST_STEP = 0.01
"""V, A: the coarsest readback resolution that tolerances are widened for."""
SWAP_VOLTS = 0.5
"""V on the terminals above which nobody is asked to swap leads: a motor still coasts, or a source is connected."""
FOREIGN_VOLTS = 0.25
"""V on the terminals with the output off that count as another source. Starting value of this project."""
STALE_S = 1.0
FOLLOWS_S = 0.5
"""s after a setpoint by which volts and amps must obey, as long as this supply is not known. Generous: a switch-mode
supply may take hundreds of ms."""
FOLLOWS_LEAST_S = 0.1
ENOUGH_SETPOINTS = 4
_TIMES_SETTLING = 3.0
_DRAINS = 0.9
_SLACK_SHARE = 0.02  # readback gain and regulation
_ABSURD = 1e6


@dataclass(frozen=True, slots=True, kw_only=True)
class Trip:
    """Why the output goes off now, and the outcome the run is filed under."""

    outcome: Outcome
    text: str
    went_off: bool = False
    """The output went off by itself: one of the supply's own latches, or a hand; the shell asks which."""


class Guard:
    """Knows what was commanded last. One for a run; `capabilities` of the supply in use."""

    def __init__(self, ceilings: Ceilings, capabilities: Capabilities, budget: Budget) -> None:
        self.ceilings = ceilings
        self.budget = budget
        # A readback at rest may be trimmed of its zeros ("0"): what it looks like then must not widen the tolerance.
        self._volts_slack = 3 * min(capabilities.volts_step, COARSEST_STEP) + 0.02
        self._amps_slack = 3 * min(capabilities.amps_step, COARSEST_STEP) + 0.01
        self._window_s = capabilities.window_s
        self._last: Reading | None = None
        self._set = Apply(volts=0.0, amps=0.0, belief=Motion.RESTING)
        self._set_at_s = -math.inf
        self._on = False
        self._lowest_since_set = math.inf
        self._driven_since_s: float | None = None
        self._obeyed = True
        self._setpoints_obeyed = 0
        self.settling_s = 0.0

    @property
    def follows_s(self) -> float:
        """s after a setpoint by which volts and amps must obey: a few times what this supply took at worst so far."""
        if self._setpoints_obeyed < ENOUGH_SETPOINTS:
            return FOLLOWS_S
        return min(FOLLOWS_S, max(FOLLOWS_LEAST_S, _TIMES_SETTLING * self.settling_s))

    def admit(self, command: Command) -> str | None:
        """None, or why this command is not sent."""
        match command:
            case Apply():
                return self._admit_setpoint(command)
            case Switch(on=True):
                return self._admit_on()
            case Ask() if self._on:
                return "a question is put only with the output off"
            case Ask(swap=True) if self._last is None or abs(self._last.volts) > SWAP_VOLTS:
                return f"leads are swapped only below {SWAP_VOLTS} V on the terminals"
            case Acquire() if self._on and self._set.volts > 0:
                return "the supply's own array is started only at 0 V"
            case Fetch() if self._on:
                return "the supply's own array is read only with the output off"
        return None

    def _admit_setpoint(self, command: Apply) -> str | None:
        if not (math.isfinite(command.volts) and math.isfinite(command.amps)):
            return f"{command.volts} V, {command.amps} A is not a setpoint"
        if command.volts < 0 or command.amps < 0:
            return f"{command.volts:g} V, {command.amps:g} A: below zero"
        if command.volts > self.ceilings.volts.value:
            return _above("V", command.volts, self.ceilings.volts)
        if command.amps > self.ceilings.amps.value:
            return _above("A", command.amps, self.ceilings.amps)
        if command.volts > 0 and self._last is not None:
            used = self._used_up(self._last.received_s)
            if used is not None:
                return used
        if command.kick and self.budget.kicks >= self.ceilings.kicks.value:
            return f"{self.ceilings.kicks.value:g} kicks a job and day are used up: now it needs hands"
        return None

    def _admit_on(self) -> str | None:
        if self._last is None:
            return "the output goes on only after a reading"
        if abs(self._last.volts) > FOREIGN_VOLTS:
            return f"{self._last.volts:.2f} V on the terminals with the output off: another source is connected"
        if self._set.volts != 0.0:
            return f"the output goes on only at 0 V set, not {self._set.volts:g} V"
        return None

    def sent(self, command: Command, at_s: float) -> None:
        """What was sent, once it was."""
        if isinstance(command, Apply):
            self._set, self._set_at_s = command, at_s
            self._lowest_since_set = math.inf
            self._obeyed = False
            if command.kick:
                self.budget.count_kick()
        elif isinstance(command, Switch):
            self._on, self._set_at_s = command.on, at_s
        if not (self._on and self._set.volts > 0):
            self._driven_since_s = None
        elif self._driven_since_s is None:
            self._driven_since_s = at_s

    def driven_s(self, at_s: float) -> float:
        """s in a row that the output has been on with volts set, up to an instant."""
        return 0.0 if self._driven_since_s is None else at_s - self._driven_since_s

    def judge(self, reading: Reading) -> Trip | None:
        """None, or why the output goes off now. Charges the budget with the reading."""
        trip = self._not_a_measurement(reading) or self._above_ceiling(reading) or self._not_as_sent(reading)
        if trip is None:
            self.budget.charge(reading, self._set.belief)
            trip = self._does_not_obey(reading) or self._budget_used(reading.received_s)
        self._last = reading
        return trip

    def _not_a_measurement(self, reading: Reading) -> Trip | None:
        values = (reading.volts, reading.amps, reading.set_volts, reading.set_amps)
        if not all(math.isfinite(value) and abs(value) < _ABSURD for value in values):
            return _doubt(f"a reading of {reading.volts} V, {reading.amps} A is not a measurement")
        if not 0 <= reading.received_s - reading.sent_s <= STALE_S:
            return _doubt(f"a reading took {reading.received_s - reading.sent_s:.3g} s")
        if self._last is not None and reading.sent_s < self._last.received_s:
            return _doubt("readings are out of order")
        return None

    def _above_ceiling(self, reading: Reading) -> Trip | None:
        for unit, value, bound, slack in (
            ("V", reading.volts, self.ceilings.volts, self._volts_slack),
            ("A", reading.amps, self.ceilings.amps, self._amps_slack),
        ):
            if abs(value) > bound.value * (1 + _SLACK_SHARE) + slack:
                return Trip(outcome=Outcome.CEILING, text=_above(unit, value, bound))
        return None

    def _not_as_sent(self, reading: Reading) -> Trip | None:
        if reading.output_on != self._on:
            if self._on:
                return Trip(outcome=Outcome.STOPPED, text="the output was switched off at the supply", went_off=True)
            return Trip(outcome=Outcome.STOPPED, text="the output is on although off was sent")
        for unit, told, said, slack in (
            ("V", reading.set_volts, self._set.volts, self._volts_slack),
            ("A", reading.set_amps, self._set.amps, self._amps_slack),
        ):
            if abs(told - said) > slack + 0.002 * said:
                return Trip(
                    outcome=Outcome.STOPPED,
                    text=f"the supply is set to {told:g} {unit}, not the {said:g} {unit} that were sent: a hand on it?",
                )
        return None

    def _does_not_obey(self, reading: Reading) -> Trip | None:
        since_s = reading.sent_s - self._window_s - self._set_at_s
        lowest = self._lowest_since_set
        if since_s >= 0:
            self._lowest_since_set = min(lowest, reading.volts)
        what = self._disobedience(reading, lowest)
        if what is None:
            self._learn(reading)
            return None
        # At 0 V the output capacitor still feeds what hangs on it, for a moment, and falls with every reading.
        draining = self._set.volts == 0 and reading.volts < _DRAINS * lowest and since_s < FOLLOWS_S
        return None if since_s < self.follows_s or draining else _disobeys(what)

    def _learn(self, reading: Reading) -> None:
        """The first reading that obeys a setpoint says how long the supply took, readback and all."""
        if self._obeyed or not self._on:
            return
        self._obeyed = True
        self.settling_s = max(self.settling_s, reading.received_s - self._set_at_s)
        self._setpoints_obeyed += self._set.volts > 0

    def _disobedience(self, reading: Reading, lowest: float) -> str | None:
        """What of this reading is not as it was set, were the supply settled. `lowest`: V since then."""
        volts, amps, told = reading.volts, reading.amps, self._set
        if not self._on:
            return f"{amps:.3g} A flow with the output off" if abs(amps) > 2 * self._amps_slack else None
        if amps > told.amps * (1 + 2 * _SLACK_SHARE) + self._amps_slack:
            return f"{amps:.3g} A flow at a limit of {told.amps:.3g} A"
        if volts - told.volts > _SLACK_SHARE * told.volts + self._volts_slack:
            if amps > 2 * self._amps_slack:
                return f"{volts:.3g} V and {amps:.3g} A at a setpoint of {told.volts:.3g} V"
            if volts > lowest + _SLACK_SHARE * volts + 2 * self._volts_slack:
                return f"{volts:.3g} V and rising at a setpoint of {told.volts:.3g} V"
        short = told.volts - volts > 0.1 * told.volts + 2 * self._volts_slack
        limited = reading.regulation is Regulation.CC or amps >= 0.8 * told.amps - self._amps_slack
        if short and not limited:
            return f"only {volts:.3g} V at a setpoint of {told.volts:.3g} V, without a limit"
        return None

    def _budget_used(self, at_s: float) -> Trip | None:
        if not (self._on and self._set.volts > 0):
            return None  # nothing more goes in; the plan rests until there is room again
        used = self._used_up(at_s)
        return None if used is None else Trip(outcome=Outcome.CEILING, text=used)

    def _used_up(self, at_s: float) -> str | None:
        """Which of the ceilings that time gives back is passed, in words."""
        ceilings, budget = self.ceilings, self.budget
        for what, unit, value, bound in (
            ("the winding may be at", "°C", budget.winding_c(at_s), ceilings.winding_c),
            ("locked in the last minute:", "s", budget.locked_s(at_s), ceilings.locked_s),
            ("energy in the last minute:", "J", budget.energy_j(at_s), ceilings.energy_j),
            ("driven in a row:", "s", self.driven_s(at_s), ceilings.on_s),
        ):
            if value > bound.value:
                return f"{what} {value:.3g} {unit}, above the {bound.layer}'s ceiling of {bound.value:g} {unit}"
        return None


def _above(unit: str, value: float, bound: Bound) -> str:
    return f"{value:.4g} {unit} is above the {bound.layer}'s ceiling of {bound.value:g} {unit}"


def _doubt(text: str) -> Trip:
    return Trip(outcome=Outcome.SUPPLY_LOST, text=text)


def _disobeys(text: str) -> Trip:
    return Trip(outcome=Outcome.SUPPLY_LOST, text=f"the supply does not do as told: {text}")
