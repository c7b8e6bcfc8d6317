"""Whole runs by the hundred in virtual time: drawn from a seed, spoiled on purpose, held against the truth."""
