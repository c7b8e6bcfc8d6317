"""Starts of motors of one kind, by the exact closed form, and figures written down by hand."""

from collections.abc import Mapping, Sequence

import numpy as np

from benchlog.motor.fit import Fitted, start_current
from benchlog.motor.limits import StartLimits, limits_from
from benchlog.motor.overlay import Curve
from benchlog.motor.start_figures import StartFigures

FAN = {"peak_amps": 1.4, "run_up_s": 0.48, "steady_amps": 0.25, "energy_j": 1.2, "ripple_amps": 0.009}
"""Of a cabin fan at 3 V."""
INTERVAL_S = WINDOW_S = 0.02
OF_A_UNIT = (-0.03, 0.02, 0.0, 0.035, -0.01, -0.02, 0.01, 0.025, -0.035, 0.005, 0.015, -0.015)
"""How far the known good ones are from the mean of their kind, as a share."""


def told(values: Mapping[str, float], *, half: float = 0.002, interval_s: float = INTERVAL_S) -> StartFigures:
    """`half`: of the intervals, share of the value. A figure that is left out is told to be so."""
    return StartFigures(
        values={name: Fitted(value=v, low=v * (1 - half), high=v * (1 + half)) for name, v in values.items()},
        why={name: "lost in the ripple" for name in FAN if name not in values},
        interval_s=interval_s,
        jitter_s=0.001,
        readings=75,
    )


def fan(**times: float) -> dict[str, float]:
    """The figures of the kind, some of them times a number."""
    return {name: value * times.get(name, 1.0) for name, value in FAN.items()}


def curve(
    friction: float = 1.0, ohms: float = 1.0, *, phase_s: float = 0.0, on_s: float = 1.5, zero: float = 0.0
) -> Curve:
    """R 2 Ω, K 0.01 V s, tau some 0.1 s: read every INTERVAL_S from `phase_s` on, and 0.1 s before the start."""
    t_s = np.arange(-0.1 + phase_s, on_s, INTERVAL_S)
    amps = start_current(
        np.maximum(t_s, 0.0), 3.0, ohms=2 * ohms, henries=1e-3, k=0.01, inertia=5e-6, coulomb_nm=1.5e-3 * friction
    )
    return Curve(
        name="start",
        run=1,
        number=1,
        t_s=t_s,
        volts=np.full_like(t_s, 3.0),
        amps=amps * (t_s > 0) - zero,
        window_s=WINDOW_S,
    )


def units(count: int = 8, starts: int = 3, *, again: float = 0.004) -> list[list[StartFigures]]:
    """Each figure off by its own order of OF_A_UNIT; starts differ by `again` of that figure."""
    found = []
    for unit in range(count):
        of_starts = []
        for start in range(starts):
            off = [OF_A_UNIT[(unit + 3 * place) % len(OF_A_UNIT)] for place in range(len(FAN))]
            more = again * (start - (starts - 1) / 2)
            of_starts.append(told({n: v * (1 + o + more) for (n, v), o in zip(FAN.items(), off, strict=True)}))
        found.append(of_starts)
    return found


def curves(count: int = 8, starts: int = 3) -> list[list[Curve]]:
    return [
        [
            curve(1 + 4 * OF_A_UNIT[unit], 1 + OF_A_UNIT[(unit + 5) % len(OF_A_UNIT)], phase_s=0.005 * start)
            for start in range(starts)
        ]
        for unit in range(count)
    ]


def limits(count: int = 8, starts: int = 3, *, curved: bool = True) -> StartLimits:
    return limits_from(
        units(count, starts), curves(count, starts) if curved else [], test="cold start", version=4, runs=range(1, 4)
    )


def without(figures: Sequence[StartFigures], name: str) -> list[StartFigures]:
    """The same starts, not telling one figure."""
    return [told({key: fitted.value for key, fitted in one.values.items() if key != name}) for one in figures]
