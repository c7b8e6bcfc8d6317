"""The guard against a locked winding that heats, a supply that lies now and then, and commands of any kind.

Each step is a rule that hypothesis picks: a command with any numbers, an honest reading, a lie. What is true of the
winding is reckoned here, with nothing of the guard's own. `python -m tests.recovery.guard_machine --steps 1000000`
is the long form; it prints how many steps were taken.
"""

import argparse
import math
import sys
import time
from collections import Counter, deque

from hypothesis import HealthCheck, seed, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)

from benchlog.motor.motion import Motion
from benchlog.outcome import Outcome
from benchlog.recovery.budget import WINDOW_S, Budget
from benchlog.recovery.ceilings import PROGRAM, Layer, Limits, intersect
from benchlog.recovery.commands import Apply, Ask, Switch
from benchlog.recovery.guard import Guard
from drivers.supply import Reading, Regulation
from tests.recovery.test_ceilings import CAN

STEPS_A_RUN = 50
AMBIENT_C = 25.0
STALL_RATE_K_S, R_MOST_K_W, HOUSING_TIMES, C_LEAST_J_K, C_MOST_J_K = 60.0, 40.0, 10.0, 0.2, 10.0
"""The motors that the heat bound claims to cover, as the README says it; not the program's own constants."""
NO_NUMBERS = (math.nan, math.inf, -math.inf, 9.9e37, 9.91e37)
LIES = ("no number", "above a ceiling", "hand on a knob", "other output state", "stale", "out of order")
taken: Counter[str] = Counter()
"""Rules that were carried out, by name."""

anything = st.floats(allow_nan=True, allow_infinity=True, width=64)
sensible = st.floats(0.0, 45.0)
limits = st.builds(
    Limits,
    volts=st.none() | st.floats(0.5, 60.0),
    amps=st.none() | st.floats(0.01, 25.0),
    energy_j=st.none() | st.floats(0.5, 500.0),
    locked_s=st.none() | st.floats(0.1, 5.0),
    winding_c=st.none() | st.floats(30.0, 120.0),
    on_s=st.none() | st.floats(0.05, 10.0),
    kicks=st.none() | st.integers(1, 5),
)


