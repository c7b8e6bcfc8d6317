"""The instrument's end of a line: how bytes become messages, and replies bytes. Pure."""

import msgspec


class Manner(msgspec.Struct, frozen=True, kw_only=True):
    """What a line is like. `termination` "": a message is over when the line is quiet; `reply_ends` "": nothing ends
    a reply. `gap_s`: what comes sooner after the end of the last exchange is not heard."""

    termination: str = "\n"
    reply_ends: str = "\n"
    echo: bool = False
    gap_s: float = 0.0
    one_client: bool = False

    def cut(self, received: bytes) -> tuple[list[str], bytes]:
        """The messages that are complete, and what is left. An instrument that ends lines with LF bears CR before."""
        if not self.termination:
            return ([received.decode("ascii", "replace")] if received else []), b""
        *lines, rest = received.split(b"\n" if "\n" in self.termination else b"\r")
        # What is not ASCII becomes a character no header has, and is refused as one.
        return [line.strip(b"\r\n").decode("ascii", "replace") for line in lines], rest

    def said(self, text: str) -> bytes:
        """A reply, or an echo, as it leaves."""
        return (text + self.reply_ends).encode("latin-1", "replace")
