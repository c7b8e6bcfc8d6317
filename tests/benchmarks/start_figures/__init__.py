"""How right the figures of a start are that were polled, and a curve that several starts fill in together."""
