"""The shipped loop with all that a bench process has around it, on a plan that only watches: for loop_rate.

Orders on stdin, frames on stdout, at the end the readings a second on stderr.
"""

import gc
import sys
import threading
from pathlib import Path

from benchlog.bench import rescue
from benchlog.bench.__main__ import FrameSender
from benchlog.bench.arming import arm
from benchlog.bench.journal import Journal
from benchlog.bench.lease import Lease, read_orders
from benchlog.bench.loop import Loop
from benchlog.bench.opening import open_supply
from benchlog.bench.reporting import Reporter
from benchlog.bench.switching_off import switch_off
from benchlog.clock import SystemClock
from benchlog.motor.motion import Motion
from benchlog.outcome import Outcome
from benchlog.recovery.budget import Budget
from benchlog.recovery.ceilings import Layer, Limits, intersect
from benchlog.recovery.commands import Apply, Plan, Switch, Watch
from benchlog.recovery.guard import Guard
from benchlog.recovery.moves import Finding, discharged


def watching(samples: int, clock: SystemClock, rates: list[float]) -> Plan[Finding]:
    """At 1 V, which heats nothing, so that no ceiling ends it."""
    seen = yield Watch()
    yield from discharged(seen)
    yield Switch(on=True)
    seen = yield Apply(volts=1.0, amps=1.0, belief=Motion.TURNING)
    began = clock.now()
    for _ in range(samples):
        yield Watch()
    rates.append(samples / (clock.now() - began))
    return Finding(outcome=Outcome.RUNS, reason="watched")


def main() -> None:
    resource, samples, path = sys.argv[1], int(sys.argv[2]), Path(sys.argv[3])
    clock, rates = SystemClock(), list[float]()
    lease = Lease(clock)
    orders = open(sys.stdin.fileno(), "rb", buffering=0, closefd=False)  # noqa: SIM115
    threading.Thread(target=read_orders, args=(orders, lease), daemon=True).start()
    sender = FrameSender(sys.stdout.fileno())
    waiting = rescue.Rescue(resource, path.with_suffix(".rescue"))
    supply = open_supply(resource, clock.now)
    ceilings = intersect({Layer.JOB: Limits(volts=12.0, amps=2.0)})
    guard = Guard(ceilings, supply.capabilities, Budget(ceilings, ambient_c=25.0, rated_volts=12.0))
    assert waiting.stand_by(supply.capabilities)
    arm(supply, ceilings)

    def beat() -> None:
        waiting.beat()

    with Journal(path) as journal:
        zero_s = clock.now()
        loop = Loop(
            supply=supply,
            guard=guard,
            journal=journal,
            lease=lease,
            clock=clock,
            screen=Reporter(sender.emit, guard, zero_s).screen,
            zero_s=zero_s,
            beat=beat,
        )
        gc.freeze()
        try:
            finding = loop.run(watching(samples, clock, rates))
        finally:
            off = switch_off(supply, clock)
            supply.close()
    sender.close()
    waiting.release(safe=off.confirmed)
    assert rates, finding
    sys.stderr.write(f"{rates[0]}\n")


if __name__ == "__main__":
    main()
