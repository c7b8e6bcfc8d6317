"""The short form: each case of a few once, and a journal of sixty blocks cut and flipped at every byte."""

import random
import sys
from pathlib import Path

import pytest

from demo_db.virtual import VirtualBench
from drivers.simulated.scenario import load
from tests.campaign.processes.cutting import damaged, ends_of_blocks, wrong_after, wrong_filed
from tests.campaign.processes.hits import KILL, STOP, Case, hit
from tests.conftest import BEGAN


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="finds processes through /proc")
@pytest.mark.parametrize(
    "blows",
    [(("bench", KILL),), (("terminal", KILL), ("bench", KILL)), (("terminal", KILL), ("rescue", STOP))],
    ids=["bench killed", "terminal and bench killed", "terminal killed, rescue stopped"],
)
def test_a_hit_leaves_the_output_off_and_the_run_filed_bit_for_bit(blows: tuple[tuple[str, int], ...]) -> None:
    found = hit(Case(name="", blows=blows, goals_ms=(None, None)), random.Random(3), 0.4, "--clients", "1")  # type: ignore[arg-type]
    assert found.while_on
    assert found.off_ms is not None
    assert found.off_ms < 5000.0
    assert found.on_again == 0
    assert found.wrong == ()
    assert found.lost_ms <= 1000.0


def test_a_journal_damaged_at_any_byte_gives_the_whole_blocks_before_and_can_be_filed(tmp_path: Path) -> None:
    bench = VirtualBench(load("stuck-soft"), seed=1, began=BEGAN)
    whole = bench.run(bench.request(tmp_path / "whole.journal")).journal.read_bytes()
    data = whole[: ends_of_blocks(whole)[60]]
    places = range(len(data))
    tried, wrong = wrong_after(data, damaged(data, [*places, len(data)], places), tmp_path / "damaged.journal")
    assert tried == 2 * len(data) + 1
    assert wrong == []
    filed, wrong = wrong_filed(data, range(0, len(data), 211), tmp_path)
    assert filed > 5
    assert wrong == []
