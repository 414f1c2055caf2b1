"""The bytes of an SVG file to an element that stands in an HTML page: names of its own, told in words, no links out."""

import re
import xml.etree.ElementTree as ET

_SVG = "{http://www.w3.org/2000/svg}"
_XML = "{http://www.w3.org/XML/1998/namespace}"
_DROPPED = frozenset({"metadata", "title"})
_REFERENCE = re.compile(r"url\(#([^)]*)\)")
_EVERYWHERE = "*{"
"""A style sheet of the drawing library begins so; in a page it would reach beyond the picture."""


def inline(svg: bytes, *, prefix: str, title: str, words: str) -> str:
    """The picture as an element, every id in it and every reference to one behind `prefix`.

    `title` names it and `words` tell what it shows, to those who do not see it. It scales to the width of its place,
    and is never wider than it was drawn.
    """
    root = ET.fromstring(svg)  # noqa: S314  # our own picture, in which nothing of a file is markup
    width = root.get("width", "")
    picture = _plain(root, prefix)
    for name in ("width", "height", "version"):
        picture.attrib.pop(name, None)
    picture.attrib |= {
        "role": "img",
        "aria-labelledby": f"{prefix}told-name {prefix}told-words",
        "style": f"max-width: {width}; stroke-linejoin: round; stroke-linecap: butt",
    }
    told = [_element("title", f"{prefix}told-name", title), _element("desc", f"{prefix}told-words", words)]
    picture[:0] = told
    return ET.tostring(picture, encoding="unicode")


def width_in(svg: bytes) -> float:
    """Width in inches of a picture of this house, which says it in points."""
    return float(ET.fromstring(svg).get("width", "0pt").removesuffix("pt")) / 72.0  # noqa: S314  # likewise


def _element(tag: str, name: str, text: str) -> ET.Element:
    found = ET.Element(tag, {"id": name})
    found.text = text
    return found


def _plain(element: ET.Element, prefix: str) -> ET.Element:
    """The element as HTML spells it, with prefixed names, less what does not belong in a page."""
    copy = ET.Element(element.tag.removeprefix(_SVG))
    copy.attrib = {_name(key): _value(_name(key), value, prefix) for key, value in element.attrib.items()}
    copy.text, copy.tail = element.text, element.tail
    copy.extend(_plain(child, prefix) for child in element if _belongs(child))
    return copy


def _belongs(element: ET.Element) -> bool:
    tag = element.tag.removeprefix(_SVG)
    return tag not in _DROPPED and not (tag == "style" and (element.text or "").startswith(_EVERYWHERE))


def _name(key: str) -> str:
    if key.startswith(_XML):
        return f"xml:{key.removeprefix(_XML)}"
    return key.rpartition("}")[2]


def _value(name: str, value: str, prefix: str) -> str:
    if name == "id":
        return f"{prefix}{value}"
    if name == "href" and value.startswith("#"):
        return f"#{prefix}{value[1:]}"
    return _REFERENCE.sub(lambda found: f"url(#{prefix}{found[1]})", value)
