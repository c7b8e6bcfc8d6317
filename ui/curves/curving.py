"""Between the curves room, the ledger and the bench: what a press does, what is read, and what a finished run means."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QCoreApplication, QObject, Qt, QTimer, Signal
from PySide6.QtWidgets import QApplication

from benchlog.errors import Refused
from benchlog.ledger.capture_request import capture_request
from benchlog.ledger.filing import Filed
from benchlog.ledger.lots import add_unit, lots, open_lot
from benchlog.ledger.start_tests import KeptTest, lock, next_version, start_tests
from benchlog.ledger.store import Ledger
from benchlog.ledger.unlocks import owner_layer
from benchlog.motor.limits import Judged
from benchlog.records import Entry, EntryKind, JobState, Lot, RunKind, Stage, Unit
from benchlog.recovery.start_test import StartTest
from benchlog.settings import Settings
from ui import curve_texts as texts
from ui import retelling, sayings
from ui import texts as window_texts
from ui.alarms import What
from ui.bench_job import BenchJob
from ui.charts.live_plot import load_library
from ui.curves import after_run, told
from ui.curves.curve_files import CurveFiles, Picked
from ui.curves.lot_form import LotAsked
from ui.curves.reading import Shown, band_lines, filled_in, read_before, read_job, read_lot
from ui.curves.receiver import Capturing
from ui.curves.room import CHART_PAGE, EMPTY_PAGE, JOB, LOT_PAGE, NOTHING, RUN_IN_PAGE, TESTS_PAGE, UNITS_PAGE
from ui.curves.running_in import RunningIn
from ui.history.errands import Errands
from ui.main_window import MainWindow
from ui.pieces import grey
from ui.run_request import BenchSetting, output_of, request_for
from ui.running import Running, minding_the_ledger

MOST_LOTS = 50
SECOND_BEEP_MS = 220


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """What there is to choose from."""

    lots: tuple[Lot, ...]
    tests: tuple[KeptTest, ...]


class Curving(QObject):
    """Wired once. `changed` where what the header says may have changed."""

    changed = Signal()

    def __init__(
        self,
        window: MainWindow,
        ledger: Ledger,
        bench: BenchJob,
        running: Running,
        settings: Callable[[], Settings],
        *,
        beep: Callable[[], None],
    ) -> None:
        super().__init__(window)
        self.window, self.room, self.ledger, self.bench = window, window.curves, ledger, bench
        self.running, self._settings, self._beep = running, settings, beep
        self.receiver = Capturing(self.room, self)
        self.errands = Errands(lambda: minding_the_ledger(window.notice), self)
        self.chosen = NOTHING
        self.shown: Shown | None = None
        self.picked: int | None = None
        """The number of what was measured that is picked out."""
        self._tests: tuple[KeptTest, ...] = ()
        self._test_id: int | None = None
        self._resource = ""
        self._cleared: set[int] = set()
        self._next: tuple[int, str] | None = None
        """Number and serial of the unit that was scanned, until it is measured or another one is picked out."""
        self.files = CurveFiles(
            self.room,
            ledger,
            window.notice,
            self.errands,
            shown=lambda: (self.shown, self.picked),
            picked=self._picked_start,
            in_the_way=self._no_file_now,
            parent=self,
        )
        self.run_in = RunningIn(window, ledger, bench, running, self.errands, self._no_run_now, self)
        self._wire()
        application = QCoreApplication.instance()
        if application is not None:
            application.aboutToQuit.connect(self.errands.stop)

    def _wire(self) -> None:
        room, chart, side = self.room, self.room.chart, self.room.side
        room.page_picked.connect(self._show_page)
        room.page_shown.connect(lambda _: self._offer())
        room.shown_picked.connect(self.show_chosen)
        room.lot_wanted.connect(self.new_lot)
        room.empty.test_wanted.connect(lambda: room.show_page(TESTS_PAGE))
        room.empty.lot_wanted.connect(self.new_lot)
        room.empty.job_wanted.connect(lambda: self.show_chosen(JOB))
        room.tests.locking.connect(self._lock)
        room.tests.next_wanted.connect(self._next_version)
        room.tests.used.connect(self._use_test)
        room.lot_form.opened.connect(self._open_lot)
        room.lot_form.test_wanted.connect(lambda: room.show_page(TESTS_PAGE))
        room.units.picked.connect(self._pick_measured)
        room.units.limits_wanted.connect(self._make_limits)
        chart.plot.picked.connect(self._pick_line)
        chart.before_wanted.connect(self._lay_before)
        chart.question.answered.connect(self.running.live.answer)
        side.next.scanned.connect(self._scan)
        side.next.told.connect(self.window.notice.tell)
        side.next.started.connect(self.begin)
        side.next.cleared.connect(self._keep_clear)
        side.next.test_chosen.connect(self._use_test)
        side.next.check_wanted.connect(self.check)
        self.running.filed.connect(self._on_filed)
        self.running.ended.connect(self._offer)

    # what is read

    def settle(self) -> None:
        """Waits until all that was asked for is shown."""
        self.errands.settle()

    @property
    def _quiet(self) -> bool:
        """Whether nothing may be on: only then is the ledger read for curves."""
        return not self.running.live.on

    def refresh(self) -> None:
        """What there is to choose from, and what is shown, are read again."""
        if not self._quiet:
            return
        load_library()  # now, and not with the first reading of a run, whose lease it could cost
        self.errands.ask("offered", self._read_offered, self._show_offered)
        self.run_in.refresh()
        self._read()

    def _read_offered(self) -> Offered:
        return Offered(lots=tuple(lots(self.ledger, MOST_LOTS)), tests=tuple(start_tests(self.ledger)))

    def _show_offered(self, offered: Offered) -> None:
        self._tests = offered.tests
        job = self.bench.job
        self.room.offer_shown(offered.lots, None if job is None else job.number, self.chosen)
        self.room.lot_form.show_tests(offered.tests)
        self.room.empty.show_tests(bool(offered.tests))
        self.room.tests.show_tests(offered.tests, self._test_id)
        self._offer_tests()
        self._offer()

    def show_chosen(self, chosen: int) -> None:
        """A lot by its number, the JOB on the bench, or NOTHING."""
        if self.running.in_the_way():
            return
        self.chosen, self.shown, self.picked = chosen, None, None
        self.room.shown.setCurrentIndex(max(0, self.room.shown.findData(chosen)))
        self.room.side.next.forget_clear()
        self.room.chart.plot.clear()
        if self.room.page == LOT_PAGE:
            self.room.show_page(CHART_PAGE)
        self._read()

    def _read(self) -> None:
        chosen, job = self.chosen, self.bench.job
        if chosen == JOB and job is not None:
            key = job.id
            if self.shown is not None and self.shown.job.id != key:
                self.shown, self.picked = None, None
                self.room.side.next.forget_clear()
            self.errands.ask("shown", lambda: read_job(self.ledger, key), self._show)
        elif chosen > 0:
            self.errands.ask("shown", lambda: read_lot(self.ledger, chosen), self._show)
        else:
            self._show(None)

    def _show(self, shown: Shown | None, picked: int | None = None) -> None:
        """In place of what was shown. What was picked stays picked, else the last that was measured."""
        if picked is None and self.shown is not None and shown is not None and self.picked is not None:
            picked = self.picked if self.picked < len(shown.measured) else None
        self.shown = shown
        side, chart = self.room.side, self.room.chart
        side.lot.show_shown(shown)
        self.room.tell_aside(shown is not None)
        if shown is None:
            chart.plot.clear()
            side.verdict.show_verdict(None, measured=False)
            side.figures.blank()
            if self.room.page in (CHART_PAGE, UNITS_PAGE):
                self.room.show_page(EMPTY_PAGE)
        else:
            if self.room.page == EMPTY_PAGE:
                self.room.show_page(CHART_PAGE)
            self.room.units.show_shown(shown)
            chart.plot.show_starts(shown.lines, mean=shown.mean if len(shown.lines) > 1 else None)
            chart.plot.show_band(band_lines(shown.limits))
            if shown.test is not None:
                chart.plot.expect(shown.test.before_s, shown.test.on_s)
                chart.plot.set_trigger(texts.trigger_words(shown.test.trigger.value))
            self._show_picked(shown.last_measured() if picked is None else picked)
        self._offer_tests()
        self._offer()
        self.changed.emit()

    def _show_picked(self, measured: int | None) -> None:
        """Verdict, figures and sentences of one, its first start picked out of the curves."""
        shown, chart, side = self.shown, self.room.chart, self.room.side
        if shown is None:
            return
        if shown.lot is None and measured is not None and measured != self._of_lines():
            self._read_run(measured)
        self.picked, self._next = measured, None
        one = None if measured is None else shown.measured[measured]
        of = None if one is None else one.captured
        chart.plot.pick(None if measured is None else shown.first_of(measured))
        chart.say(*told.sentences(shown, measured))
        judged = None if one is None else one.judged
        side.verdict.show_verdict(judged, measured=of is not None, limits=shown.limits is not None)
        if of is None or not of.figures:
            side.figures.blank()
        elif judged is not None and judged.rows:
            side.figures.show_judged(judged, len(of.figures))
        else:
            side.figures.show_start(of.figures[0], of.curves[0].number)
        chart.show_leads(0.0 if of is None else of.lead_ohm)
        line, why = (None, "") if of is None else filled_in(of)
        chart.plot.show_filled_in(line)
        chart.plot.show_capture(None)
        chart.over.setText(texts.LAY_OVER)
        by_hand = shown.lot is not None and chart.plot.caption.demo and (bool(shown.due) or not shown.measured)
        chart.tell(sayings.sentence(why) or (texts.CHECK_DEMO if by_hand else ""))
        if chart.before.isChecked():
            self._lay_before(True)
        self.changed.emit()

    def _of_lines(self) -> int | None:
        """Of a job: which of its runs the lines are of."""
        return self.shown.places[0].measured if self.shown is not None and self.shown.places else None

    def _read_run(self, measured: int) -> None:
        shown = self.shown
        of = None if shown is None else shown.measured[measured].captured
        if shown is None or of is None or not self._quiet:
            return
        job, run = shown.job.id, of.run.id
        self.errands.ask(
            "shown", lambda: read_job(self.ledger, job, run), lambda read: self._show(read, picked=measured)
        )

    def _pick_measured(self, measured: int) -> None:
        self.room.show_page(CHART_PAGE)
        self._show_picked(measured)

    def _pick_line(self, line: int) -> None:
        """One start of the chart: its unit, and itself picked out."""
        shown = self.shown
        if shown is None or not 0 <= line < len(shown.places):
            return
        place = shown.places[line]
        if place.measured != self.picked:
            self._show_picked(place.measured)
        self.room.chart.plot.pick(line)
        of = shown.measured[place.measured].captured
        if of is not None:
            self.room.chart.plot.show_filled_in(filled_in(of, place.start)[0])
        one = shown.measured[place.measured]
        if one.captured is not None and (one.judged is None or not one.judged.rows):
            start = one.captured.figures[place.start]
            self.room.side.figures.show_start(start, one.captured.curves[place.start].number)

    def _lay_before(self, on: bool) -> None:
        shown, plot = self.shown, self.room.chart.plot
        of = None if shown is None or self.picked is None else shown.measured[self.picked].captured
        self.errands.forget("before")
        if not on or of is None or not self._quiet:
            plot.show_before([])
            return

        def lay(read: tuple[str, tuple]) -> None:  # type: ignore[type-arg]
            name, lines = read
            plot.show_before(lines, name)
            if not lines:
                self.room.chart.tell(texts.NO_BEFORE)

        self.errands.ask("before", lambda: read_before(self.ledger, of), lay)

    def _picked_start(self) -> Picked | None:
        shown, line = self.shown, self.room.chart.plot.shown.picked
        if shown is None or line is None or line >= len(shown.places):
            return None
        place = shown.places[line]
        of = shown.measured[place.measured].captured
        return None if of is None else (of, place.start)

    def _no_file_now(self) -> str:
        return "" if self._quiet and self.running.off.may_begin else window_texts.NOT_WHILE_ON

    def _show_page(self, page: int) -> None:
        if page == RUN_IN_PAGE:
            self.run_in.refresh()
        elif page != TESTS_PAGE and self.shown is None:
            page = EMPTY_PAGE
        self.room.show_page(page)

    def header(self) -> tuple[str, str] | None:
        """What stands at the top while this room is looked at; None for what the bench says."""
        shown = self.shown
        if shown is None or shown.lot is None:
            return None
        lot, test = shown.lot, shown.test
        title = texts.HEADER_LOT.format(name=lot.name, kind=lot.job.item.kind)
        if self._next is not None:
            number, serial = self._next
            return title, texts.HEADER_NEXT.format(number=number, serial=serial)
        one = None if self.picked is None else shown.measured[self.picked].unit
        if one is not None:
            count = len(shown.measured)
            return title, texts.HEADER_UNIT.format(number=one.number, count=count, serial=one.serial)
        name, version = ("", 0) if test is None else (test.name, test.version)
        return title, texts.HEADER_LOT_ABOUT.format(count=texts.units(lot.units), test=name, version=version)

    # tests and lots

    def _lock(self, test: StartTest, who: str) -> None:
        with minding_the_ledger(self.window.notice):
            try:
                kept = lock(self.ledger, test, who)
            except Refused as refusal:
                self.room.tests.problem.setText(retelling.told(str(refusal)))
                return
            self._test_id = kept.id
            self.window.notice.tell(texts.LOCKED_NOW.format(test=told.test_called(kept.test)))
            self.refresh()

    def _next_version(self, name: str) -> None:
        with minding_the_ledger(self.window.notice):
            self.room.tests.copy_as(next_version(self.ledger, name))

    def _use_test(self, test_id: int) -> None:
        """For the job on the bench; of a lot the test is the lot's own."""
        self._test_id = test_id or None
        if self.chosen == NOTHING and self.bench.job is not None and not self.bench.closed:
            self.show_chosen(JOB)
        self._offer_tests()
        self._offer()
        self.room.show_page(CHART_PAGE if self.chosen == JOB else LOT_PAGE)
        self.room.lot_form.show_tests(self._tests, self._test_id)
        self.room.lot_form.offer_supply(self._supply())

    def _offer_tests(self) -> None:
        chooser = self.room.side.next.test
        chooser.clear()
        chooser.addItem(texts.CHOOSE_TEST, 0)
        for kept in self._tests:
            chooser.addItem(told.test_short(kept.test), kept.id)
            chooser.setItemData(chooser.count() - 1, told.test_line(kept.test), Qt.ItemDataRole.ToolTipRole)
        chooser.setCurrentIndex(max(0, chooser.findData(self._test_id)))

    def new_lot(self) -> None:
        if self.running.in_the_way():
            return
        self.room.lot_form.blank(self._supply())
        self.room.show_page(LOT_PAGE)
        self.refresh()

    def _open_lot(self, asked: LotAsked) -> None:
        with minding_the_ledger(self.window.notice):
            lot = open_lot(
                self.ledger,
                name=asked.name,
                item=asked.item,
                motor=asked.motor,
                test_id=asked.test_id,
                operator=asked.operator,
                leads=asked.leads,
                fixture=asked.fixture,
                ambient_c=asked.ambient_c,
                load_state=asked.load_state,
            )
            self._resource = asked.resource or self._resource
            self.show_chosen(lot.job.number)
            self.refresh()

    def _make_limits(self, who: str) -> None:
        shown = self.shown
        if shown is None or shown.lot is None or self.running.in_the_way():
            return
        if not who:
            self.window.notice.tell(texts.NEEDS_WHO_GOOD, What.NEEDED)
            return
        lot = shown.lot
        self.errands.ask("limits", lambda: after_run.make_limits(self.ledger, lot, who), self._show_limits)

    def _show_limits(self, made: after_run.LimitsMade) -> None:
        due = "" if not made.due or made.judged == made.count else texts.LIMITS_DUE.format(kinds=made.due)
        words = texts.LIMITS_MADE.format(id=made.id, n=made.limits.n, judged=made.judged, count=made.count, due=due)
        self.window.notice.tell(words)
        self.room.units.who.clear()  # who says so says it each time: others judge from now on
        self.refresh()

    # what can begin

    def _supply(self) -> str:
        return self._resource or self.window.intake.setting().resource

    @property
    def _lot(self) -> Lot | None:
        return None if self.shown is None else self.shown.lot

    def _test(self) -> StartTest | None:
        if self._lot is not None:
            return None if self.shown is None else self.shown.test
        return next((kept.test for kept in self._tests if kept.id == self._test_id), None)

    def _no_run_now(self) -> str:
        """What stands in the way of any run."""
        if self.running.live.on:
            return window_texts.NOT_WHILE_ON
        return self.ledger.read_only or ("" if self.running.off.may_begin else window_texts.ACKNOWLEDGE_FIRST)

    def _why_not(self) -> str:
        """Why nothing can begin now; "" where it can."""
        lot, job = self._lot, self.bench.job
        if why := self._no_run_now():
            return why
        if lot is None and (self.chosen != JOB or job is None or self.bench.closed):
            return texts.NO_VERDICT_WHY
        if lot is not None and lot.job.state is JobState.CLOSED:
            return texts.LOT_CLOSED
        return "" if self._test() is not None else texts.NEEDS_TEST

    def _offer(self) -> None:
        lot, card = self._lot, self.room.side.next
        card.note_run(on=self.running.live.on)
        card.offer(needs_serial=lot is not None or self.chosen != JOB, ready=self._why_not())
        offered = self.chosen != NOTHING and self.room.page in (CHART_PAGE, UNITS_PAGE)
        focus = QApplication.focusWidget()
        if not offered and focus is not None and card.isAncestorOf(focus):
            self.room.setFocus()  # and not whatever is next in line
        card.setVisible(offered)
        job = self.bench.job
        self.room.empty.job.setVisible(job is not None and not self.bench.closed)
        shown = self.shown
        words, due = after_run.checks_told(shown) if shown is not None else ("", False)
        card.show_checks(words, due=due, shown=lot is not None)
        self.run_in.offer()
        chart = self.room.chart
        for one, nothing in (
            (chart.export, texts.EXPORT_NOTHING),
            (chart.before, texts.BEFORE_NOTHING),
            (chart.over, texts.OVER_NOTHING),
        ):
            grey(one, "" if shown is not None and shown.lines else nothing)

    def _scan(self, serial: str) -> None:
        number = self._number_of(serial)
        self._next = number, serial
        self.changed.emit()
        side = self.room.side  # what was found of the last unit is not this one's
        side.verdict.show_verdict(None, measured=False)
        side.verdict.why.say(texts.NEXT_VERDICT_WHY.format(serial=serial))
        side.figures.blank()
        self.room.chart.plot.pick(None)
        self.room.chart.say(texts.CONNECT_SAY.format(number=number, serial=serial), texts.CONNECT_WHY)

    def _number_of(self, serial: str) -> int:
        """Of the unit with this serial, or of the next one."""
        shown = self.shown
        if shown is None:
            return 1
        same = (one.unit.number for one in shown.measured if one.unit is not None and one.unit.serial == serial)
        return next(same, len(shown.measured) + 1)

    def _keep_clear(self) -> None:
        """Said once a sitting, kept with the lot's or the job's record."""
        job = self._lot.job if self._lot is not None else self.bench.job
        if job is None or job.id in self._cleared:
            return
        self._cleared.add(job.id)
        with minding_the_ledger(self.window.notice):
            words = texts.CLEAR_ENTRY.format(hint=texts.CLEAR_HINT)
            entry = Entry(utc=self.ledger.clock.utc(), stage=Stage.MAKE_SAFE, text=words, kind=EntryKind.CHECK)
            self.ledger.add_entry(job.id, entry)

    def begin(self) -> None:
        """The next unit, or the job on the bench, by the locked test; or what stands in the way is said."""
        why, lot, test, notice = self._why_not(), self._lot, self._test(), self.window.notice
        serial = self.room.side.next.serial.text().strip()
        if not why and not self.room.side.next.clear.isChecked():
            why = texts.NEEDS_CLEAR
        if not why and lot is not None and not serial:
            why = texts.NEEDS_SERIAL
        if not why and not self._supply():
            why = window_texts.NEEDS_SUPPLY
        if why or test is None:
            notice.tell(why or texts.NEEDS_TEST, What.NEEDED)
            return
        with minding_the_ledger(notice):
            unit = None if lot is None else add_unit(self.ledger, lot, serial)
            setting = self._setting()
            job = lot.job if lot is not None else self.bench.job
            assert job is not None
            request = capture_request(
                self.ledger,
                resource=setting.resource,
                rated_volts=job.motor.rated_volts,
                test=test,
                layers=setting.own_layers(),
                owner=owner_layer(self.ledger, self._settings(), job.id),
                job=job.id,
                unit=unit,
                load_state=job.load_state,
                output=setting.output,
            )
            if self.running.launch(request, self.receiver):
                self._next = None if unit is None else (self._number_of(serial), serial)
                self.changed.emit()
                self.room.side.next.used()
                self._offer()

    def _setting(self) -> BenchSetting:
        """Of a lot: its rated volts as the job's ceiling; of the job on the bench: as its intake says."""
        lot = self._lot
        if lot is None:
            return self.window.intake.setting()
        resource, intake = self._supply(), self.window.intake.setting()
        output = intake.output if intake.resource == resource else output_of(self.ledger, resource)
        return BenchSetting(max_volts=lot.job.motor.rated_volts, max_amps=None, resource=resource, output=output)

    def check(self) -> None:
        """The shift's check, the clips said to be joined: leads and fixture, and the zero, read before the output
        goes on."""
        lot, notice = self._lot, self.window.notice
        why = self._why_not() or ("" if self.room.side.next.clear.isChecked() else texts.NEEDS_CLEAR)
        why = why or ("" if self._supply() else window_texts.NEEDS_SUPPLY)
        if why or lot is None:
            notice.tell(why or texts.NO_VERDICT_WHY)
            return
        with minding_the_ledger(notice):
            request = request_for(
                RunKind.LEADS,
                lot.job,
                self._setting(),
                self.running.ladder,
                self.ledger,
                owner=owner_layer(self.ledger, self._settings(), lot.job.id),
                starts=1,
            )
            if self.running.launch(request, self.receiver):
                self._offer()

    # what came of it

    def _on_filed(self, filed: Filed, kind: RunKind) -> None:
        lot = self._lot
        if lot is not None and kind is RunKind.LEADS and filed.job_id == lot.job.id:
            self.errands.ask("check", lambda: after_run.keep_checks(self.ledger, lot, filed.run), self._show_checks)
        elif kind is RunKind.START_UP:
            self.errands.ask(
                "judged", lambda: after_run.judged(self.ledger, filed.run), lambda found: self._show_judged(*found)
            )

    def _show_checks(self, trouble: str) -> None:
        if trouble:
            self.window.notice.tell(trouble)
        self._read()

    def _show_judged(self, judged: Judged | None, unit: Unit | None) -> None:
        """Seen, heard, and the next one's serial is asked for."""
        self._sound(judged)
        self.room.side.next.next_one()
        self.shown, self.picked = None, None
        self.refresh()

    def _sound(self, judged: Judged | None) -> None:
        if judged is None or judged.passed is None or not self.room.units.sound.isChecked():
            return
        self._beep()
        if not judged.passed:
            QTimer.singleShot(SECOND_BEEP_MS, self._beep)
