"""A simulated bench: a motor that may be stuck, a one-quadrant supply, and the instrument that speaks for it.

It shares no constant and no code with what judges its readings.
"""
