"""What is said above the chart about what is picked: a sentence, and why we think so."""

from benchlog.outcome import Outcome
from benchlog.quantities import show
from benchlog.records import RunKind
from benchlog.recovery.start_test import StartTest
from ui import curve_texts as texts
from ui import retelling, sayings
from ui.curves.reading import Measured, Shown, pace_of


def sentences(shown: Shown, picked: int | None) -> tuple[str, str]:
    """`picked`: the number of what was measured; None where nothing was yet."""
    one = None if picked is None else shown.measured[picked]
    if one is None or one.captured is None:
        return texts.NOTHING_YET_SAY, _nothing_yet(shown)
    name = one.name[:1].upper() + one.name[1:]
    result = one.captured.run.result
    if result.outcome is not Outcome.RUNS:  # how it ended comes before what was captured until then
        said, because = sayings.ended_sentences(RunKind.START_UP, result)
        return texts.ENDED_OF.format(name=name, said=said, count=texts.starts(len(one.captured.curves))), because
    if one.judged is not None and one.judged.sentence:
        say = _of(name, one.judged.sentence)
        because = retelling.told(one.judged.because)
    else:
        say, because = texts.CAPTURED_OF.format(name=name, count=texts.starts(len(one.captured.curves))), ""
    return say, " ".join(part for part in (because, _test_words(one)) if part)


def _of(name: str, sentence: str) -> str:
    """ "It starts slowly" as "Unit 12 starts slowly"."""
    words = retelling.told(sentence)
    return f"{name} {words.removeprefix('It ')}" if words.startswith("It ") else f"{name}: {words}"


def _test_words(one: Measured) -> str:
    assert one.captured is not None
    pace, test = pace_of(one.captured.curves), one.captured.test
    if pace is None:
        return ""
    middle, low, high = texts.ms(pace[0]), *(texts.plain_ms(part) for part in pace[1:])
    window = texts.ms(one.captured.curves[0].window_s)
    called = texts.NO_VALUE if test is None else test_called(test)
    return texts.WHY_TEST.format(test=called, middle=middle, low=low, high=high, window=window)


def _nothing_yet(shown: Shown) -> str:
    if shown.lot is not None and shown.test is not None:
        return texts.NOTHING_YET_LOT.format(test=test_line(shown.test))
    return texts.NOTHING_YET_NO_TEST


def test_called(test: StartTest) -> str:
    return texts.TEST_CALLED.format(name=test.name, version=test.version)


def test_short(test: StartTest) -> str:
    return texts.TEST_SHORT.format(name=test.name, version=test.version)


def test_line(test: StartTest) -> str:
    return texts.TEST_LINE.format(
        name=test_called(test), starts=texts.starts(test.starts), volts=show(test.volts, "V"), on_s=texts.ms(test.on_s)
    )
