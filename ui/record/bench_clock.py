"""How long each job was on the bench: a proposal for the minutes to charge, never charged by itself."""

from benchlog.clock import Clock


class BenchClock:
    """Counts for one job at a time, and remembers the others for the window's life."""

    def __init__(self, clock: Clock) -> None:
        self._clock = clock
        self._job: int | None = None
        self._since_s = 0.0
        self._before_s: dict[int, float] = {}

    def follow(self, job_id: int | None) -> None:
        """From now on this job is on the bench; None for none."""
        if job_id != self._job:
            if self._job is not None:
                self._before_s[self._job] = self._so_far_s()
            self._job, self._since_s = job_id, self._clock.awake_and_asleep()

    def minutes(self) -> int:
        """Whole ones, since the job came or since charged()."""
        return int(self._so_far_s() // 60)

    def charged(self) -> None:
        """What was counted is charged, or was not work: it begins anew."""
        if self._job is not None:
            self._before_s[self._job] = 0.0
            self._since_s = self._clock.awake_and_asleep()

    def _so_far_s(self) -> float:
        if self._job is None:
            return 0.0
        return self._before_s.get(self._job, 0.0) + self._clock.awake_and_asleep() - self._since_s
