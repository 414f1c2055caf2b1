"""The form of a file by the ending of its name."""

from pathlib import Path

import pytest

from plumbnet.library.picture_form import UnknownForm, form_of


def test_ending_says_the_form_whatever_its_case() -> None:
    assert form_of(Path("a.b.SVG"), ("svg", "pdf")) == "svg"


@pytest.mark.parametrize("name", ["out.gif", "out", ".svg", "svg"])
def test_other_endings_are_refused_in_a_sentence(name: str) -> None:
    with pytest.raises(UnknownForm) as caught:
        form_of(f"folder/{name}", ("svg", "pdf"))
    assert str(caught.value).startswith(f'"{name}" does not say ')
    assert str(caught.value).endswith(" .svg or .pdf")
