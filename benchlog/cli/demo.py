"""`benchlog demo`: the main job on the embedded simulated bench, in the window or, without a display, the terminal."""

import subprocess
import sys
from pathlib import Path

import click

from benchlog import children
from benchlog.cli.options import Problem, default_ledger, fail, json_option
from benchlog.cli.window import NO_WINDOW, open_window

COMPLAINT = "hums, does not turn"


def demo_ledger() -> Path:
    """Never that of the workshop."""
    return default_ledger().with_name("demo-ledger.db")


class SimulatedBench:
    """A simulated bench in a process of its own, ended with this one's pipe. `hears`: what it is told by hand."""

    def __init__(self, scenario: str) -> None:
        self._process = subprocess.Popen(
            children.command("drivers.simulated", "--scenario", scenario, "--until-stdin-closes"),
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            # A supply does not hear the terminal's Ctrl-C either.
            start_new_session=True,
            creationflags=getattr(subprocess, "CREATE_NEW_PROCESS_GROUP", 0),
        )
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self.hears = self._process.stdin
        said = self._process.stdout.readline()
        self.resource = said.removeprefix("listening on ").strip()
        if not self.resource.startswith("TCPIP::127.0.0.1::"):
            self.close()
            fail("the simulated bench did not start")

    def close(self) -> None:
        assert self._process.stdout is not None
        self.hears.close()
        try:
            self._process.wait(timeout=5.0)
        except subprocess.TimeoutExpired:
            self._process.kill()
            self._process.wait()
        self._process.stdout.close()

    def __enter__(self) -> "SimulatedBench":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()


@click.command("demo")
@click.option("--scenario", default="stuck-soft", show_default=True, help="See: benchlog simulate --list")
@click.option("--terminal", is_flag=True, help="In the terminal even where there is a display.")
@click.option(
    "--ledger", type=click.Path(path_type=Path), help=f"The ledger file, of its own.  [default: {demo_ledger()}]"
)
@json_option
def command(scenario: str, terminal: bool, ledger: Path | None, as_json: bool) -> None:
    """Free a stuck motor on the embedded demo bench. No hardware is touched."""
    from benchlog.cli.recover import recover
    from drivers.simulated.scenario import BadScenario, load

    book = ledger or demo_ledger()
    try:
        item = load(scenario)
    except BadScenario as bad:
        fail(str(bad))
    with SimulatedBench(scenario) as bench:
        told = [
            "--demo",
            "--item",
            item.item,
            "--rated-voltage",
            str(item.rated_volts),
        ]
        status = (
            NO_WINDOW
            if terminal or as_json
            else open_window(book, resource=bench.resource, extra=told, hears=bench.hears)
        )
        if status != NO_WINDOW:
            sys.exit(status)
        if not as_json:
            click.echo(f"DEMO in the terminal: {item.item}, {item.rated_volts:g} V. {item.story}")
            click.echo(f"The safety checks count as ticked, and hand work is skipped.\nLedger: {book}\n")
        try:
            status = recover(
                resource=bench.resource,
                rated_voltage=str(item.rated_volts),
                max_voltage=None,
                max_current=None,
                sequence_name="starting-ladder",
                job_number=None,
                item_kind=item.item,
                serial="",
                complaint=COMPLAINT,
                thermal_class="A",
                load_state="dry, uncoupled",
                yes=True,
                output=1,
                ledger=book,
                as_json=as_json,
            )
        except Problem as problem:
            fail(str(problem))
        if not as_json:
            click.echo(f'  See it again: benchlog jobs --ledger "{book}"')
    sys.exit(status)
