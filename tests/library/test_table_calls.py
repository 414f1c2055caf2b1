"""Tables for programs."""

from pathlib import Path

import pytest

import plumbnet


def test_export_and_import_are_one_layout(tmp_path: Path) -> None:
    data = b"plumbnet: 1\nparts: {street: {kind: main, pressure: 60 psi}, tap: fixture}\nruns: [street -> tap.cold]\n"
    names = plumbnet.export_tables(data, tmp_path, semicolons=True)
    assert plumbnet.import_tables(*(tmp_path / name for name in names)).parts == plumbnet.read_bytes(data).parts


def test_mistakes_are_an_error_of_their_own(tmp_path: Path) -> None:
    (tmp_path / "parts.csv").write_text("name,kind\nsplit,te\n", encoding="utf-8")
    with pytest.raises(plumbnet.TableError) as refused:
        plumbnet.import_tables(tmp_path / "parts.csv")
    assert refused.value.faults[1].sentence == ('parts.csv, row 2, column kind: unknown kind "te": did you mean "tee"?')
