"""Every job without a window. Commands are imported when they are called, so that each starts fast."""

import sys
from importlib import import_module
from importlib.metadata import version

import click

_COMMANDS = {
    "demo": "benchlog.cli.demo",
    "supply": "benchlog.cli.supply",
    "recover": "benchlog.cli.recover",
    "run-in": "benchlog.cli.run_in",
    "leads": "benchlog.cli.leads",
    "capture": "benchlog.cli.capture",
    "advise": "benchlog.cli.advise",
    "supplies": "benchlog.cli.supplies",
    "ceilings": "benchlog.cli.ceilings",
    "unlock": "benchlog.cli.unlock",
    "jobs": "benchlog.cli.jobs",
    "history": "benchlog.cli.history",
    "show": "benchlog.cli.show",
    "report": "benchlog.cli.report",
    "attach": "benchlog.cli.attach",
    "export": "benchlog.cli.export",
    "import-trace": "benchlog.cli.import_trace",
    "backup": "benchlog.cli.backup",
    "restore": "benchlog.cli.restore",
    "replay": "benchlog.cli.replay",
    "compare": "benchlog.cli.compare",
    "start-test": "benchlog.cli.start_test",
    "limits": "benchlog.cli.limits",
    "lot": "benchlog.cli.lot",
    "marking": "benchlog.cli.marking",
    "calculate": "benchlog.cli.calculate",
    "simulate": "benchlog.cli.simulate",
    "window": "benchlog.cli.window",
    "support-bundle": "benchlog.cli.support_bundle",
    "licences": "benchlog.cli.licences",
}


class _Late(click.Group):
    """A group whose commands are found by name, each in a module of its own."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(_COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in _COMMANDS:
            return None
        command = import_module(_COMMANDS[cmd_name]).command
        assert isinstance(command, click.Command)
        return command


@click.group(cls=_Late, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(version("benchlog"), prog_name="benchlog")
def main() -> None:
    """Frees stuck small motors with a current-limited bench supply, and keeps the record.

    Low voltage only, never above 42.4 V DC. A stop on the screen or the keyboard is not an emergency stop: that is the
    supply's own output key, the lead, or the mains switch. Local rules and licensed practice come first.
    """


if __name__ == "__main__":
    sys.exit(main())
