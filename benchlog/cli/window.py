"""`benchlog window`: the window, in a process of its own, so that no fault of a display takes the terminal with it."""

import os
import signal
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import IO

import click

from benchlog import children
from benchlog.cli.options import default_ledger, ledger_option

NO_WINDOW = 69
"""The window's exit status where it has no display, or a system library is missing. It has said so in one line."""


def open_window(
    ledger: Path, *, resource: str | None = None, extra: Sequence[str] = (), hears: IO[str] | None = None
) -> int:
    """Its exit status; NO_WINDOW also where Qt itself gave up before it could say so. `extra`: further arguments.

    `hears`: what is told what the window writes.
    """
    arguments = children.command("ui", "--ledger", str(ledger))
    if resource is not None:
        arguments += ["--supply", resource]
    arguments += extra
    window: subprocess.Popen[bytes] | None = None
    told: list[int] = []

    def pass_on(number: int, _: object) -> None:
        told.append(number)
        if window is not None:
            window.send_signal(number)

    before = {signal.SIGINT: signal.signal(signal.SIGINT, signal.SIG_IGN)}  # Ctrl-C reaches the window as well
    for number in (signal.SIGTERM, *([signal.SIGHUP] if os.name == "posix" else [])):
        before[number] = signal.signal(number, pass_on)
    try:
        window = subprocess.Popen(arguments, stdout=hears)
        for early in told[:1]:  # before there was one
            window.send_signal(early)
        status = window.wait()  # output off, then it closes
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
    if os.name == "posix" and status == -signal.SIGABRT:
        click.echo("No window: Qt could not use this display; on Debian: apt install libxcb-cursor0 libegl1", err=True)
        return NO_WINDOW
    return status


@click.command("window")
@click.option("--supply", "resource", help="VISA address of the supply.")
@ledger_option
def command(resource: str | None, ledger: Path | None) -> None:
    """Open the window."""
    sys.exit(open_window(ledger or default_ledger(), resource=resource))
