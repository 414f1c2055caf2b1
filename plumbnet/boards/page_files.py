"""The files of the page as the server gives them out, and the page in one piece for a copy that nobody serves."""

import base64
import hashlib
import html
import re
from collections.abc import Mapping, Sequence
from functools import cache
from importlib.resources import files

from plumbnet.report.figures import PALETTES, Theme
from plumbnet.report.text import CAUTION

MODULES = (
    "touch-code.mjs",
    "served.mjs",
    "hosts.mjs",
    "past.mjs",
    "gauge.mjs",
    "picture.mjs",
    "menu.mjs",
    "heat-up.mjs",
    "board.mjs",
)
"""The scripts, each behind those that it imports from."""
TASK_MODULES = ("served.mjs", "lesson-hosts.mjs", "gauge.mjs", "picture.mjs", "heat-up.mjs", "tasks.mjs")
"""Those of the page on which exercises are answered by tapping."""
TYPES: Mapping[str, str] = {"css": "text/css", "mjs": "text/javascript"}
_IMPORT = re.compile(r"^import [^;]*;\n", re.MULTILINE)
_EXPORT = re.compile(r"^export (?=(?:async )?(?:function|const|class|let) )", re.MULTILINE)
_PLACE = re.compile(r"\{\{([a-z_]+)\}\}")


@cache
def _read(name: str) -> str:
    return (files("plumbnet.boards") / "page" / name).read_text(encoding="utf-8")


def board_file(name: str) -> str | None:
    """A style sheet or a script of the page by its name; None where there is none of that name."""
    if name == "colours.css":
        return _colours()
    return _read(name) if name in {*MODULES, *TASK_MODULES, "board.css", "tasks.css"} else None


def page_html(title: str, *, style: str, script: str, data: str = "", policy: str = "") -> str:
    """The page; `style` and `script` are elements, `data` is JSON, `policy` stands in the page where no server says it.

    What the file brings in is text and never markup, put in at once: a title may hold what looks like a place.
    """
    return _filled("board.html", _places(title, style, script, data, policy))


def _places(title: str, style: str, script: str, data: str, policy: str) -> dict[str, str]:
    meta = f'<meta http-equiv="Content-Security-Policy" content="{html.escape(policy)}">' if policy else ""
    return {
        "policy": meta,
        "title": html.escape(title),
        "style": style,
        "script": script,
        "data": data.replace("<", "\\u003c"),
        "caution": html.escape(CAUTION),
    }


def _filled(frame: str, places: Mapping[str, str]) -> str:
    return _PLACE.sub(lambda found: places[found[1]], _read(frame))


def served_page(title: str) -> str:
    """The page whose style and scripts are asked of the server."""
    return page_html(title, style=_linked("board.css"), script=_asked_for("board.mjs"))


def served_tasks(title: str) -> str:
    """The page on which exercises are answered by tapping, likewise."""
    style = _linked("board.css", "tasks.css")
    return _filled("tasks.html", _places(title, style, _asked_for("tasks.mjs"), "", ""))


def _linked(*names: str) -> str:
    return "".join(f'<link rel="stylesheet" href="{name}">' for name in ("colours.css", *names))


def _asked_for(name: str) -> str:
    return f'<script type="module" src="{name}"></script>'


def whole_page(title: str, data: str) -> str:
    """The page in one file with its data: it asks nothing of anybody, and runs no script but its own."""
    return _whole(title, data, style=_read("board.css"), script=bundled(), frame="board.html")


def whole_tasks(title: str, data: str) -> str:
    """The page on which exercises are answered by tapping, in one file with its data, likewise."""
    style, script = _read("board.css") + _read("tasks.css"), bundled(TASK_MODULES)
    return _whole(title, data, style=style, script=script, frame="tasks.html")


def _whole(title: str, data: str, *, style: str, script: str, frame: str) -> str:
    style = _colours() + style
    policy = (
        f"default-src 'none'; script-src {_hash(script)}; style-src {_hash(style)}; base-uri 'none'; form-action 'none'"
    )
    elements = f"<style>{style}</style>", f'<script type="module">{script}</script>'
    return _filled(frame, _places(title, *elements, data, policy))


def page_script(name: str) -> str:
    """A script that belongs to the page without being in it."""
    return _read(name)


def framed_page(title: str) -> str:
    """The page in one piece for a frame: it asks the page around it, and nobody else."""
    return whole_page(title, '{"framed":true}')


def bundled(modules: Sequence[str] = MODULES) -> str:
    """All scripts as one, in which nothing is imported: a page that is opened as a file may import nothing."""
    return "".join(_EXPORT.sub("", _IMPORT.sub("", _read(name))) for name in modules)


def script_hash() -> str:
    """The hash of the only script of a whole page, as a policy names it, without its quotes."""
    return _hash(bundled()).strip("'")


def _hash(text: str) -> str:
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"


@cache
def _colours() -> str:
    """The colours of the drawing as variables: light, dark, and black on white in print."""
    light, dark, ink = (_variables(theme) for theme in ("light", "dark", "bw"))
    return (
        f":root{{color-scheme:light;{light}}}"
        f":root[data-theme=dark]{{color-scheme:dark;{dark}}}"
        f"@media (prefers-color-scheme:dark){{:root:not([data-theme=light]){{color-scheme:dark;{dark}}}}}"
        f"@media print{{:root,:root[data-theme],:root:not([data-theme=light]){{color-scheme:light;{ink}}}}}\n"
    )


def _variables(theme: Theme) -> str:
    palette = PALETTES[theme]
    values = {"ground": palette.ground, "ink": palette.ink, "faint": palette.faint, "ring": palette.ring}
    values |= {"way": palette.band, "way-edge": palette.band_edge}
    values |= {service.value: line.colour for service, line in palette.services.items()}
    for tone, shade in palette.shades.items():
        values |= {f"{tone}-fill": shade.fill, f"{tone}-edge": shade.edge}
    return "".join(f"--{name}:{colour};" for name, colour in values.items())
