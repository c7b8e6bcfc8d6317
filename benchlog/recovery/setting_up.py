"""What a run begins with: its budget with what earlier runs left, its guard, and what its plan has to go by."""

from typing import Protocol

from benchlog.recovery.budget import Budget, Pulse
from benchlog.recovery.ceilings import Ceilings
from benchlog.recovery.guard import Guard
from benchlog.recovery.moves import Situation
from benchlog.recovery.start_test import RunIn, StartTest
from benchlog.recovery.steps import Sequence
from drivers.supply import Capabilities


class Asked(Protocol):
    """What a run was asked for, as far as it bears on this. V, °C, Ω."""

    @property
    def rated_volts(self) -> float: ...
    @property
    def sequence(self) -> Sequence: ...
    @property
    def unattended(self) -> bool: ...
    @property
    def kicks_today(self) -> int: ...
    @property
    def ambient_c(self) -> float: ...
    @property
    def lead_ohm(self) -> float: ...
    @property
    def known_ohm(self) -> float | None: ...
    @property
    def earlier(self) -> tuple[Pulse, ...]: ...
    @property
    def start_test(self) -> StartTest | None: ...
    @property
    def run_in(self) -> RunIn | None: ...


def set_up(asked: Asked, ceilings: Ceilings, can: Capabilities, *, began_s: float) -> tuple[Situation, Guard]:
    """`began_s`: the clock at the start of the run, to which earlier pulses are counted back."""
    budget = Budget(
        ceilings,
        ambient_c=asked.ambient_c,
        rated_volts=asked.rated_volts,
        kicks=asked.kicks_today,
        mass_g=None if asked.run_in is None else asked.run_in.mass_g,
    )
    if asked.known_ohm is not None:
        budget.learn(asked.known_ohm)
    budget.carry(began_s, asked.earlier)
    situation = Situation(
        rated_volts=asked.rated_volts,
        ceilings=ceilings,
        capabilities=can,
        sequence=asked.sequence,
        budget=budget,
        unattended=asked.unattended,
        lead_ohm=asked.lead_ohm,
        zero_s=began_s,
        start_test=asked.start_test,
        run_in=asked.run_in,
    )
    return situation, Guard(ceilings, can, budget)
