"""Every planted defect still fits the code. Whether it is caught: `python -m tests.defects`."""

from pathlib import Path

from tests.defects.__main__ import ROOT, applies, defects, scratch_copy, takes_back


def test_every_planted_defect_fits_and_names_tests_that_exist(tmp_path: Path) -> None:
    scratch_copy(tmp_path)
    assert len(defects()) >= 10
    for defect in defects():
        assert all((ROOT / name.partition("::")[0]).exists() for name in defect.tests), defect.name
        assert applies(defect, tmp_path), f"{defect.name} does not fit"
        takes_back(defect, tmp_path)
