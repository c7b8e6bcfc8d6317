"""The start that five solvers agree on, in closed form, averaged as a supply averages it; and the same out of ngspice.

R 2 Ω, L 1 mH, K 0.01, J 2e-6, b 1e-6, 3 V from rest. Case A as it is; case C with Coulomb friction of 5e-4 N m. Source
of the numbers: a 30-digit closed form, scipy (Radau), python-control, ngspice and gym-electric-motor agree (computed).
"""

import math
import shutil
import subprocess
import tempfile
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from benchlog.motor.align import Averages
from benchlog.motor.startup import Start, Values, start_of_readings

VOLTS, OHMS, HENRIES, K, INERTIA, VISCOUS = 3.0, 2.0, 1e-3, 0.01, 2e-6, 1e-6
COULOMB_NM = {"A": 0.0, "C": 5e-4}
STEADY_A = {"A": 0.0294117647, "C": 0.0784313725}
PEAK = {"A": (1.435669168, 2.235185e-3), "C": (1.437813529, 2.252136e-3)}
TAUS_S = (38.71908e-3, 0.506413e-3)
TABLE = {
    "A": {0.0002: 0.494355550, 0.001: 1.286873092, 0.005: 1.356026619, 0.02: 0.929992308, 0.1: 0.143488879},
    "C": {0.0002: 0.494396099, 0.001: 1.287571000, 0.005: 1.361384697, 0.02: 0.949373770, 0.1: 0.188754204},
}
WINDOW_S, SETTLE_S, REPLY_S = 0.02, 0.012, 0.002
HAVE_NGSPICE = shutil.which("ngspice") is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class Exact:
    """Two exponentials from breakaway on, a locked winding before it; nothing before 0 s."""

    case: str

    @property
    def breaks_s(self) -> float:
        return -HENRIES / OHMS * math.log1p(-COULOMB_NM[self.case] / K / (VOLTS / OHMS))

    def _parts(self) -> tuple[float, float]:
        breaks_a, steady = COULOMB_NM[self.case] / K, STEADY_A[self.case]
        slope, (slow, fast) = (VOLTS - OHMS * breaks_a) / HENRIES, (-1 / tau for tau in TAUS_S)
        slow_a = (slope - fast * (breaks_a - steady)) / (slow - fast)
        return slow_a, breaks_a - steady - slow_a

    def amps(self, t_s: Values) -> Values:
        since, parts = np.maximum(t_s - self.breaks_s, 0.0), self._parts()
        turning = STEADY_A[self.case] + sum(
            part * np.exp(-since / tau) for part, tau in zip(parts, TAUS_S, strict=True)
        )
        standing = VOLTS / OHMS * -np.expm1(-np.maximum(t_s, 0.0) * OHMS / HENRIES)
        return np.asarray(np.where(t_s < self.breaks_s, standing, turning))

    def charge(self, t_s: npt.NDArray[Any]) -> Values:
        """C since 0 s."""
        tau_e, begins = HENRIES / OHMS, np.clip(t_s, 0.0, self.breaks_s)
        standing = VOLTS / OHMS * (begins + tau_e * np.expm1(-begins / tau_e))
        since, parts = np.maximum(t_s - self.breaks_s, 0.0), self._parts()
        turning = STEADY_A[self.case] * since
        for part, tau in zip(parts, TAUS_S, strict=True):
            turning = turning - part * tau * np.expm1(-since / tau)
        return np.asarray(standing + turning)

    def averaged(self, middle_s: npt.NDArray[Any], window_s: float = WINDOW_S) -> Values:
        half = 0.5 * window_s
        return np.asarray((self.charge(middle_s + half) - self.charge(middle_s - half)) / window_s)

    def run_up_s(self) -> float:
        """Until a tenth of the way from the peak to the steady current is left; the fast part is long over."""
        left = 0.1 * (PEAK[self.case][0] - STEADY_A[self.case])
        return self.breaks_s + TAUS_S[0] * math.log(self._parts()[0] / left)


def read_back(
    exact: Exact,
    *,
    per_s: float,
    phase_s: float = 0.0,
    lasts_s: float = 1.5,
    noise: Values | None = None,
    step_a: float = 0.0,
) -> Start:
    """As a supply reads it `per_s` times a second from `phase_s` on; `noise`: A, one for each reading at least."""
    sent_s = np.arange(phase_s, lasts_s, 1 / per_s)
    amps = exact.averaged(sent_s + 0.5 * (REPLY_S - WINDOW_S))
    if noise is not None:
        amps = amps + noise[: len(amps)]
    volts = np.full(len(amps), VOLTS)
    return start_of_readings(
        sent_s,
        sent_s + REPLY_S,
        volts,
        np.round(amps / step_a) * step_a if step_a else amps,
        set_volts=VOLTS,
        began_s=0.0,
        window_s=WINDOW_S,
        settle_s=SETTLE_S,
        name="start 1",
    )


def over_window(averages: Averages, middle_s: npt.NDArray[Any]) -> Values:
    """A, float64[n]: of a curve that was computed elsewhere."""
    return averages.over(middle_s, WINDOW_S)


@cache
def ngspice_start(coulomb_nm: float) -> tuple[Values, Values, Values]:
    """t_s, amps, speed in rad/s, float64[n] each, by ngspice: the rotor as a capacitor, friction as a current."""
    drag = f"-{coulomb_nm}*tanh(V(w)/0.01)" if coulomb_nm else ""
    deck = f"""* a motor from rest
V1 vin 0 PWL(0 0 1n {VOLTS})
R1 vin a {OHMS}
L1 a b {HENRIES} IC=0
Vs b e 0
Be e 0 V={K}*V(w)
Bt 0 w I={K}*I(Vs){drag}
Cj w 0 {INERTIA} IC=0
Rb w 0 {1 / VISCOUS}
.tran 20u 0.8 0 50u UIC
.control
set wr_singlescale
option numdgt=10
option reltol=1e-6
run
wrdata out.txt i(Vs) v(w)
quit
.endc
.end
"""
    with tempfile.TemporaryDirectory() as folder:
        Path(folder, "start.cir").write_text(deck)
        subprocess.run(["ngspice", "-b", "start.cir"], cwd=folder, check=True, capture_output=True, timeout=60)
        t_s, amps, speed = np.loadtxt(Path(folder, "out.txt")).T
    return t_s, amps, speed
