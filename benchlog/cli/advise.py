"""`benchlog advise`: ceilings, where the ladder begins, and what to mind, from rating, probe and the shop's history."""

import sys
from pathlib import Path

import click
import msgspec

from benchlog.cli.ceilings import job_limits, number_of
from benchlog.cli.options import (
    Problem,
    default_ledger,
    fail,
    json_option,
    ledger_option,
    line,
    positive,
    rated_volts_of,
    say,
)
from benchlog.errors import Refused
from benchlog.motor.insulation import winding_ceiling_c
from benchlog.motor.winding import Winding
from benchlog.outcome import Outcome, WindingVerdict
from benchlog.quantities import show
from benchlog.records import Item, RunKind
from benchlog.recovery.advice import Advice, Past, advise, same_as_last
from benchlog.recovery.ceilings import Layer, Limits, intersect
from benchlog.recovery.steps import Kicks, built_in, volts_of
from benchlog.settings import owner_settings

_NAMES = {"volts": "Volts", "amps": "Amps", "locked_s": "Locked in any minute", "winding_c": "Winding"}
_WIDTH = 76


@click.command("advise")
@click.option("--rated-voltage", metavar="V", help="The motor's rated volts, if a label says them.")
@click.option("--job", "job_number", metavar="NUMBER", help="For a job: its item, its rating and its last probe.")
@click.option("--item", "kind", default="", help="What it is.")
@click.option("--make", default="")
@click.option("--model", default="")
@click.option("--serial", default="")
@click.option("--resistance", metavar="OHM", help="Of the winding, as a probe found it.")
@click.option("--max-voltage", metavar="V", help="Ceiling for this job.")
@click.option("--max-current", metavar="A", help="Ceiling for this job.")
@click.option("--thermal-class", default="A", show_default=True, help="Of the winding, as the label says (IEC 60085).")
@ledger_option
@json_option
def command(as_json: bool, **asked: object) -> None:
    """What to set, where to begin and what to mind. Switches nothing on and writes nothing."""
    try:
        _tell(*_advice(**asked), as_json=as_json)  # type: ignore[arg-type]
    except Problem as problem:
        fail(str(problem))
    sys.exit(0)


def _advice(
    *,
    rated_voltage: str | None,
    job_number: str | None,
    kind: str,
    make: str,
    model: str,
    serial: str,
    resistance: str | None,
    max_voltage: str | None,
    max_current: str | None,
    thermal_class: str,
    ledger: Path | None,
) -> tuple[Advice, list[Past], str]:
    from benchlog.ledger.likes import past_of
    from benchlog.ledger.store import Ledger
    from benchlog.ledger.unlocks import owner_layer

    item = Item(kind=kind, make=make, model=model, serial=serial)
    rated = None if rated_voltage is None else rated_volts_of(rated_voltage)
    ohm = None if resistance is None else positive(resistance, "resistance", "Ω", at_most=1e6)
    past: list[Past] = []
    owner, last, kicks, job_id = owner_settings().ceilings, None, 0, None
    verdict = WindingVerdict.WINDING
    path = ledger or default_ledger()
    if path.exists():
        with Ledger.open(path) as book:
            if job_number is not None:
                job = book.job_by_number(number_of(job_number))
                item, rated, job_id = job.item, rated or job.motor.rated_volts, job.id
                owner = owner_layer(book, owner_settings(), job.id).limits
                kicks = book.kicks_on(job.id, book.clock.utc()[:10])
                for run in book.runs(job.id):
                    if run.kind is not RunKind.LEADS and run.result.winding_verdict is not WindingVerdict.NOT_PROBED:
                        verdict, ohm = run.result.winding_verdict, run.result.resistance_ohm or ohm
                    last = run.result.outcome if run.kind in (RunKind.RECOVERY, RunKind.HAND) else last
            past = past_of(book, item, not_job=job_id)
    elif job_number is not None:
        raise Refused(f"{path}: there is no ledger")
    job_layer = job_limits(rated, max_voltage, max_current)
    motor = Limits(winding_c=winding_ceiling_c(thermal_class))
    ceilings = intersect({Layer.OWNER: owner, Layer.MOTOR: motor, Layer.JOB: job_layer})
    probed = ohm is not None or verdict is not WindingVerdict.WINDING
    advice = advise(
        rated_volts=rated,
        ceilings=ceilings,
        ladder=built_in("starting-ladder"),
        winding=Winding(verdict=verdict, reason="", ohm=ohm, reference_ohm=ohm) if probed else None,
        past=past,
        last=last if isinstance(last, Outcome) else None,
        kicks_today=kicks,
    )
    return advice, past, _again(past, ceilings, rated)


def _again(past: list[Past], ceilings: object, rated: float | None) -> str:
    """Whether the last that was freed can be done again, in a sentence; "" where there was none."""
    if rated is None or not any(one.freed for one in past):
        return ""
    try:
        found = same_as_last(past, ceilings, rated)  # type: ignore[arg-type]
    except Refused as refusal:
        return f"Same as last time is not possible: {refusal}."
    assert found.sequence is not None
    volts = None if found.limits is None else found.limits.volts
    return (
        f'Same as last time: as in job {found.job:04d}, run {found.run}: "{found.sequence.name}", '
        f"ceiling {show(volts, 'V')}."
    )


def _tell(advice: Advice, past: list[Past], again: str, *, as_json: bool) -> None:
    remarks = [*advice.remarks, *([again] if again else [])]
    if as_json:
        for one in advice.proposals:
            line(proposal=one.name, value=one.value, unit=one.unit, at_most=one.at_most, why=one.why)
        rungs = None if advice.sequence is None else [s.name for s in advice.sequence.steps]
        line(
            first_rung=advice.first_rung, steps=rungs, remarks=remarks, like=[msgspec.to_builtins(p.run) for p in past]
        )
        return
    for one in advice.proposals:
        value = show(one.value, one.unit)
        click.echo(f"{_NAMES[one.name]:22}{value:>9}   at most {show(one.at_most, one.unit)}")
        say(click.wrap_text(one.why, _WIDTH, initial_indent="    ", subsequent_indent="    "))
    if advice.sequence is None:
        click.echo("Ladder                none")
    else:
        volts = next((p.value for p in advice.proposals if p.name == "volts"), 0.0)
        most = next((p.at_most for p in advice.proposals if p.name == "volts"), 0.0)
        kicks = [volts_of(step, volts) for step in advice.sequence.steps if isinstance(step, Kicks)]
        within = ", ".join(show(each, "V") for each in kicks if each <= most)
        above = sum(each > most for each in kicks)
        click.echo(f"Ladder, from rung {advice.first_rung}    {within}")
        if above:
            click.echo(f"    {above} more above the ceiling are left out.")
    for remark in remarks:
        say(click.wrap_text(remark, _WIDTH, initial_indent="  - ", subsequent_indent="    "))
