"""How current and speed of a DC motor go on over one step, exactly, at constant terminal volts and constant friction.

The two equations  L di/dt = v - R i - K w  and  J dw/dt = K i - b w - T  are linear while the rotor turns one way,
so one step is a 2x2 matrix exponential in closed form plus its integral for the held inputs v and T.
Units are SI throughout: ohm, henry, V s/rad (= N m/A), kg m², N m s/rad, seconds.
"""

import math
from typing import NamedTuple


class Propagator(NamedTuple):
    """i1 = ii*i + iw*w + iv*v - it*T;  w1 = wi*i + ww*w + wv*v - wt*T, with T the friction against the motion."""

    ii: float
    iw: float
    iv: float
    it: float
    wi: float
    ww: float
    wv: float
    wt: float


def turning(ohms: float, henries: float, k: float, inertia: float, viscous: float, step_s: float) -> Propagator:
    """The step of a turning rotor. `k` may be 0 only together with a resistance above 0 and a viscous friction above 0.

    Source: exp(A h) = e1/2 (I + (A - m I)/q) + e2/2 (I - (A - m I)/q) with the eigenvalues m ± q of A, computed from
    the two equations above; the integral is A^-1 (exp(A h) - I) B.
    """
    a11, a12 = -ohms / henries, -k / henries
    a21, a22 = k / inertia, -viscous / inertia
    mean = 0.5 * (a11 + a22)
    determinant = a11 * a22 - a12 * a21
    spread = mean * mean - determinant
    if spread > 1e-12 * mean * mean:
        q = math.sqrt(spread)
        # The slow eigenvalue by the product of the two: their sum would lose it to cancellation in a stiff motor.
        fast, slow = mean - q, determinant / (mean - q)
        e1, e2 = math.exp(slow * step_s), math.exp(fast * step_s)
        even, odd = 0.5 * (e1 + e2), (e1 - e2) / (2.0 * q)
    elif spread < -1e-12 * mean * mean:
        q = math.sqrt(-spread)
        decay = math.exp(mean * step_s)
        even, odd = decay * math.cos(q * step_s), decay * math.sin(q * step_s) / q
    else:
        even = math.exp(mean * step_s)
        odd = even * step_s
    p11, p12 = even + odd * (a11 - mean), odd * a12
    p21, p22 = odd * a21, even + odd * (a22 - mean)
    # A^-1 (P - I), column by column, for the inputs v/L and T/J.
    m11, m21 = p11 - 1.0, p21
    m12, m22 = p12, p22 - 1.0
    v_scale = 1.0 / (determinant * henries)
    t_scale = 1.0 / (determinant * inertia)
    return Propagator(
        p11,
        p12,
        (a22 * m11 - a12 * m21) * v_scale,
        (a22 * m12 - a12 * m22) * t_scale,
        p21,
        p22,
        (a11 * m21 - a21 * m11) * v_scale,
        (a11 * m22 - a21 * m12) * t_scale,
    )


def crossing_s(amps: float, final_amps: float, wanted_amps: float, time_constant_s: float) -> float:
    """When a current on its way from `amps` to `final_amps` passes `wanted_amps`; wanted lies between the two."""
    ratio = (wanted_amps - final_amps) / (amps - final_amps)
    return -time_constant_s * math.log(ratio) if ratio > 0.0 else math.inf
