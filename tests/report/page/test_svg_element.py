"""A picture in a page: names of its own, told in words, nothing that reaches beyond it."""

import xml.etree.ElementTree as ET

from matplotlib.figure import Figure

from plumbnet.report.figures.figure_file import saved
from plumbnet.report.page.svg_element import inline, width_in


def picture() -> bytes:
    figure = Figure(figsize=(4.0, 3.0))
    axes = figure.add_subplot()
    axes.plot([0.0, 1.0], gid="part-heater")
    axes.fill_between([0.0, 1.0], [1.0, 1.0], hatch="//")
    return saved(figure, "svg", title="of the file")


def test_every_id_and_every_reference_is_prefixed() -> None:
    text = inline(picture(), prefix="p7-", title="t", words="w")
    root = ET.fromstring(text)  # noqa: S314  # our own
    ids = [each.get("id", "") for each in root.iter() if "id" in each.attrib]
    assert "p7-part-heater" in ids
    assert all(name.startswith("p7-") for name in ids)
    assert text.count("url(#") == text.count("url(#p7-") > 0
    assert text.count('href="#') == text.count('href="#p7-') > 0


def test_picture_is_named_and_told() -> None:
    root = ET.fromstring(inline(picture(), prefix="p1-", title="a <b>", words="c & d"))  # noqa: S314  # our own
    assert (root.get("role"), root.get("aria-labelledby")) == ("img", "p1-told-name p1-told-words")
    assert [(each.tag, each.text) for each in root[:2]] == [("title", "a <b>"), ("desc", "c & d")]
    assert "of the file" not in "".join(root.itertext())


def test_nothing_reaches_beyond_the_picture() -> None:
    text = inline(picture(), prefix="p1-", title="t", words="w")
    assert "<style" not in text
    assert "metadata" not in text
    assert "http" not in text
    assert "xmlns" not in text


def test_picture_is_never_wider_than_it_was_drawn() -> None:
    root = ET.fromstring(inline(picture(), prefix="p1-", title="t", words="w"))  # noqa: S314  # our own
    assert "max-width: 288pt" in root.get("style", "")
    assert root.get("width") is None
    assert width_in(picture()) == 4.0
