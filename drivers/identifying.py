"""What a supply can do in a dialect, asked by queries only, and what it is without."""

from collections.abc import Iterable, Iterator

from drivers import scpi
from drivers.dialect import Dialect, Sense
from drivers.exchange import Exchange
from drivers.scpi_reading import ReadingForm, quantities
from drivers.supply import (
    CHOICE_NOT_TOLD,
    CHOSEN_APART,
    NO_ERROR_QUEUE,
    NO_MODE,
    NO_OUTPUT_STATE,
    NO_OVER_AMPS_LATCH,
    NO_OVER_VOLTS_LATCH,
    NO_SETPOINTS,
    ONE_SWITCH,
    OVER_AMPS,
    OVER_VOLTS,
    RANGE_NOT_TOLD,
    UNUSABLE,
    Capabilities,
    NotASupply,
    SupplyGarbled,
    SupplyTimeout,
)


def gaps_of(dialect: Dialect) -> frozenset[str]:
    """What the dialect itself is without, before any supply is asked."""
    return frozenset(_gaps(dialect))


def identify(
    exchange: Exchange, dialect: Dialect, output: int, gaps: frozenset[str], latches: Iterable[str]
) -> Capabilities:
    """`dialect`: for that output; `gaps` of the dialect; `latches`, asked for when they are looked at, are those there.

    Raises NotASupply where something answers that can't be used, SupplyLost where nothing does.
    """
    try:
        identity = exchange.identify()
    except (SupplyTimeout, SupplyGarbled, ValueError) as error:
        what = "something answers there, but does not identify itself, or another program holds it"
        raise NotASupply(exchange.resource, what) from error
    if UNUSABLE & gaps:
        what = f'"{identity}" can not be used by the dialect "{dialect.name}": {", ".join(sorted(UNUSABLE & gaps))}'
        raise NotASupply(exchange.resource, f"{what}; a turned knob or an output left on would go unseen")
    try:
        return _capabilities(exchange, dialect, output, identity, gaps, latches)
    # A zero with an exponent no double has is a number, but overflows as a resolution.
    except (SupplyTimeout, SupplyGarbled, ValueError) as error:
        what = f'"{identity}" does not answer as a supply of the dialect "{dialect.name}" does ({error})'
        raise NotASupply(exchange.resource, what) from error


def is_four_wire(sense: Sense, reply: str) -> bool:
    """Raises ValueError where the reply tells neither."""
    word = reply.strip().strip('"').upper()
    if word in sense.on_words + sense.off_words:
        return word in sense.on_words
    return scpi.boolean(reply)


def _capabilities(
    exchange: Exchange, dialect: Dialect, output: int, identity: str, gaps: frozenset[str], latches: Iterable[str]
) -> Capabilities:
    form = ReadingForm(dialect, output)
    exchange.errors()
    started_s = exchange.now()
    replies = [exchange.ask(*form.queries[0])]
    reply_s = exchange.now() - started_s
    # From here on an answer that does not come is known not to be coming sooner.
    exchange.set_timeout(max(0.5, 5 * reply_s))
    replies += [exchange.ask(*query) for query in form.queries[1:]]
    received_s = exchange.now()
    form.of(replies, started_s, received_s)
    # An output that it does not have: one chosen before stays the one that was, and its answers look as good as any.
    complaints, chosen = exchange.errors(), _is_chosen(exchange, dialect)
    if complaints or chosen is False:
        what = f"{'; '.join(complaints) or 'it goes on with another one'}, asked for output {output}"
        raise NotASupply(exchange.resource, f'"{identity}" is not as the dialect "{dialect.name}" says: {what}')
    volts, amps = quantities(dialect)
    volts_told, amps_told = _ranges(exchange, dialect, output)
    there = frozenset(latches)
    more = {
        CHOICE_NOT_TOLD: bool(dialect.outputs.select) and chosen is None and dialect.errors.form == "none",
        RANGE_NOT_TOLD: volts_told is None or amps_told is None,
        NO_OVER_VOLTS_LATCH: OVER_VOLTS not in there,
        NO_OVER_AMPS_LATCH: OVER_AMPS not in there,
    }
    return Capabilities(
        identity=identity,
        dialect=dialect.name,
        volts_max=volts.sayable(volts_told),
        amps_max=amps.sayable(amps_told),
        volts_step=volts.step(replies[0]),
        amps_step=amps.step(replies[1]),
        latches=there,
        window_s=dialect.readback.window_s,
        settle_s=dialect.readback.settle_s,
        reply_s=reply_s,
        reading_s=reply_s if dialect.link.compound else received_s - started_s,
        output=output,
        outputs=dialect.outputs.count,
        gaps=gaps | {gap for gap, there_is in more.items() if there_is},
        watchdog=_has_watchdog(exchange, dialect),
        sense=_has_sense(exchange, dialect),
    )


