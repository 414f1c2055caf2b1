"""Files that commands write."""

from pathlib import Path

import pytest
import typer

from plumbnet.cli.output_file import form_of_output, save


def test_ending_of_a_name_says_the_form_whatever_its_case() -> None:
    assert form_of_output(Path("a.b.SVG"), ("svg", "pdf")) == "svg"


@pytest.mark.parametrize("name", ["out.gif", "out", ".svg", "svg"])
def test_other_endings_are_refused_in_a_sentence(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(typer.Exit):
        form_of_output(Path(name), ("svg", "pdf"))
    words = f'"{name}" does not say how to write it; let its name end in .svg or .pdf\n'
    assert capsys.readouterr().err == words


def test_what_cannot_be_written_is_said_in_a_sentence(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(typer.Exit):
        save(tmp_path / "no" / "out.svg", b"")
    said = capsys.readouterr().err
    assert "out.svg cannot be written: " in said
    assert said.endswith(" no such file or directory\n")


def test_file_holds_what_was_given(tmp_path: Path) -> None:
    save(tmp_path / "out.svg", b"<svg/>")
    assert (tmp_path / "out.svg").read_bytes() == b"<svg/>"


def test_file_that_was_read_is_not_written_over(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    layout, link = tmp_path / "lay.svg", tmp_path / "link.svg"
    layout.write_bytes(b"plumbnet: 1")
    link.symlink_to(layout)
    with pytest.raises(typer.Exit):
        save(link, b"<svg/>", read=[None, "-", str(layout)])
    assert capsys.readouterr().err == (f"{link} is the file that was read, and stays as it is; write to another name\n")
    assert layout.read_bytes() == b"plumbnet: 1"


def test_file_that_cannot_be_written_over_is_said_to_stay(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "out.svg"
    out.write_bytes(b"old")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(typer.Exit):
        save(out, b"new")
    assert capsys.readouterr().err == (
        f"{out} cannot be written: no space left on device; the file that was there stays as it is\n"
    )
    assert out.read_bytes() == b"old"
