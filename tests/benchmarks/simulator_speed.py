"""Prints how many simulated seconds one core does in a second, with a motor turning and being read."""

import sys
import time

from drivers.simulated.bench import Bench
from drivers.simulated.scenario import load

SIMULATED_S = 10.0
READ_EVERY_S = 0.02


def speed(name: str) -> float:
    """Simulated seconds per second of one core, motor turning, 50 readings a second."""
    bench = Bench(load(name))
    bench.send("VOLT 12;CURR 5;OUTP ON", 0.0)
    bench.advance(1.0)
    if bench.motor is None or bench.motor.speed == 0.0:
        raise SystemExit(f"{name}: the motor does not turn, so this would measure nothing")
    began_s = time.process_time()
    for reading in range(int(SIMULATED_S / READ_EVERY_S)):
        bench.send(":MEAS:VOLT?;:MEAS:CURR?", 1.0 + reading * READ_EVERY_S)
    return SIMULATED_S / (time.process_time() - began_s)


if __name__ == "__main__":
    for scenario in sys.argv[1:] or ["free", "stuck-soft"]:
        print(f"{scenario}: {speed(scenario):.1f} simulated seconds per second of one core")
