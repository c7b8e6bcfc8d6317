"""What holds a stuck shaft, how it gives way, and what it leaves behind.

A joint of dried residue holds the shaft until the motor's torque exceeds it. Every torque impulse that comes near
its strength takes a share off it, the more the nearer, and more again when it pulls the other way than the last one
did. Once broken it leaves drag that is cleared by turning. Some joints form again at rest; some give way by a
fraction of a turn only and then hold for good.

Shares of torque are of the stall torque at rated volts, cold. All behaviour here is this simulation's own invention,
shaped after how technicians describe it; no published figure stands behind it.
"""

import math

import msgspec

IMPULSE_BEGINS = 0.5
"""Share of the breakaway torque from which a torque wears the joint at all."""
IMPULSE_ENDS = 0.4
WEAR_S = 0.05
"""Time constant with which an impulse does its wear: much shorter ones do little."""
OTHER_WAY = 1.5
"""An impulse against the last one's direction wears this much more."""


class JointData(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`breaks_at`: share of stall torque at which the shaft comes loose, friction included.

    `wears`: share of the holding torque that a full-strength impulse takes off. `residue`: drag after breaking, as a
    share of stall torque, falling by 1/e every `residue_turns` turns. `regrips_s`: standing still this long forms
    the joint anew. `slips_rad`: it gives way by this angle only, and then holds with `then_breaks_at`.
    """

    breaks_at: float
    wears: float = 0.0
    residue: float = 0.0
    residue_turns: float = 20.0
    regrips_s: float | None = None
    slips_rad: float | None = None
    then_breaks_at: float = 20.0


class Joint:
    """The joint's state. `hold_nm` counts only while `holding`; `drag_nm` is the residue's drag on a moving shaft."""

    __slots__ = (
        "_broke_at_rad",
        "_data",
        "_fresh_nm",
        "_impulse_nm",
        "_impulse_s",
        "_last_way",
        "_stall_nm",
        "_standing_s",
        "breaks",
        "drag_nm",
        "hold_nm",
        "holding",
    )

    def __init__(self, data: JointData, stall_nm: float, friction_nm: float) -> None:
        self._data = data
        self._stall_nm = stall_nm
        self._fresh_nm = max(0.0, data.breaks_at * stall_nm - friction_nm)
        self.hold_nm = self._fresh_nm
        self.drag_nm = 0.0
        self.holding = True
        self.breaks = 0
        self._impulse_nm = 0.0
        self._impulse_s = 0.0
        self._last_way = 0
        self._standing_s = 0.0
        self._broke_at_rad = 0.0

    def stand(self, torque_nm: float, friction_nm: float, step_s: float) -> None:
        """One step at standstill under `torque_nm`, signed."""
        self._standing_s += step_s
        if not self.holding:
            regrips_s = self._data.regrips_s
            if regrips_s is not None and self._standing_s >= regrips_s:
                self.holding, self.hold_nm = True, self._fresh_nm
            return
        size = abs(torque_nm)
        breakaway = self.hold_nm + friction_nm
        if size > IMPULSE_BEGINS * breakaway:
            self._impulse_s += step_s
            if size > abs(self._impulse_nm):
                self._impulse_nm = torque_nm
        elif self._impulse_s > 0.0 and size < IMPULSE_ENDS * breakaway:
            self._wear(breakaway)

    def give_way(self, angle_rad: float) -> None:
        """The shaft has come loose at `angle_rad`."""
        self._standing_s = 0.0
        self._impulse_s = self._impulse_nm = 0.0
        if self.holding:
            self.holding = False
            self.breaks += 1
            self._broke_at_rad = angle_rad
            self.drag_nm = self._data.residue * self._stall_nm

    def turn(self, by_rad: float, angle_rad: float) -> bool:
        """One step of turning; True when the joint has caught the shaft again and stops it dead."""
        if self.drag_nm > 0.0:
            self.drag_nm *= math.exp(-abs(by_rad) / (2.0 * math.pi * self._data.residue_turns))
        slips_rad = self._data.slips_rad
        if slips_rad is not None and abs(angle_rad - self._broke_at_rad) >= slips_rad:
            self.holding, self.hold_nm = True, self._data.then_breaks_at * self._stall_nm
            return True
        return False

    def _wear(self, breakaway_nm: float) -> None:
        way = 1 if self._impulse_nm > 0.0 else -1
        nearness = min(1.0, (abs(self._impulse_nm) / breakaway_nm - IMPULSE_BEGINS) / (1.0 - IMPULSE_BEGINS))
        share = self._data.wears * nearness * nearness * (1.0 - math.exp(-self._impulse_s / WEAR_S))
        if way == -self._last_way:
            share *= OTHER_WAY
        self.hold_nm *= max(0.0, 1.0 - share)
        self._last_way = way
        self._impulse_s = self._impulse_nm = 0.0
