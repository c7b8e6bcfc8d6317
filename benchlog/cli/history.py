"""`benchlog history`: what earlier jobs came to, for the owner of the shop."""

from collections.abc import Iterable
from pathlib import Path

import click

from benchlog.cli.jobs import nothing_found, opened_options, wanted_of
from benchlog.cli.options import Problem, default_ledger, fail, json_option, kept_ledger, ledger_option, line, say
from benchlog.history.past import Comebacks, Group, Key, PastJob, summarise
from benchlog.history.prior import RungFreed, hopeless, rungs, waiting
from benchlog.history.rates import NOTHING, Spread
from benchlog.ledger.wanted import Wanted
from benchlog.money import show_money
from benchlog.settings import owner_settings

_RUNG = "rung"
_DAYS = (30, 90)


@click.command("history")
@click.option(
    "--by", default=Key.KIND.value, type=click.Choice([*(key.value for key in Key), _RUNG]), show_default=True
)
@click.option("--kind", default="", help="Only of this kind.")
@opened_options
@click.option("--who", default="", help="Only of this technician.")
@click.option("--jobs", "with_jobs", is_flag=True, help="The numbers of the jobs behind each figure.")
@ledger_option
@json_option
def command(
    by: str,
    kind: str,
    since: str,
    until: str,
    month: str,
    who: str,
    with_jobs: bool,
    ledger: Path | None,
    as_json: bool,
) -> None:
    """How often things came free, after what and for how much, how often they came back, what waits."""
    from benchlog.ledger.finding_jobs import choices_for
    from benchlog.ledger.pasts import pasts_of
    from benchlog.ledger.store import Ledger

    try:
        with Ledger.open(default_ledger() if ledger is None else kept_ledger(ledger)) as book:
            now_utc = book.clock.utc()
            choices = choices_for(book)
            wanted = wanted_of(choices, now_utc, kind=kind, since=since, until=until, month=month, who=who)
            pasts = pasts_of(book, wanted)
        page = _Page(pasts, owner_settings().shop.currency, with_jobs=with_jobs, as_json=as_json)
    except Problem as problem:
        fail(str(problem))
    if not pasts and not as_json:
        say("No jobs yet." if wanted == Wanted() else nothing_found(choices.kinds, wanted))
    elif by == _RUNG:
        for rung in rungs(pasts, Key.KIND):
            page.rung(rung)
    else:
        groups = summarise(pasts, Key(by), now_utc)
        for group in groups:
            page.group(group)
        for one in hopeless(groups):
            page.tell(f"Hopeless: {one.label}: {one.why}", one.jobs, hopeless=one.label, why=one.why)
        for wait in waiting(pasts, now_utc):
            told = f"{wait.state.value}: {len(wait.jobs)}, the longest for {wait.days[0]:.0f} days"
            page.tell(told, wait.jobs, state=wait.state.value, days=[round(days, 2) for days in wait.days])


class _Page:
    """Lines for people, or one JSON object each; the ledger's keys said as the jobs' numbers."""

    def __init__(self, pasts: Iterable[PastJob], currency: str, *, with_jobs: bool, as_json: bool) -> None:
        self._numbers = {past.id: past.number for past in pasts}
        self._currency = currency
        self._with_jobs, self._as_json = with_jobs, as_json

    def tell(self, told: str, jobs: tuple[int, ...], **values: object) -> None:
        numbers = [self._numbers[job] for job in jobs]
        if self._as_json:
            line(**values, **({"jobs": numbers} if self._with_jobs else {}))
            return
        say(told)
        if self._with_jobs:
            shown = ", ".join(f"{number:04d}" for number in numbers) or NOTHING
            say(click.wrap_text(shown, 76, initial_indent="    jobs ", subsequent_indent=" " * 9))

    def rung(self, one: RungFreed) -> None:
        self.tell(
            f"{one.label:26.26}  {one.rung:24.24}  {one.rate.text}",
            one.jobs,
            kind=one.label,
            rung=one.rung,
            freed=one.rate.hits,
            of=one.rate.count,
            interval=one.rate.interval,
        )

    def group(self, group: Group) -> None:
        back = group.comebacks
        rate = group.freed_rate
        told = [
            f"{group.label}: {len(group.jobs)} jobs, {len(group.still_open)} still open",
            f"  freed        {rate.text}",
            f"  took         {_middle(group.kicks, 'kicks')}, {_middle(group.run_s, 's of run')}, "
            f"{_middle(group.minutes, 'min of work')}",
            f"  came back    {_back(back)}",
            f"  charged      {show_money(group.cents, self._currency)} in {len(group.charged)} jobs",
        ]
        self.tell(
            "\n".join(told),
            group.jobs,
            group=group.label,
            count=len(group.jobs),
            still_open=len(group.still_open),
            freed=rate.hits,
            of=rate.count,
            interval=rate.interval,
            kicks=_quartiles(group.kicks),
            run_s=_quartiles(group.run_s),
            minutes=_quartiles(group.minutes),
            cents=group.cents,
            charged=len(group.charged),
            at_risk=len(back.at_risk),
            unseen=len(back.unseen),
            back={str(days): None if (by := back.by(days)) is None else [by.share, by.low, by.high] for days in _DAYS},
        )


def _back(back: Comebacks) -> str:
    seen = zip(_DAYS, (back.within_30, back.within_90), strict=True)
    told = [
        f"{len(jobs)} within {days} days ({NOTHING if (by := back.by(days)) is None else by.text})"
        for days, jobs in seen
    ]
    return f"{', '.join(told)}, of {len(back.at_risk)} that would be known again"


def _middle(one: Spread | None, unit: str) -> str:
    return f"{NOTHING} {unit}" if one is None else f"{one.median:.0f} {unit} ({one.low:.0f} to {one.high:.0f})"


def _quartiles(one: Spread | None) -> list[float] | None:
    return None if one is None else [one.low, one.median, one.high]
