"""The instrument between text and output stage: takes program messages, executes them, has replies ready.

Source: IEEE 488.2-1992 message exchange, as published: one reply line for all queries of a message, -410 when a
message arrives before the last reply was taken, -420 when a reply is asked for that nobody queried.

Questionable status, this instrument's choice beyond SCPI-1999: with the output off neither VOLT nor CURR is set; a
voltage held up from outside, which one quadrant cannot pull down, counts as CV. A tripped latch refuses OUTP ON with
-221, and clearing it returns the output to what was last asked of it.
"""

from collections.abc import Callable

from drivers.simulated.array import SampleArray
from drivers.simulated.commands import (
    array_commands,
    common_commands,
    output_commands,
    source_commands,
    status_commands,
)
from drivers.simulated.scpi_tree import Tree, Unit, units_of
from drivers.simulated.status import (
    QUES_CURR,
    QUES_OVER_AMPS,
    QUES_OVER_VOLTS,
    QUES_VOLT,
    Refusal,
    Status,
)
from drivers.simulated.supply_model import Mode, OutputStage, SupplyData, Trip
from drivers.simulated.wire import Manner

VERSION = "1.0"
MEASURE_REPLY_S = 0.008
OTHER_REPLY_S = 0.001


class Instrument:
    """Executes program messages on an output stage. `reply_s` is every reply's latency, None for the usual two."""

    manner = Manner()
    due_s = float("inf")

    def __init__(
        self,
        data: SupplyData,
        output: OutputStage,
        acquire: Callable[[], tuple[float, float]],
        name: str,
        array: SampleArray | None = None,
    ) -> None:
        self.status = Status()
        self.reply_s: float | None = None
        self.offs_to_ignore = data.ignore_off
        self._output = output
        self._acquire = acquire
        self._measured = False
        self._pending: str | None = None
        self._answers: list[str] = []
        identity = f"Harbour Workshop,Simulated bench supply,{name},{VERSION}"
        self._tree = Tree(
            common_commands(self.status, output, identity, lambda: bool(self._answers))
            | status_commands(self.status)
            | source_commands(data, output)
            | output_commands(data, output, self._switch, self._measure)
            | (array_commands(data, array) if array is not None else {})
        )

    def write(self, message: str) -> float:
        """Takes one program message, terminator removed. Returns the seconds until its reply, if any, may leave."""
        if self._pending is not None:
            self._pending = None
            self.status.record(-410)
        self._measured = False
        self._answers = []
        for unit in units_of(message) if message.strip() else ():
            try:
                answer = self._execute(unit)
            except Refusal as refusal:
                self.status.record(refusal.code, refusal.about)
                if refusal.code > -200:
                    break  # after a command error the rest of the message is thrown away
                continue
            if answer is not None:
                self._answers.append(answer)
        self._pending = ";".join(self._answers) or None
        if self.reply_s is not None:
            return self.reply_s
        return MEASURE_REPLY_S if self._measured else OTHER_REPLY_S

    def read(self) -> str | None:
        """The reply that waits. Asked for with none there, it records a query error."""
        reply, self._pending = self._pending, None
        if reply is None:
            self.status.record(-420)
        return reply

    @property
    def reply_waits(self) -> bool:
        """Whether a reply is ready to be read."""
        return self._pending is not None

    def happen(self, at_s: float) -> None:
        """Nothing happens by itself in it."""

    def follow_output(self) -> None:
        """Takes over into the status groups what the output stage does now."""
        self.status.questionable.follow(_questionable(self._output))

    def _execute(self, unit: Unit | Refusal) -> str | None:
        if isinstance(unit, Refusal):
            raise unit
        handler = self._tree.find(unit)
        self.follow_output()
        answer = handler(unit.parameters)
        self.follow_output()
        return answer

    def _measure(self) -> tuple[float, float]:
        self._measured = True
        return self._acquire()

    def _switch(self, on: bool) -> None:
        if not on and self.offs_to_ignore > 0:
            self.offs_to_ignore -= 1
            return
        self._output.switch(on)


def _questionable(output: OutputStage) -> int:
    condition = 0
    if output.trip is Trip.OVER_VOLTS:
        condition |= QUES_OVER_VOLTS
    elif output.trip is Trip.OVER_AMPS:
        condition |= QUES_OVER_AMPS
    if output.on:
        condition |= QUES_VOLT if output.mode is Mode.CC else QUES_CURR
    return condition
