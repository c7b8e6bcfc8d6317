"""The guard machine, a short form. The long one: `python -m tests.recovery.guard_machine --steps 1000000`."""

from tests.recovery import guard_machine


def test_no_sequence_of_commands_readings_and_lies_brings_anything_above_a_ceiling() -> None:
    guard_machine.run(8_000, seeded=1)
    assert guard_machine.taken.total() >= 8_000
    assert all(guard_machine.taken[f"lie: {kind}"] for kind in guard_machine.LIES)
