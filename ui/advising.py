"""Advice on the page where a motor is freed: shown before and between its runs, and taken over with one press."""

from PySide6.QtCore import QObject, Signal

from benchlog.recovery.advice import Advice, Past
from ui import retelling, sayings, texts
from ui.bench_job import BenchJob
from ui.main_window import MainWindow
from ui.running import Running, minding_the_ledger


class Advising(QObject):
    """`taken`: the ladder or the ceilings of the next run are other ones now. Nothing is begun by it."""

    taken = Signal()

    def __init__(self, window: MainWindow, bench: BenchJob, running: Running) -> None:
        super().__init__(window)
        self._window, self._bench, self._running = window, bench, running
        self._told: Advice | None = None
        self._past: Past | None = None
        window.free.advice.higher.connect(self._begin_higher)
        window.free.advice.again.connect(self._same_again)

    def show(self, *, here: bool) -> None:
        """`here`: whether the page is the one to be advised on."""
        card = self._window.free.advice
        if not here or self._bench.job is None or self._bench.closed or self._running.live.on:
            card.show_advice(None, None)
            return
        with minding_the_ledger(self._window.notice):
            self._told, self._past, why_not = self._bench.advice(self._window.intake.setting(), self._running.ladder)
            not_again = texts.SAME_AS_LAST_NOT.format(why=retelling.told(why_not)) if why_not else ""
            card.show_advice(self._told, self._past, not_again)

    def _begin_higher(self) -> None:
        if self._told is not None and self._told.sequence is not None:
            self._running.sequence = self._told.sequence
            self.taken.emit()

    def _same_again(self) -> None:
        """The ceilings and the ladder of the run that freed this motor, or one like it; it begins at another press."""
        found, intake = self._past, self._window.intake
        if found is None or found.limits is None or found.sequence is None:
            return
        limits, volts = found.limits, found.limits.volts or intake.setting().max_volts
        intake.max_volts.put(volts)
        intake.max_amps.put(limits.amps)
        self._running.sequence = found.sequence
        told = texts.SAME_AS_LAST_DONE.format(
            job=found.job,
            volts=sayings.short(volts, "V"),
            amps=sayings.short(limits.amps, "A") if limits.amps is not None else retelling.told(texts.AMPS_NO_CEILING),
        )
        self._window.notice.tell(told)
        self.taken.emit()
