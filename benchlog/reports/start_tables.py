"""Captured starts as tables, for whoever evaluates them elsewhere: curves, figures, limits. SI units.

The same tables are written as CSV, as NumPy arrays and as HDF5; here is decided what is in them.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from benchlog.ledger.captured import Captured
from benchlog.motor.limit_values import StartLimits
from benchlog.motor.start_figures import FIGURES, FigureKind, StartFigures
from benchlog.records import Event
from benchlog.reports.csv_forms import Column, Datatype, Value

NUMBER, WORDS, COUNT, YES = Datatype.DOUBLE, Datatype.STRING, Datatype.INTEGER, Datatype.BOOLEAN


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """A run of captured starts, and the serial of what it was of; "" for no serial."""

    serial: str
    captured: Captured


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """`name`: for programs. `values`: a column each, as many as there are rows. `key`: columns that tell rows apart."""

    name: str
    title: str
    columns: tuple[Column, ...]
    values: tuple[Sequence[Value], ...]
    key: tuple[str, ...]

    @property
    def rows(self) -> Iterable[tuple[Value, ...]]:
        return zip(*self.values, strict=True)


_OF_START = (
    Column(name="serial", title="Serial", datatype=WORDS),
    Column(name="run", title="Run", datatype=COUNT),
    Column(name="start", title="Start", datatype=COUNT),
)
_KEY = ("run", "start")


def tables_of(taken: Sequence[Taken], limits: StartLimits | None = None) -> tuple[Table, ...]:
    """Curves and figures; with limits those as well, and their curve where they have one."""
    tables = [curves_table(taken), figures_table(taken)]
    if limits is not None:
        tables.append(limits_table(limits))
        if limits.curve is not None:
            tables.append(band_table(limits))
    return tuple(tables)


def curves_table(taken: Iterable[Taken]) -> Table:
    """A row a reading: t_s since the trigger. `dense`: measured by the supply itself rather than read back."""
    values: tuple[list[Value], ...] = tuple([] for _ in range(7))
    for one in taken:
        for curve in (*one.captured.curves, *one.captured.dense_curves):
            count = len(curve.t_s)
            constant: tuple[Value, ...] = (one.serial, curve.run, curve.number, curve.dense)
            for column, value in zip(values, constant, strict=False):
                column.extend([value] * count)
            for column, numbers in zip(values[4:], (curve.t_s, curve.volts, curve.amps), strict=True):
                column.extend(numbers.tolist())
    columns = (
        *_OF_START,
        Column(name="dense", title="Measured by the supply itself", datatype=YES),
        Column(name="t_s", title="Time since the trigger", datatype=NUMBER, unit="s"),
        Column(name="volts", title="Voltage", datatype=NUMBER, unit="V"),
        Column(name="amps", title="Current", datatype=NUMBER, unit="A"),
    )
    return Table(name="curves", title="Curves of captured starts", columns=columns, values=values, key=())


def _of_event(name: str) -> Callable[[Event, StartFigures], Value]:
    return lambda start, figures: start.values.get(name)


_ABOUT: tuple[tuple[Column, Callable[[Event, StartFigures], Value]], ...] = (
    (Column(name="set_volts", title="Voltage set", datatype=NUMBER, unit="V"), _of_event("volts")),
    (Column(name="limit_amps", title="Current limit set", datatype=NUMBER, unit="A"), _of_event("amps")),
    (Column(name="delay_s", title="Read later by", datatype=NUMBER, unit="s"), _of_event("delay_s")),
    (Column(name="trigger_s", title="Trigger, since the run began", datatype=NUMBER, unit="s"), _of_event("trigger_s")),
    (Column(name="turning", title="Seen to turn", datatype=WORDS), _of_event("turning")),
    (Column(name="cut", title="Why it was cut short", datatype=WORDS), _of_event("cut")),
    (
        Column(name="interval_s", title="From reading to reading, mean", datatype=NUMBER, unit="s"),
        lambda start, figures: figures.interval_s,
    ),
    (
        Column(name="jitter_s", title="From reading to reading, standard deviation", datatype=NUMBER, unit="s"),
        lambda start, figures: figures.jitter_s,
    ),
    (Column(name="readings", title="Readings", datatype=COUNT), lambda start, figures: figures.readings),
)


def figures_table(taken: Iterable[Taken]) -> Table:
    """A row a start: each figure with its 95 % interval, or why it can't be told."""
    rows: list[tuple[Value, ...]] = []
    for one in taken:
        found = one.captured
        for start, curve, figures in zip(found.starts, found.curves, found.figures, strict=True):
            about = tuple(of(start, figures) for _, of in _ABOUT)
            told = tuple(value for kind in FIGURES for value in _figure(figures, kind))
            rows.append((one.serial, found.run.id, curve.number, *about, *told))
    columns = (*_OF_START, *(column for column, _ in _ABOUT), *(c for kind in FIGURES for c in _figure_columns(kind)))
    return Table(
        name="figures", title="Figures of captured starts", columns=columns, values=_turned(rows, columns), key=_KEY
    )


