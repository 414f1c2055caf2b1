"""A page to one HTML document that needs nothing else: no network, no script to be read, no word as markup."""

import base64
import hashlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from importlib.resources import files
from itertools import count

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup, escape

from plumbnet.drawing.ink import identifier
from plumbnet.layout.yaml import visible
from plumbnet.report.figures import PALETTES, saved
from plumbnet.report.page.entry_marks import looks
from plumbnet.report.page.page_content import Chapter, Entry, Page, PageBlock, PageFrame, PagePicture
from plumbnet.report.page.svg_element import inline, width_in
from plumbnet.rules.facts import Verdict

_TEMPLATES = "report/page/templates"
_VERDICTS = frozenset(verdict.value for verdict in Verdict)


def to_html(page: Page) -> str:
    """The page as one document; the same text for the same page."""
    script = (files("plumbnet") / _TEMPLATES / "page.js").read_text(encoding="utf-8")
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    return _ENVIRONMENT.get_template("page.html").render(
        page=page,
        chapters=list(_shown(page.chapters)),
        style=Markup(_style()),  # noqa: S704  # the style sheet of this package
        script=Markup(script),  # noqa: S704  # and its script
        script_hash=f"sha256-{digest}",
        framed=list(dict.fromkeys(block.script_hash for block in _frames(page.chapters))),
    )


def to_fragment(title: str, blocks: Sequence[PageBlock]) -> str:
    """Some blocks as an element for a page that is another's, as a notebook's is: no script, ids of their own."""
    style = _ENVIRONMENT.get_template("fragment.css").render(light=PALETTES["light"], looks=looks)
    return _ENVIRONMENT.get_template("fragment.html").render(
        title=title,
        shown=[_item(block, "", "") for block in blocks],
        style=Markup(style),  # noqa: S704  # a style sheet of this package
    )


@dataclass(frozen=True, slots=True)
class _Item:
    """A block as a template wants it: its kind, for a picture the element and whether it is wide, a framed page."""

    kind: str
    block: PageBlock
    svg: str | Markup = ""
    is_wide: bool = False
    lights: str = ""
    document: str | Markup = ""


@dataclass(frozen=True, slots=True)
class _Shown:
    """A chapter as the template wants it."""

    key: str
    title: str
    shown: tuple[_Item, ...]
    opens_sheet: bool = False

    @property
    def is_wide(self) -> bool:
        """Whether it begins with a picture that lies across its sheet."""
        return bool(self.shown) and self.shown[0].is_wide


def _shown(chapters: Sequence[Chapter]) -> Iterator[_Shown]:
    """The chapters with their pictures drawn, each with ids of its own."""
    prefixes = (f"p{number}-" for number in count(1))
    named = {id(block): next(prefixes) for block in _pictures(chapters)}
    lit = next((named[id(block)] for block in _pictures(chapters) if block.shows_parts), "")
    for chapter in chapters:
        items = (_item(block, named.get(id(block), ""), lit) for block in chapter.blocks)
        yield _Shown(chapter.key, chapter.title, tuple(items), chapter.opens_sheet)


def _pictures(chapters: Sequence[Chapter]) -> Iterator[PagePicture]:
    for chapter in chapters:
        yield from (block for block in chapter.blocks if isinstance(block, PagePicture))


def _frames(chapters: Sequence[Chapter]) -> Iterator[PageFrame]:
    for chapter in chapters:
        yield from (block for block in chapter.blocks if isinstance(block, PageFrame))


def _item(block: PageBlock, prefix: str, lit: str) -> _Item:
    """A block for its template; an entry names the parts that it lights up in the picture behind `lit`.

    Ids of a picture stand behind `prefix`, or, where that is empty, behind one made of what is drawn.
    """
    kind = type(block).__name__
    if isinstance(block, PagePicture):
        svg = saved(block.draw(), "svg", title=block.title)
        own = prefix or f"n{hashlib.sha256(svg).hexdigest()[:12]}-"
        element = inline(svg, prefix=own, title=visible(block.title), words=visible(block.words))
        return _Item(kind, block, Markup(element), is_wide=block.is_wide(width_in(svg)))  # noqa: S704  # made of elements
    if isinstance(block, PageFrame):
        return _Item(kind, block, document=Markup(escape(block.document)))  # noqa: S704  escaped, to stay as it is
    if isinstance(block, Entry) and lit:
        return _Item(kind, block, lights=" ".join(f"{lit}{identifier('part', name)}" for name in block.lights))
    return _Item(kind, block)


def _style() -> str:
    light, dark = PALETTES["light"], PALETTES["dark"]
    return _ENVIRONMENT.get_template("page.css").render(light=light, dark=dark, looks=looks)


def _marked(cell: str) -> str | Markup:
    """A cell of a table; a verdict that stands alone in it bears its mark."""
    return Markup('<span class="mark {0}">{0}</span>').format(cell) if cell in _VERDICTS else cell


def _printable(value: object) -> object:
    """Everything that comes to the page as text, made visible; autoescape follows."""
    return visible(value) if isinstance(value, str) and not isinstance(value, Markup) else value


_ENVIRONMENT = Environment(
    loader=PackageLoader("plumbnet", _TEMPLATES),
    autoescape=True,
    undefined=StrictUndefined,
    finalize=_printable,
    trim_blocks=True,
    lstrip_blocks=True,
)
_ENVIRONMENT.globals["marked"] = _marked
