"""What may be done, and what comes next. Pure: no clock, no files, no threads, no instruments."""
