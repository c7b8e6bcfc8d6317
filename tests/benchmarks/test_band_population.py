"""The population that limits are counted on: its closed form against the product's, and its faults."""

from dataclasses import replace

import numpy as np
import pytest

from benchlog.motor.fit import start_current
from tests.benchmarks.band_population import WINDOW_S, draw_starts, draw_type


def test_readings_are_averages_of_the_exact_current_over_the_window() -> None:
    """Computed: the product's closed form of the current, averaged over 20,001 points, one motor without any spread."""
    source = np.random.default_rng(1)
    plain = dict.fromkeys(("spread_ohms", "spread_k", "spread_inertia", "spread_friction", "jitter_s"), 0.0)
    type_ = replace(
        draw_type(source), **plain, again_ohms=0.0, again_friction=0.0, ripple=0.0, noise_a=0.0, step_a=1e-9
    )
    starts = draw_starts(type_, 1, 1, source)
    for t_s, read in list(zip(starts.t_s[0, 0], starts.amps[0, 0], strict=True))[:20]:
        at_s = np.linspace(t_s - WINDOW_S / 2, t_s + WINDOW_S / 2, 20_001)
        amps = start_current(
            np.maximum(at_s, 0.0),
            type_.volts,
            ohms=type_.ohms,
            henries=5e-4 * type_.ohms,
            k=type_.k,
            inertia=type_.inertia,
            viscous=type_.viscous,
            coulomb_nm=type_.coulomb_nm,
        )
        assert read == pytest.approx(float(np.mean(np.where(at_s > 0, amps, 0.0))), rel=1e-3)


@pytest.mark.parametrize(
    ("fault", "peak", "steady"),
    [("friction times 2", 1.0, 2.0), ("resistance + 30 %", 1 / 1.3, 1.0), ("magnet - 15 %", 1.0, 1 / 0.85)],
)
def test_a_fault_changes_what_it_should(fault: str, peak: float, steady: float) -> None:
    """Computed: stall current as V/R, current at speed as T/K; within what the viscous part and the window change."""
    type_ = draw_type(np.random.default_rng(8))
    sound, faulty = (draw_starts(type_, 300, 1, np.random.default_rng(2), fault=name).amps for name in ("good", fault))
    assert np.mean(faulty.max(axis=2)) / np.mean(sound.max(axis=2)) == pytest.approx(peak, abs=0.06)
    assert np.mean(faulty[..., -5:]) / np.mean(sound[..., -5:]) == pytest.approx(steady, rel=0.12)
