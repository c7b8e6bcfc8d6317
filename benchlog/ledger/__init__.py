"""Jobs, runs and traces on disk. One file, one writer at a time."""
