"""Is the dialect found by asking, and does nothing but questions arrive? On dialects put together at random.

    python -m tests.benchmarks.finding --seed 1005 --combinations 50 [--quirk slow]

In virtual time, so the times are those of the instrument's latencies and of this program's own patience, not of this
computer. "Right": every part that an answer tells is as it was drawn, and what no answer tells is asked of the user and
not claimed. How setpoints, switch and latches are spelled no answer tells: that is counted apart, by trying it
afterwards.
"""

import argparse
import statistics
from collections import Counter

from drivers.finding import find_dialect
from drivers.simulated.quirks import QUIRKS
from tests.drivers.found_right import Asked, ask, obeys_when_tried
from tests.drivers.strangers import STRANGERS, Stranger


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seed", type=int, default=1005)
    parser.add_argument("--combinations", type=int, default=50)
    parser.add_argument("--quirk", choices=sorted(QUIRKS))
    chosen = parser.parse_args()
    quirks = None if chosen.quirk is None else QUIRKS[chosen.quirk]
    cases = [ask(chosen.seed, number, quirks) for number in range(chosen.combinations)]
    for number, case in enumerate(cases):
        for wrong in case.wrong:
            print(f"  {number}: {wrong}")
        if not case.housekeeping:
            print(f"  {number}: more than housekeeping arrived")
    _told(cases)
    unknown = [_stranger(name) for name in STRANGERS]
    print(f"told as no supply, with the reason: {sum(unknown)} of {len(unknown)} ({', '.join(STRANGERS)})")
    return 0 if all(not case.wrong and case.housekeeping for case in cases) and all(unknown) else 1


def _told(cases: list[Asked]) -> None:
    count = len(cases)
    took_s = sorted(case.found.took_s for case in cases)
    whole_s = sorted(case.whole_s for case in cases if case.found.usable)
    asked = sorted(len(case.found.answered) for case in cases)
    guessed = Counter(place for case in cases for place in case.guessed)
    print(f"right: {sum(not case.wrong for case in cases)} of {count}")
    print(f"nothing but housekeeping arrived, nothing changed: {sum(case.housekeeping for case in cases)} of {count}")
    print(
        f"time: median {statistics.median(took_s):.2f} s, worst {took_s[-1]:.2f} s; questions {asked[0]} to {asked[-1]}"
    )
    print(f"opened and measured as well: median {statistics.median(whole_s):.2f} s, worst {whole_s[-1]:.2f} s")
    open_ones = sum(bool(case.found.questions) for case in cases)
    print(f"something is asked of the user: {open_ones} of {count}; not used until then: ", end="")
    print(sum(case.found.dialect is not None and not case.found.usable for case in cases))
    usable = [case for case in cases if case.found.usable]
    print(f"obeys the units that no answer tells: {sum(case.obeys for case in usable)} of {len(usable)} usable ones")
    tried = [case for case in usable if case.tried is not None]
    obey = sum(obeys_when_tried(case) for case in tried)
    print(
        f"the same once spellings were tried with the output off: {obey} of {len(usable)}; never on, setpoints put back"
    )
    print(
        "  spelled otherwise than drawn: " + ", ".join(f"{place} {times}" for place, times in sorted(guessed.items()))
    )


def _stranger(name: str) -> bool:
    make, words = STRANGERS[name]
    stranger = Stranger(make())
    found = find_dialect(stranger.open, stranger.now, wait=stranger.wait)
    print(f"  {name}: {found.why} ({found.took_s:.1f} s)")
    return found.dialect is None and words in found.why and found.took_s < 10.0


if __name__ == "__main__":
    raise SystemExit(main())
