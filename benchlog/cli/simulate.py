"""`benchlog simulate`: the simulated bench by itself, for any client."""

import sys

import click


@click.command("simulate", context_settings={"ignore_unknown_options": True, "help_option_names": []})
@click.argument("arguments", nargs=-1, type=click.UNPROCESSED)
def command(arguments: tuple[str, ...]) -> None:
    """A simulated SCPI supply with a motor on it, on this machine only; --help tells its options."""
    from drivers.simulated.__main__ import main

    sys.exit(main(list(arguments), name="benchlog simulate"))