def _figure(figures: StartFigures, kind: FigureKind) -> tuple[Value, ...]:
    fitted = figures.values.get(kind.name)
    why = figures.why.get(kind.name)
    return (None, None, None, why) if fitted is None else (fitted.value, fitted.low, fitted.high, why)


def _figure_columns(kind: FigureKind) -> tuple[Column, ...]:
    title = kind.label[:1].upper() + kind.label[1:]
    return (
        Column(name=kind.name, title=title, datatype=NUMBER, unit=kind.unit),
        Column(name=f"{kind.name}_low", title=f"{title}, low", datatype=NUMBER, unit=kind.unit),
        Column(name=f"{kind.name}_high", title=f"{title}, high", datatype=NUMBER, unit=kind.unit),
        Column(name=f"{kind.name}_why", title=f"{title}, why not told", datatype=WORDS),
    )


def limits_table(limits: StartLimits) -> Table:
    """A row a figure: its limits, what they were made from, or why it has none."""
    names = ("low", "high", "mean", "spread", "n", "factor")
    rows: list[tuple[Value, ...]] = []
    for kind in FIGURES:
        band = limits.bands.get(kind.name)
        held = tuple(None if band is None else getattr(band, name) for name in names)
        within, between = limits.within.get(kind.name), limits.between.get(kind.name)
        rows.append((kind.name, kind.unit, *held, within, between, limits.why.get(kind.name)))
    columns = (
        Column(name="figure", title="Figure", datatype=WORDS),
        Column(name="unit", title="Unit", datatype=WORDS),
        Column(name="low", title="Low limit", datatype=NUMBER),
        Column(name="high", title="High limit", datatype=NUMBER),
        Column(name="mean", title="Mean of the units", datatype=NUMBER),
        Column(name="spread", title="Standard deviation of the units", datatype=NUMBER),
        Column(name="n", title="Units", datatype=COUNT),
        Column(name="factor", title="Factor of the standard deviation", datatype=NUMBER),
        Column(name="within", title="Standard deviation of one unit's starts", datatype=NUMBER),
        Column(name="between", title="Standard deviation between units", datatype=NUMBER),
        Column(name="why", title="Why there is none", datatype=WORDS),
    )
    title = f"Limits of {told_test(limits)}"
    return Table(name="limits", title=title, columns=columns, values=_turned(rows, columns), key=("figure",))


def told_test(limits: StartLimits) -> str:
    """Which test, and what the limits claim."""
    shares = f"{limits.coverage * 100:g} % coverage at {limits.confidence * 100:g} % confidence"
    return f"{limits.test}, version {limits.version}, {limits.n} known good units, {shares}"


def band_table(limits: StartLimits) -> Table:
    """A row a point of the curve's band. Raises ValueError where there is none."""
    if (curve := limits.curve) is None:
        raise ValueError("these limits have no curve")
    columns = (
        Column(name="t_s", title="Time since the trigger", datatype=NUMBER, unit="s"),
        Column(name="low_amps", title="Low limit", datatype=NUMBER, unit="A"),
        Column(name="mean_amps", title="Mean", datatype=NUMBER, unit="A"),
        Column(name="high_amps", title="High limit", datatype=NUMBER, unit="A"),
    )
    values = (curve.t_s, curve.low_amps, curve.mean_amps, curve.high_amps)
    return Table(
        name="band",
        title=f"Limits of the curve: {curve.claim} ({told_test(limits)}, factor {curve.factor:.6g})",
        columns=columns,
        values=values,
        key=("t_s",),
    )


def _turned(rows: Sequence[tuple[Value, ...]], columns: Sequence[Column]) -> tuple[Sequence[Value], ...]:
    return tuple(zip(*rows, strict=True)) if rows else tuple(() for _ in columns)
