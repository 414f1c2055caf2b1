"""Pictures that a notebook shows and a program saves."""

from pathlib import Path

import pytest

from plumbnet.library.picture import Picture, form_wanted, pictured
from plumbnet.library.picture_form import UnknownForm


def test_notebook_shows_what_it_can_show() -> None:
    svg, png, pdf = Picture(b"<?xml?>\n<svg/>", "svg"), Picture(b"\x89PNG", "png"), Picture(b"%PDF", "pdf")
    assert [one._repr_svg_() for one in (svg, png, pdf)] == ["<svg/>", None, None]
    assert [one._repr_png_() for one in (svg, png, pdf)] == [None, b"\x89PNG", None]


def test_picture_tells_its_form_and_size_in_a_line() -> None:
    assert repr(Picture(b"<svg/>", "svg")) == "<Picture: svg, 6 bytes>"


def test_form_is_the_one_asked_for_or_that_of_the_path() -> None:
    assert form_wanted(None, None) == "svg"
    assert form_wanted(None, "out.PNG") == "png"
    assert form_wanted("pdf", None) == "pdf"
    assert form_wanted("pdf", "out.bin") == "pdf"
    with pytest.raises(UnknownForm, match=r'"out.gif" does not say how to write it; let its name end in .svg, .pdf or'):
        form_wanted(None, "out.gif")


def test_picture_is_written_where_a_path_is_given(tmp_path: Path) -> None:
    picture = pictured(b"<svg/>", "svg", tmp_path / "out.svg")
    assert (tmp_path / "out.svg").read_bytes() == picture.content == b"<svg/>"
    with pytest.raises(FileNotFoundError):
        picture.save(tmp_path / "none" / "out.svg")
