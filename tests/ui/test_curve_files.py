"""A capture of another instrument laid over a start, and curves as files: by the room's buttons, refused while on."""

import csv
import json
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtWidgets import QAbstractButton, QApplication, QFileDialog

from benchlog.ledger.captured import captured
from benchlog.ledger.files import files_of
from tests.ui.lot_desk import LotDesk
from ui import curve_texts as texts
from ui import texts as window_texts
from ui.curves.room import CAPTURE_PAGE, CHART_PAGE, JOB

SPIKE_A, STEP_S = 3.1, 0.0002


@pytest.fixture
def desk(lot_desk: LotDesk) -> LotDesk:
    """With one unit measured, its first start picked out."""
    lot_desk.ready()
    lot_desk.measure("F-1", "good:1")
    return lot_desk


def captured_file(desk: LotDesk, path: Path, *, late_s: float, start: int = 0) -> Path:
    """The start as an oscilloscope sees it: its readback's own line, and a spike too short for any readback. Its time 0
    is `late_s` after the trigger."""
    run = desk.units()[0].run
    assert run is not None
    curve = captured(desk.ledger, run).curves[start]
    t_s = np.arange(-0.05, 0.85, STEP_S)
    amps = np.interp(t_s, curve.t_s, curve.amps)
    amps[(t_s > 0.0005) & (t_s < 0.0012)] = SPIKE_A
    with path.open("w", newline="") as file:
        writer = csv.writer(file, delimiter=";")
        writer.writerow(["Time (ms)", "CH1 (V)", "CH2 (mV)"])
        for at_s, value in zip(t_s - late_s, amps, strict=True):
            writer.writerow([f"{1000 * at_s:.3f}".replace(".", ","), "3,00", f"{100 * value:.2f}".replace(".", ",")])
    return path


def test_a_capture_is_laid_where_it_belongs_and_its_real_peak_is_told(desk: LotDesk, tmp_path: Path) -> None:
    room = desk.window.curves
    path = captured_file(desk, tmp_path / "scope.csv", late_s=0.02)
    room.side.next.serial.setFocus()
    desk.curving.files.look_into(path)
    desk.settle()
    assert room.page == CAPTURE_PAGE
    assert QApplication.focusWidget() is room  # its field is hidden with it
    form = room.capture
    assert form.columns["time"].currentData() == 0  # by its head
    form.columns["amps"].setCurrentIndex(form.columns["amps"].findData(2))
    form.columns["volts"].setCurrentIndex(0)
    form.amps_per_volt.setText("10")
    desk.click("capture_lay")
    desk.settle()
    assert room.page == CHART_PAGE
    capture = room.chart.plot.shown.capture
    assert capture is not None
    at_s = float(capture.t_s[capture.amps.argmax()])
    assert at_s == pytest.approx(0.0005, abs=0.004)  # on the start's own time
    focus = QApplication.focusWidget()
    assert focus is room  # so that the space bar is no button's
    assert room.chart.say_label.text().startswith("Real peak 3.10 A; the readback saw 1.")
    assert "mean of 20 ms. Its time 0 is +0.0" in room.chart.why_label.said
    (kept,) = files_of(desk.ledger, desk.lot().job.id)
    assert (kept.name, kept.size) == ("scope.csv", path.stat().st_size)
    assert kept.caption.startswith("run 2, start 1: time in column 1, amps in column 3, 10 A/V")
    desk.click("curves_over")
    assert room.chart.plot.shown.capture is None
    assert "captured" in room.chart.say_label.text()
    _what_can_not_be_is_said_and_not_kept(desk, tmp_path)


