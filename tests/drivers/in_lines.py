"""For sessions of tests that speak in lines only."""


class InLines:
    """The part of a session that no dialect in lines uses."""

    def read(self) -> str:
        raise AssertionError("a reply without a question")

    def read_exactly(self, count: int) -> bytes:
        raise AssertionError(f"{count} bytes of a session in lines")

    def read_until_quiet(self, quiet_s: float) -> bytes:
        raise AssertionError("bytes of a session in lines")
