"""The board of a layout in a notebook, as it is called."""

import sys

import pytest

import plumbnet


def test_board_is_that_of_a_report_or_of_what_check_takes() -> None:
    report = plumbnet.check("systems/house-with-check.yaml")
    assert plumbnet.board(report, height=300).report == report
    assert plumbnet.board(report, height=300).height == 300
    assert plumbnet.board("systems/house-with-check.yaml").report.heaters == report.heaters


def test_what_is_missing_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "anywidget", None)
    monkeypatch.delitem(sys.modules, "plumbnet.boards.notebook", raising=False)
    monkeypatch.delitem(sys.modules, "plumbnet.boards.notebook.board_widget", raising=False)
    with pytest.raises(plumbnet.NoWidget, match=r'pip install "plumbnet\[notebooks\]"'):
        plumbnet.board("systems/house-with-check.yaml")
