"""How right the program is about motors it has never seen: `python -m tests.benchmarks.accuracy`."""