class GuardMachine(RuleBasedStateMachine):
    """One run: the shell's part is played as it is, so that a refusal or a trip ends it with the output off."""

    @initialize(
        layers=st.dictionaries(st.sampled_from([Layer.OWNER, Layer.SUPPLY, Layer.JOB]), limits),
        ohms=st.floats(0.5, 50.0),
        rated_volts=st.floats(1.5, 24.0),
        probed=st.booleans(),
    )
    def begin(self, layers: dict[Layer, Limits], ohms: float, rated_volts: float, probed: bool) -> None:
        self.bounds = {
            name: min(getattr(one, name) for one in [PROGRAM, *layers.values()] if getattr(one, name) is not None)
            for name in Limits.__struct_fields__
        }
        ceilings = intersect(layers)
        self.budget = Budget(ceilings, ambient_c=AMBIENT_C, rated_volts=rated_volts)
        if probed:
            self.budget.learn(ohms)
        self.ceilings = ceilings
        self.ohms, self.stall_watts = ohms, rated_volts**2 / ohms
        # Before a probe nobody knows the stall power: locked time is then defined by that of the smallest winding.
        self.counted_watts = self.stall_watts if probed else STALL_RATE_K_S * C_LEAST_J_K
        self.heat_capacity = min(C_MOST_J_K, max(C_LEAST_J_K, self.stall_watts / STALL_RATE_K_S))
        self.covered = self.stall_watts <= STALL_RATE_K_S * C_MOST_J_K  # beyond it the bound claims nothing
        self.now_s, self.on, self.set_volts, self.set_amps = 1.0, False, 0.0, 0.0
        self.winding_k = self.housing_k = 0.0
        self.powers: deque[tuple[float, float, float]] = deque()  # end s, J, s at stall power
        self.driven_s = self.last_step_s = self.hottest_j = 0.0
        self.kicks = 0
        self._start()

    def _start(self) -> None:
        self.ended = False
        self.guard = Guard(self.ceilings, CAN, self.budget)
        self._read(0.01)
        self._command(Switch(on=True))

    # What is true

    def _pass(self, for_s: float) -> None:
        driving = self.on and self.set_volts > 0
        volts = min(self.set_volts, self.set_amps * self.ohms) if driving else 0.0
        watts = volts * volts / self.ohms
        flow = (self.winding_k - self.housing_k) / R_MOST_K_W
        self.winding_k += (watts - flow) * for_s / self.heat_capacity
        self.housing_k += flow * for_s / (HOUSING_TIMES * self.heat_capacity)
        self.now_s += for_s
        self.last_step_s = for_s
        self.watts = watts
        self.driven_s = self.driven_s + for_s if driving else 0.0
        self.hottest_j = max(self.hottest_j, watts * for_s)
        if watts:
            self.powers.append((self.now_s, watts * for_s, watts * for_s / self.counted_watts))
        while self.powers and self.powers[0][0] < self.now_s - WINDOW_S:
            self.powers.popleft()

    def _honest(self, took_s: float) -> Reading:
        sent_s = self.now_s
        self._pass(took_s)
        driving = self.on and self.set_volts > 0
        volts = min(self.set_volts, self.set_amps * self.ohms) if driving else 0.0
        return Reading(
            sent_s=sent_s,
            received_s=self.now_s,
            volts=volts,
            amps=volts / self.ohms,
            set_volts=self.set_volts,
            set_amps=self.set_amps,
            output_on=self.on,
            regulation=Regulation.CC if volts < self.set_volts else Regulation.CV,
        )

    # What the shell does

    def _off(self) -> None:
        self.on, self.set_volts, self.set_amps, self.ended = False, 0.0, 0.0, True

    def _judge(self, reading: Reading) -> Outcome | None:
        trip = self.guard.judge(reading)
        if trip is None:
            return None
        self._off()
        return trip.outcome

    # What may happen

    @precondition(lambda self: not self.ended)
    @rule(
        volts=sensible | sensible | anything,
        amps=st.floats(0.0, 2.0) | sensible | anything,
        kick=st.booleans(),
        belief=st.sampled_from([Motion.UNKNOWN, Motion.LOCKED, Motion.RESTING]),
    )
    def setpoint(self, volts: float, amps: float, kick: bool, belief: Motion) -> None:
        taken["setpoint"] += 1
        self._command(Apply(volts=volts, amps=amps, kick=kick, belief=belief))

    @precondition(lambda self: not self.ended)
    @rule(share=st.floats(0.5, 1.0), amps_share=st.floats(0.1, 1.0), kick=st.booleans())
    def setpoint_near_the_ceilings(self, share: float, amps_share: float, kick: bool) -> None:
        taken["setpoint near the ceilings"] += 1
        volts, amps = share * self.bounds["volts"], amps_share * self.bounds["amps"]
        self._command(Apply(volts=volts, amps=amps, kick=kick, belief=Motion.LOCKED))

    @precondition(lambda self: not self.ended)
    @rule()
    def down(self) -> None:
        taken["down"] += 1
        self._command(Apply(volts=0.0, amps=self.bounds["amps"], belief=Motion.RESTING))

    @precondition(lambda self: not self.ended)
    @rule(on=st.booleans())
    def switch(self, on: bool) -> None:
        taken["switch"] += 1
        self._command(Switch(on=on))

    @precondition(lambda self: not self.ended)
    @rule(swap=st.booleans())
    def ask(self, swap: bool) -> None:
        taken["ask"] += 1
        refusal = self.guard.admit(Ask(text="?", choices=("done", "skip"), swap=swap))
        assert refusal is not None or not self.on

    def _command(self, command: Apply | Switch) -> None:
        if self.guard.admit(command) is not None:
            self._off()  # a plan that asks for too much is over
            return
        self.guard.sent(command, self.now_s)
        if isinstance(command, Switch):
            assert not command.on or self.set_volts == 0.0, "on with volts set"
            self.on = command.on
        else:
            self.set_volts, self.set_amps = command.volts, command.amps
            self.kicks += command.kick
        self._read(0.01)

    @precondition(lambda self: not self.ended)
    @rule(took_s=st.floats(0.002, 0.1), times=st.integers(1, 12))
    def read(self, took_s: float, times: int) -> None:
        for _ in range(times):
            if not self.ended:
                taken["read"] += 1
                self._read(took_s)
                self.nothing_above_a_ceiling()

    def _read(self, took_s: float) -> None:
        outcome = self._judge(self._honest(took_s))
        assert outcome in (None, Outcome.CEILING), f"an honest reading ended as {outcome}"

    @precondition(lambda self: not self.ended)
    @rule(kind=st.sampled_from(["none"] * 12 + list(LIES)), size=st.floats(0.0, 1.0), which=st.integers(0, 3))
    def lie(self, kind: str, size: float, which: int) -> None:
        if kind == "none":
            return
        taken[f"lie: {kind}"] += 1
        true = self._honest(0.01)
        measured, setting = ("volts", "amps")[which % 2], ("set_volts", "set_amps")[which % 2]
        changes: dict[str, float] = {
            "no number": {(measured, setting)[which // 2]: NO_NUMBERS[int(4.99 * size)]},
            "above a ceiling": {measured: self.bounds[measured] * (1.03 + 9 * size) + 0.06},
            "hand on a knob": {setting: getattr(true, setting) + 0.2 + 5 * size},
            "other output state": {"output_on": not self.on},
            "stale": {"sent_s": self.now_s - 1.01 - 100 * size},
            "out of order": {"sent_s": self.now_s - 0.011 - 0.9 * size},
        }[kind]
        values = {name: getattr(true, name) for name in Reading.__slots__}
        assert self._judge(Reading(**(values | changes))) is not None, f"{changes} went unnoticed"

    @precondition(lambda self: self.ended)
    @rule(for_s=st.floats(0.01, 5.0))
    def again(self, for_s: float) -> None:
        """The next run on the same motor, which is as warm as it is."""
        taken["again"] += 1
        self._pass(for_s)
        self._start()

    # What must hold

    @invariant()
    def nothing_above_a_ceiling(self) -> None:
        if not hasattr(self, "bounds"):
            return
        bounds = self.bounds
        assert 0.0 <= self.set_volts <= bounds["volts"]
        assert 0.0 <= self.set_amps <= bounds["amps"]
        assert self.kicks <= bounds["kicks"]
        # The reading that shows it is the last: time-bound ceilings are passed by no more than went in until then.
        energy_j = sum(joules for _, joules, _ in self.powers)
        locked_s = sum(stall_s for _, _, stall_s in self.powers)
        last_j = max((joules for _, joules, _ in self.powers), default=0.0)
        assert energy_j <= bounds["energy_j"] + last_j + 1e-9
        assert locked_s <= bounds["locked_s"] + last_j / self.counted_watts + 1e-9
        assert self.driven_s <= bounds["on_s"] + self.last_step_s + 1e-9
        if self.covered:
            most_c = bounds["winding_c"] + self.hottest_j / self.heat_capacity
            assert AMBIENT_C + self.winding_k <= max(most_c, AMBIENT_C) + 1e-9


def run(steps: int, *, seeded: int) -> None:
    """At least so many steps. Raises what hypothesis found."""
    while taken.total() < steps:
        examples = max(1, (steps - taken.total()) // STEPS_A_RUN)
        chosen = settings(
            max_examples=min(examples, 20_000),
            stateful_step_count=STEPS_A_RUN,
            deadline=None,
            database=None,
            suppress_health_check=list(HealthCheck),
        )
        machine = seed(seeded)(type("SeededGuardMachine", (GuardMachine,), {}))
        run_state_machine_as_test(machine, settings=chosen)
        seeded += 1


def main() -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.recovery.guard_machine", description=__doc__)
    parser.add_argument("--steps", type=int, default=20_000)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    began_s = time.perf_counter()
    run(asked.steps, seeded=asked.seed)
    minutes = (time.perf_counter() - began_s) / 60
    print(
        f"{taken.total():,} steps from seed {asked.seed} in {minutes:.1f} min, none above a ceiling, no lie unnoticed."
    )
    print(", ".join(f"{name} {count:,}" for name, count in taken.most_common()))
    return 0


if __name__ == "__main__":
    sys.exit(main())
