"""Many runs on a few processes, in the order in which they were asked for."""

import multiprocessing
import tempfile
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TypeVar

Asked = TypeVar("Asked")
Got = TypeVar("Got")


def each(work: Callable[[Asked, Path], Got], asked: Iterable[Asked], workers: int) -> list[Got]:
    """`work` on each of `asked`, with a folder to write in. One worker: in this process."""
    tasks = [(work, one) for one in asked]
    if workers <= 1:
        return [_one(task) for task in tasks]
    with multiprocessing.get_context("spawn").Pool(workers) as pool:
        return pool.map(_one, tasks, chunksize=4)


def _one(task: tuple[Callable[[Asked, Path], Got], Asked]) -> Got:
    work, asked = task
    with tempfile.TemporaryDirectory() as folder:
        return work(asked, Path(folder))