def _ranges(exchange: Exchange, dialect: Dialect, output: int) -> tuple[float | None, float | None]:
    """What it tells, else what the dialect knows of the output."""
    asked, known = dialect.identify, dialect.ranges
    knowns = (None, None) if known is None else (known.volts_max[output - 1], known.amps_max[output - 1])
    found: list[float | None] = []
    for query, quantity, fixed in zip((asked.volts_max, asked.amps_max), quantities(dialect), knowns, strict=True):
        told = exchange.answer_to(query, quantity.read) if query else None
        found.append(fixed if told is None else told)
    return found[0], found[1]


def _is_chosen(exchange: Exchange, dialect: Dialect) -> bool | None:
    """Whether the output that was chosen is the one that it goes by, None where it does not tell."""
    header, _, wanted = dialect.outputs.select.partition(" ")
    if not wanted:
        return None

    def same(reply: str) -> bool:
        return reply.strip().strip('"').lstrip("+").upper() == wanted.strip().upper()

    told = exchange.answer_to(f"{header}?", same)
    return None if told is None else bool(told)


def _has_watchdog(exchange: Exchange, dialect: Dialect) -> bool:
    timer = dialect.watchdog
    if timer is None or exchange.answer_to(timer.ask) is None:
        return False
    return exchange.answer_to(timer.enabled, scpi.boolean) is not None


def _has_sense(exchange: Exchange, dialect: Dialect) -> bool:
    sense = dialect.sense
    return sense is not None and exchange.answer_to(sense.ask, lambda reply: is_four_wire(sense, reply)) is not None


def _gaps(dialect: Dialect) -> Iterator[str]:
    back, outputs, program, status = dialect.readback, dialect.outputs, dialect.program, dialect.status
    if not (back.set_volts and back.set_amps):
        yield NO_SETPOINTS
    if not (back.output or (status is not None and status.output)):
        yield NO_OUTPUT_STATE
    if not (back.condition or dialect.mode or (status is not None and (status.cc or status.cv))):
        yield NO_MODE
    if dialect.errors.form == "none":
        yield NO_ERROR_QUEUE
    if outputs.count > 1 and not outputs.select and not ("{n}" in program.on and "{n}" in program.off):
        yield ONE_SWITCH
    if outputs.select and not dialect.link.compound:
        yield CHOSEN_APART


def outputs_apart(dialect: Dialect) -> bool:
    """Whether two programs may use an output each: where all that changes anything names its output, in one message
    with it, and the instrument takes two clients."""
    if dialect.outputs.count < 2 or dialect.outputs.select or dialect.link.one_client or dialect.watchdog is not None:
        return False
    program, sense = dialect.program, dialect.sense
    changing = [program.volts, program.amps, program.both, program.on, program.off]
    for latch in (dialect.over_volts, dialect.over_amps):
        changing += [] if latch is None else [latch.set, latch.enable, latch.disable, latch.clear]
    changing += [] if sense is None else [sense.on, sense.off]
    if dialect.array is not None:
        changing += [dialect.array.interval, dialect.array.points, dialect.array.start, dialect.array.abort]
        changing += dialect.array.at_once
    return all("{n}" in unit for unit in changing if unit)
