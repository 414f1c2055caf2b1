"""A schematic to a drawing in DXF: layers by service, symbols as blocks, words as text, in millimetres of the sheet.

What is in it is what the figure has, shape by shape; ezdxf, which writes it, need not be installed.
"""

import io
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from importlib import import_module
from types import ModuleType
from typing import Any, Final

from matplotlib.patches import Patch
from matplotlib.text import Text

from plumbnet.drawing.dxf_entities import (
    MM_PER_POINT,
    DxfPlace,
    Outline,
    add_outline,
    add_paper,
    add_words,
    linetype_of,
    outlines_of,
    weight_of,
)
from plumbnet.drawing.figure import Sheet, schematic_figure
from plumbnet.drawing.ink import Cut, Group
from plumbnet.drawing.items import Schematic
from plumbnet.drawing.palette import Dash, Palette, Service

NO_DXF: Final = 'a drawing in DXF needs ezdxf, which is not installed: pip install "plumbnet[dxf]"'
_MM_PER_INCH: Final = 25.4
_MILLIMETRES = 4  # $INSUNITS of the DXF reference (from memory)
_STYLE = "plumbnet"
_PAPER: Final = "paper"
"""The layer of what lies behind all, so that dark words are read on a dark screen too; it can be put out."""
_LAYERS: Final = {"zone": "zones", "way": "way-out", "part": "symbols", "fork": "symbols", "badge": "badges"}
"""The layer of a group by the first word of its id; what stands round the drawing is on the sheet's."""


class NoDxf(ImportError):
    """A drawing in DXF was asked for, and what writes it is not installed."""


def schematic_dxf(schematic: Schematic, palette: Palette, sheet: Sheet = "natural") -> bytes:
    """The schematic on a sheet as a DXF file of version R2010, the same bytes for the same schematic. Raises NoDxf."""
    try:
        ezdxf = import_module("ezdxf")
    except ImportError as error:
        raise NoDxf(NO_DXF) from error
    figure = schematic_figure(schematic, palette, sheet)
    axes = figure.axes[0]
    left, right = axes.get_xlim()
    foot, _ = axes.get_ylim()
    wide, high = (float(side) * _MM_PER_INCH for side in figure.get_size_inches())
    place = DxfPlace((float(left), float(foot)), wide / MM_PER_POINT / float(right - left))
    with _without_clock(ezdxf):
        document = ezdxf.new("R2010", units=_MILLIMETRES)
        document.styles.add(_STYLE, font="DejaVuSans.ttf")
        corners = ((0.0, 0.0), (wide, high))
        document.modelspace().reset_extents(*((*corner, 0.0) for corner in corners))
        _add_layers(document, palette)
        add_paper(document.modelspace(), corners, palette.ground, _PAPER)
        desk = _Desk(document, place)
        for group in sorted(axes.artists, key=lambda each: each.get_zorder()):
            if isinstance(group, Group):
                desk.draw(group)
        written = io.StringIO()
        document.write(written)
    return written.getvalue().encode()


@contextmanager
def _without_clock(ezdxf: ModuleType) -> Iterator[None]:
    """Inside, files are written without the time and without chance."""
    before = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = before


def _add_layers(document: Any, palette: Palette) -> None:  # noqa: ANN401  ezdxf
    """A layer to each service, with its colour and dash, and those of everything else."""
    for service, style in palette.services.items():
        layer = document.layers.add(layer_of(service), linetype=_linetype(document, style.dash))
        layer.dxf.lineweight = weight_of(style.width)
        layer.rgb = tuple(bytes.fromhex(style.colour.removeprefix("#")))
    for name in dict.fromkeys([*_LAYERS.values(), "words", "sheet", _PAPER]):
        document.layers.add(name)


def layer_of(service: Service) -> str:
    """Name of the layer of pipes of a service."""
    return f"pipes-{service.value}"


def _linetype(document: Any, dash: Dash) -> str:  # noqa: ANN401  ezdxf
    return linetype_of(document, [length * MM_PER_POINT for length in dash]) if dash else "CONTINUOUS"


@dataclass(slots=True)
class _Desk:
    """The drawing so far, and the blocks in it by what they look like."""

    document: Any
    place: DxfPlace
    blocks: dict[tuple[Outline, ...], str] = field(default_factory=dict)

    def draw(self, group: Group) -> None:
        """Put a group into the drawing: on the layer of its pipes, or its shapes as a block, words as text."""
        space = self.document.modelspace()
        layer = _LAYERS.get(str(group.get_gid()).partition("-")[0], "sheet")
        if group.service is not None:
            layer = layer_of(group.service)
        shapes = [
            outline
            for member in group.members
            if isinstance(member, Patch) and not isinstance(member, Cut)  # a hatch is cut by no outline here
            for outline in outlines_of(member, self.place)
        ]
        if group.symbol and shapes:
            corner = (min(x for one in shapes for x, _ in one.points), min(y for one in shapes for _, y in one.points))
            name = self._block(group.symbol, tuple(one.moved(corner) for one in shapes))
            space.add_blockref(name, corner, dxfattribs={"layer": layer})
        else:
            for outline in shapes:
                add_outline(space, outline, layer, by_layer=group.service is not None)
        for member in group.members:
            if isinstance(member, Text):
                add_words(space, member, self.place, "words" if group.symbol else layer, _STYLE)

    def _block(self, symbol: str, look: tuple[Outline, ...]) -> str:
        """The block that looks so, made where there is none yet: named as its symbol, turned ones by number."""
        if look not in self.blocks:
            turned = sum(name.partition("-")[0] == symbol for name in self.blocks.values())
            self.blocks[look] = f"{symbol}-{turned + 1}"
            block = self.document.blocks.new(self.blocks[look])
            for outline in look:
                add_outline(block, outline, "0")
        return self.blocks[look]
