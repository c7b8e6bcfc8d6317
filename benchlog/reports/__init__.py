"""What leaves the program on paper or as a file: job sheets, tags, curves, exports."""
