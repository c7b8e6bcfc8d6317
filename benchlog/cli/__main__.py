"""`python -m benchlog.cli`."""

from benchlog.cli import main

main()
