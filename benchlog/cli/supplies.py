"""`benchlog supplies`: where supplies may be."""

from importlib import resources

import click

from benchlog.bench.looking_around import KINDS, LastLook, last_look, look_around
from benchlog.cli.options import fail, json_option, line, say
from benchlog.clock import minute_text

NOBODY_LOOKED = "Nobody has looked yet: benchlog supplies --look does."
NOTHING = "Nothing was found."
ANY_ADDRESS = """\
Any address can be given to --supply, found or not:
  TCPIP::192.168.0.5::5025::SOCKET     a socket: address and port
  TCPIP::192.168.0.5::INSTR            VXI-11
  TCPIP::192.168.0.5::hislip0::INSTR   HiSLIP
  ASRL/dev/ttyUSB0,115200::INSTR       a serial port at 115200 baud; without a number at 9600
A socket is never found by looking. A serial port may be anything: it is not spoken to before you name it."""


@click.command("supplies")
@click.option("--look", is_flag=True, help="Look now: network, USB, serial ports. Takes a few seconds.")
@click.option("--udev-rule", is_flag=True, help="Print the rule by which Linux lets you open instruments on USB.")
@json_option
def command(look: bool, udev_rule: bool, as_json: bool) -> None:
    """List where supplies may be, as found when you last looked.

    Looking asks the network once who speaks VXI-11, and reads this computer's lists of USB instruments and serial
    ports. Nothing that is found gets a message. `benchlog supply ADDRESS` asks one what it is.
    """
    if udev_rule:
        click.echo(resources.files("drivers").joinpath("udev", "70-benchlog-usbtmc.rules").read_text("utf-8"), nl=False)
        return
    try:
        last = look_around() if look else last_look()
    except OSError as error:
        fail(f"can not look: {error}")
    if as_json:
        _tell_lines(last)
    elif last is None:
        click.echo(NOBODY_LOOKED)
        click.echo(ANY_ADDRESS)
    else:
        _tell(last)


def _tell(last: LastLook) -> None:
    say(f"Looked {minute_text(last.utc)}.")
    for place in last.places:
        say(f"  {place.address:42}  {KINDS.get(place.kind, place.kind):11}  {place.words:.60}".rstrip())
    if not last.places:
        click.echo(NOTHING)
    for missed in last.missed:
        part, _, why = missed.partition(": ")
        say(f"Not looked at: {KINDS.get(part, part)}: {why}")
    click.echo(ANY_ADDRESS)


def _tell_lines(last: LastLook | None) -> None:
    if last is None:
        return
    for place in last.places:
        line(address=place.address, kind=place.kind, words=place.words, looked_utc=last.utc)
    for missed in last.missed:
        part, _, why = missed.partition(": ")
        line(not_looked_at=part, why=why, looked_utc=last.utc)
