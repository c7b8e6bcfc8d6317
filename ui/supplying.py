"""The supply at the intake's address: looked for and asked on a press, and what is known of it shown.

Nothing is asked while a run is on or an output is not confirmed off; no run begins while something is asked.
"""

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QApplication

from benchlog.bench.looking_around import LastLook
from benchlog.ledger.store import Ledger
from benchlog.ledger.supplies import KeptSupply, kept_supply, last_check
from benchlog.recovery.ceilings import Layer, Limits
from ui import retelling, texts
from ui.asking_supplies import Question, Supplies, Told, told_of
from ui.history.errands import Errands
from ui.main_window import MainWindow
from ui.moments import clock_text, day_text
from ui.run_request import BenchSetting
from ui.running import Running, minding_the_ledger


class Supplying(QObject):
    """`changed` when another supply, or another of its outputs, was chosen."""

    changed = Signal()

    def __init__(self, window: MainWindow, ledger: Ledger, running: Running, supplies: Supplies) -> None:
        super().__init__(window)
        self.window, self.ledger, self.running = window, ledger, running
        self._supplies = supplies
        self._errands = Errands(self._minding, self)
        self.asking = self.looking = False
        self._answer: Told | None = None  # the last one, also where it was not kept
        running.asking = lambda: self.asking
        intake = window.intake
        intake.look_button.clicked.connect(self.look)
        intake.ask_button.clicked.connect(lambda: self.ask())
        intake.supply.editingFinished.connect(self.changed)
        intake.supply_row.picked.connect(self._take)
        intake.supply_row.output_chosen.connect(self.changed)
        intake.supply_row.open.clicked.connect(lambda: intake.reveal(intake.supply_row.report))
        intake.supply_row.again.connect(lambda volts, amps: self.ask(most=(volts, amps)))
        window.closing.connect(supplies.stop)
        application = QApplication.instance()
        if application is not None:
            application.aboutToQuit.connect(self.stop)

    def stop(self) -> None:
        self._supplies.stop()
        self._errands.stop()

    def settle(self) -> None:
        """Waits for what is out. Raises TimeoutError."""
        self._errands.settle()

    @contextmanager
    def _minding(self) -> Iterator[None]:
        """Whatever goes wrong, nothing is out any more: a run may begin."""
        with minding_the_ledger(self.window.notice):
            try:
                yield
            except BaseException:
                self.asking = self.looking = False
                self._offer()
                raise

    def _why_not(self) -> str:
        if self.running.live.on:
            return texts.NOT_WHILE_ON
        if not self.running.off.may_begin:
            return texts.ACKNOWLEDGE_FIRST
        return texts.NOT_WHILE_ASKING if self.asking else ""

    # looking

    def look(self) -> None:
        if why := self._why_not():
            self.window.notice.tell(why)
            return
        if self.looking:
            return
        self.looking = True
        self.window.intake.keep_the_keys()
        self._offer()
        supplies = self._supplies
        self.window.intake.supply_row.show_looking(None)
        self._errands.ask("last", supplies.last, self._show_last)

        def work() -> LastLook | OSError:
            try:
                return supplies.look()
            except OSError as error:
                return error

        self._errands.ask("look", work, self._show_looked)

    def _show_last(self, last: LastLook | None) -> None:
        if self.looking and last is not None:
            self.window.intake.supply_row.show_looking(last)

    def _show_looked(self, looked: LastLook | OSError) -> None:
        self.looking = False
        self._offer()
        row = self.window.intake.supply_row
        if isinstance(looked, OSError):
            row.show_places(None, str(looked))
        else:
            row.show_places(looked)
            if self.window.intake.supply.hasFocus() and looked.places:
                row.places.setFocus()
        self.window.intake.reveal(row)

    def _take(self, address: str) -> None:
        """Picked, and no more than that: it is asked when “Ask it” is pressed."""
        if self.running.live.on or self.asking:
            return
        self.window.intake.pick_supply(address)
        self.changed.emit()
        self.window.intake.ask_button.setFocus()

    # asking

    def ask(self, *, most: tuple[float, float] | None = None) -> None:
        setting = self.window.intake.setting()
        why = self._why_not() or ("" if setting.resource else texts.NEEDS_ADDRESS)
        if why:
            self.window.notice.tell(why)
            return
        self.follow()
        question = Question(resource=setting.resource, output=self.window.intake.setting().output, most=most)
        self.asking, self._answer = True, None
        self.window.intake.keep_the_keys()
        self._offer()
        row, supplies = self.window.intake.supply_row, self._supplies
        row.show_report(None)
        row.say(texts.ASKING)
        self.window.intake.reveal(row)
        self._errands.ask("ask", lambda: supplies.ask(question), self._show_answer)

    def _show_answer(self, told: Told) -> None:
        self.asking, self._answer = False, told
        if told.usable or told.identity:  # where nothing answered, it may be there the next time
            why = "" if told.usable else retelling.told(told.why).rstrip(".")
            self.window.intake.supply_row.say_unusable(told.resource, told.output, why)
        self._offer()
        self.follow(unfold=True)
        self.changed.emit()
        intake = self.window.intake
        if intake.supply.hasFocus():
            intake.ask_button.setFocus()
        intake.reveal(intake.supply_row)

    # what is shown of it

    def follow(self, *, unfold: bool = False) -> None:
        """What is known of the supply at the address, and which outputs there are to choose from."""
        row, resource = self.window.intake.supply_row, self.window.intake.setting().resource
        self._offer()
        if self.asking:
            return
        kept = kept_supply(self.ledger, resource) if resource else None
        if not row.is_for(resource):
            row.put_output(resource, 1 if kept is None else kept.output)
        told = None if kept is None else told_of(kept.content)
        row.offer_outputs(1 if told is None else told.outputs)
        answer = self._answer
        unfold = unfold or not row.report.isHidden()
        if answer is not None and answer.resource == resource and not answer.usable:
            row.show_report(answer, unfold=unfold)
            before = "" if kept is None else " " + texts.SUPPLY_NOT_KEPT.format(day=day_text(kept.utc))
            row.say(texts.SUPPLY_NOT_USABLE.format(why=retelling.told(answer.why).rstrip(".")) + before, alarm=True)
        elif kept is None:
            row.show_report(None)
            row.say("")
        else:
            row.show_report(told, unfold=unfold)
            row.say(self._known(kept))

    def range_of(self, setting: BenchSetting) -> dict[Layer, Limits]:
        """What the output at the address can give, as far as that was ever told: a run asks it anew."""
        kept = kept_supply(self.ledger, setting.resource) if setting.resource else None
        told = told_of(kept.content) if kept is not None and kept.output == setting.output else None
        return {} if told is None else {Layer.SUPPLY: Limits(volts=told.volts_max, amps=told.amps_max)}

    def _known(self, kept: KeptSupply) -> str:
        check = last_check(self.ledger, kept.resource, kept.identity)
        checked = texts.SUPPLY_NOT_CHECKED
        if check is not None:
            words = texts.SUPPLY_CHECKED if check.content.get("passed") else texts.SUPPLY_CHECKED_NOT_ALL
            checked = words.format(day=day_text(check.utc))
        asked = texts.SUPPLY_ASKED.format(day=day_text(kept.utc), at=clock_text(kept.utc), checked=checked)
        return f"{texts.SUPPLY_USABLE} {asked}"

    def _offer(self) -> None:
        on = texts.NOT_WHILE_ON if self.running.live.on else ""
        self.window.intake.offer_asking(on or (texts.NOT_WHILE_ASKING if self.asking else ""), looking=self.looking)