def _what_can_not_be_is_said_and_not_kept(desk: LotDesk, tmp_path: Path) -> None:
    (tmp_path / "notes.csv").write_text("nothing but words\nand more\n")
    desk.curving.files.look_into(tmp_path / "notes.csv")
    desk.settle()
    assert "otes.csv: no two lines of numbers" in desk.window.notice.words.text()
    assert desk.window.curves.page == CHART_PAGE
    desk.curving.files.look_into(captured_file(desk, tmp_path / "again.csv", late_s=0.0))
    desk.settle()
    form = desk.window.curves.capture
    form.columns["time"].setCurrentIndex(0)
    desk.click("capture_lay")
    assert form.problem.text() == texts.CAPTURE_TIME
    form.columns["time"].setCurrentIndex(form.columns["time"].findData(1))  # volts are no time
    desk.click("capture_lay")
    desk.settle()
    assert form.problem.text()
    assert [file.name for file in files_of(desk.ledger, desk.lot().job.id)] == ["scope.csv"]
    desk.click("capture_leave")
    assert desk.window.curves.page == CHART_PAGE


def test_no_file_is_chosen_or_written_while_a_run_is_on(desk: LotDesk, tmp_path: Path) -> None:
    desk.per_poll_s = 0.1
    desk.window.curves.side.next.serial.setText("F-2")
    desk.curving.begin()
    assert desk.session.run.on
    for press in ("curves_over", "curves_export"):
        desk.click(press)
        assert desk.window.notice.words.text() == window_texts.NOT_WHILE_ON
    desk.curving.files.export(tmp_path / "curves.csv")
    desk.curving.files.look_into(tmp_path / "scope.csv")
    assert desk.window.curves.findChildren(QFileDialog) == []
    assert list(tmp_path.glob("*.csv")) == []
    desk.session.running.output_off()
    desk.run_until_over()


def test_curves_go_out_as_tables_arrays_and_pictures_and_never_over_a_file(desk: LotDesk, tmp_path: Path) -> None:
    for name in ("lot.csv", "lot.npz", "lot.svg", "lot.png", "lot.pdf", "lot.doc"):
        desk.curving.files.export(tmp_path / name)
        desk.settle()
    rows = list(csv.DictReader((tmp_path / "lot.csv").read_text().splitlines()))
    assert {row["serial"] for row in rows} == {"F-1"}
    assert {row["start"] for row in rows} == {"1", "2"}
    described = json.loads((tmp_path / "lot.csv-metadata.json").read_text())
    assert described["url"] == "lot.csv"
    with np.load(tmp_path / "lot.npz") as arrays:
        assert arrays["curves/amps"].size == len(rows)
    assert (tmp_path / "lot.svg").read_text().startswith("<svg")
    assert (tmp_path / "lot.png").read_bytes().startswith(b"\x89PNG")
    assert (tmp_path / "lot.pdf").read_bytes().startswith(b"%PDF")
    assert not (tmp_path / "lot.doc").exists()
    assert "rite a name that ends in" in desk.window.notice.words.text()
    before = (tmp_path / "lot.npz").read_bytes()
    desk.curving.files.export(tmp_path / "lot.npz")
    desk.settle()
    assert "is there already" in desk.window.notice.words.text()
    assert (tmp_path / "lot.npz").read_bytes() == before
    desk.click("curves_export")
    dialog = desk.curving.files.dialog
    assert isinstance(dialog, QFileDialog)
    assert dialog.testOption(QFileDialog.Option.DontUseNativeDialog)
    assert dialog.selectedFiles()[0].endswith("2026-11-curves.csv")
    dialog.reject()


def test_the_lot_s_report_is_offered_beside_its_units(desk: LotDesk) -> None:
    desk.click("curves_page_1")
    desk.click("curves_lot_report")
    dialog = desk.curving.files.dialog
    assert isinstance(dialog, QFileDialog)
    assert dialog.selectedNameFilter().endswith("(*.pdf)")
    assert dialog.selectedFiles()[0].endswith("2026-11-report.pdf")
    dialog.reject()
    desk.take_job()
    desk.curving.show_chosen(JOB)
    desk.settle()
    desk.click("curves_page_1")
    report = desk.window.findChild(QAbstractButton, "curves_lot_report")
    assert report is not None
    assert not report.isVisible()  # a job has its sheet
