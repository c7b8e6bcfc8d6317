"""`benchlog support-bundle`: what somebody who is to help needs to know, and nothing of anybody's jobs."""

from pathlib import Path

import click

from benchlog.cli.options import default_ledger, fail, ledger_option, say

LOOK_S = 120.0


@click.command("support-bundle")
@click.option(
    "--output",
    type=click.Path(path_type=Path, dir_okay=False),
    default=Path("benchlog-support.zip"),
    show_default=True,
    help="The file to write; one that is there is not replaced.",
)
@ledger_option
def command(output: Path, ledger: Path | None) -> None:
    """Write a file for whoever is to help: versions, settings, state of the ledger, last faults.

    No names, labels, complaints, notes, photos or traces are in it. READ-ME.txt in it says what is.
    """
    from benchlog.logs import log_folder
    from benchlog.support import WORDS, bundle

    try:
        bundle(output, ledger or default_ledger(), within_s=LOOK_S)
    except FileExistsError:
        fail(f"{output}: is there already, and stays as it is")
    except OSError as error:
        fail(f"{output}: {error.strerror or error}")
    say(f"{output}\n\n{WORDS.rstrip()}\n\nThe logs themselves are in {log_folder()}.")
