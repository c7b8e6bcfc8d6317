"""How long the constants of a start of 1,000 readings take, beside one plain least squares of the same size.

`python -m tests.benchmarks.fit_speed`
"""

import time

import numpy as np

from benchlog.motor.fit import constants
from benchlog.motor.startup import Start

READINGS, TIMES = 1000, 50


def start_of(seed: int) -> Start:
    source = np.random.default_rng(seed)
    t_s = np.linspace(0.04, 6.0, READINGS)
    amps = 0.2 + 1.3 * np.exp(-t_s / 0.4) + source.normal(0, 0.002, READINGS)
    volts = np.full(READINGS, 8.57)
    return Start(
        name="",
        began_s=0.0,
        set_volts=8.57,
        t_s=t_s,
        volts=volts,
        amps=amps,
        all_t_s=t_s,
        all_amps=amps,
        window_s=0.02,
    )


def main() -> None:
    fits, plain = [], []
    for seed in range(TIMES):
        start = start_of(seed)
        began_s = time.perf_counter()
        found = constants(start, sigma_amps=0.002)
        fits.append(time.perf_counter() - began_s)
        assert found.tau_s is not None
        design = np.stack([np.ones(READINGS), np.exp(-start.t_s / 0.4), start.t_s], axis=1)
        began_s = time.perf_counter()
        np.linalg.lstsq(design, start.amps, rcond=None)
        plain.append(time.perf_counter() - began_s)
    fit_ms, plain_ms = 1000 * float(np.median(fits)), 1000 * float(np.median(plain))
    print(f"{READINGS:,} readings: {fit_ms:.2f} ms a fit (worst {1000 * max(fits):.2f}), {TIMES} fits")
    print(f"one plain least squares of three columns: {plain_ms:.3f} ms; ratio {fit_ms / plain_ms:.0f}")


if __name__ == "__main__":
    main()
