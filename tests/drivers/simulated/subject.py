"""An instrument by itself, for tests of what it is told and what it answers."""

import random

from drivers.simulated.instrument import Instrument
from drivers.simulated.supply_model import OutputStage, SupplyData


class Subject:
    """An instrument on an output stage that never steps; the meter shows fixed figures."""

    def __init__(self, data: SupplyData | None = None) -> None:
        data = data or SupplyData()
        self.output = OutputStage(data, random.Random(0))
        self.instrument = Instrument(data, self.output, lambda: (12.345, 0.678), "test")

    def say(self, message: str) -> str | None:
        self.instrument.write(message)
        return self.instrument.read() if self.instrument.reply_waits else None

    def error(self) -> int:
        """The code of the next error in the queue."""
        reply = self.say("SYST:ERR?")
        assert reply is not None
        return int(reply.split(",")[0])
