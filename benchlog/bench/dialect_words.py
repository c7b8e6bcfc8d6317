"""What a dialect is, in words of the trade."""

from benchlog.quantities import show
from drivers.dialect import Dialect


def dialect_in_words(dialect: Dialect) -> str:
    """ "2 outputs, by (@n); several units in one message; ..." """
    link, outputs = dialect.link, dialect.outputs
    how = f"chosen by {outputs.select.partition(' ')[0]}" if outputs.select else "each named in its units"
    parts = ["one output" if outputs.count == 1 else f"{outputs.count} outputs, {how}"]
    parts.append("several units in one message" if link.compound else "one unit a message")
    ends = {"\n": "LF", "\r\n": "CR LF", "\r": "CR", "": "nothing at all"}
    parts.append(f"messages end with {ends[link.termination]}, replies with {ends[link.reply_ends]}")
    if link.gap_s:
        parts.append(f"left alone for {show(1e3 * link.gap_s, 'ms')} in between")
    parts += [
        text
        for text, there in (
            ("echoes what it hears", link.echo),
            ("units behind some of its numbers", link.units_in_replies == "some"),
            ("units behind its numbers", link.units_in_replies is True),
            ("one client at a time", link.one_client),
        )
        if there
    ]
    return "; ".join(parts)
