"""How long a job sheet takes as PDF, beside the plain way: HTML through Qt's text layout, and no reading left out.

`python -m tests.benchmarks.paper_speed`. Two runs of ten minutes each, 57,600 readings, both ways; then two of a
million, without the plain way.
"""

import re
import subprocess
import sys
import time

import numpy as np
from PySide6.QtCore import QBuffer, QIODevice, QPointF
from PySide6.QtGui import QGuiApplication, QPainter, QPdfWriter, QPolygonF, QTextDocument

from benchlog.records import RunKind, Trace
from benchlog.reports.sheet import Curve, Sheet, curve_of
from benchlog.reports.sheet_html import html_of
from benchlog.reports.sheet_pdf import sheet_pdf
from tests.ledger.benches import bench_trace
from tests.reports.sheets import run, sheet, told

READINGS, MANY, TIMES = 57_600, 1_000_000, 5
_CODE = """
import time; began_s = time.perf_counter()
from tests.reports.sheets import sheet, told
from benchlog.reports.sheet_pdf import sheet_pdf
sheet_pdf(told(sheet())); print(time.perf_counter() - began_s)
"""


def ours(traces: list[Trace]) -> tuple[float, int]:
    """s from the traces to the PDF, and its bytes."""
    began_s = time.perf_counter()
    data = sheet_pdf(told(sheet_of(traces)))
    return time.perf_counter() - began_s, len(data)


def plain(traces: list[Trace]) -> tuple[float, int]:
    """The same, with the text as rich text and every reading a point."""
    began_s = time.perf_counter()
    text = QTextDocument()
    text.setHtml(re.sub(r"<svg.*?</svg>", "", html_of(told(sheet_of(traces))), flags=re.DOTALL))
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    text.print_(writer)
    writer_of_curves = QPdfWriter(buffer)
    painter = QPainter(writer_of_curves)
    for trace in traces:
        for values in (trace.volts, trace.amps):
            x, y = trace.t_s * 10.0, values * 100.0
            painter.drawPolyline(QPolygonF([QPointF(a, b) for a, b in zip(x.tolist(), y.tolist(), strict=True)]))
    painter.end()
    return time.perf_counter() - began_s, buffer.size()


def sheet_of(traces: list[Trace]) -> Sheet:
    before, after = (curve(trace, kind, n) for n, (trace, kind) in enumerate(zip(traces, KINDS, strict=True), 1))
    return sheet(before=before, after=after)


KINDS = (RunKind.RECOVERY, RunKind.PROOF)


def curve(trace: Trace, kind: RunKind, number: int) -> Curve:
    return curve_of(run(kind, id=number, samples=len(trace.volts)), trace, ())


def main() -> None:
    app = QGuiApplication.instance() or QGuiApplication(["paper", "-platform", "offscreen"])
    assert app is not None
    traces = [bench_trace(READINGS, seed=seed) for seed in (1, 2)]
    ours(traces)  # fonts are looked for once
    mine, theirs = [ours(traces) for _ in range(TIMES)], [plain(traces) for _ in range(TIMES)]
    fast, slow = median(mine), median(theirs)
    print(f"2 x {READINGS:,} readings: median {1000 * fast:.0f} ms, {mine[0][1] >> 10} kB")
    print(f"  the plain way: median {1000 * slow:.0f} ms, {theirs[0][1] >> 10} kB; ratio {slow / fast:.1f}")
    many = [ours([bench_trace(MANY, seed=seed) for seed in (1, 2)])]
    print(f"2 x {MANY:,} readings: {1000 * many[0][0]:.0f} ms, {many[0][1] >> 10} kB")
    first = [float(subprocess.check_output([sys.executable, "-c", _CODE], timeout=60)) for _ in range(TIMES)]
    print(f"first PDF of a process, with its imports: median {1000 * float(np.median(first)):.0f} ms")


def median(times: list[tuple[float, int]]) -> float:
    return float(np.median([one for one, _ in times]))


if __name__ == "__main__":
    main()
