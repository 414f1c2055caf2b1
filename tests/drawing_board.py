"""Drawings for tests, from a layout in a line or a few, stage by stage."""

from dataclasses import dataclass
from functools import cached_property

from conftest import system as system_of

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.drawing.columns.arcs import ArcGraph
from plumbnet.drawing.columns.footprints import Footprint
from plumbnet.drawing.columns.grid import Grid
from plumbnet.drawing.columns.layers import Layers, layers_of
from plumbnet.drawing.columns.mounts import Mount
from plumbnet.drawing.columns.order import Columns, order
from plumbnet.drawing.ink.sheet_composition import Composition, composition
from plumbnet.drawing.items.accessory_stacks import Stack, stacks
from plumbnet.drawing.items.item import Diagram
from plumbnet.drawing.items.schematic import Schematic
from plumbnet.drawing.palette import Service
from plumbnet.drawing.routing.arrangement import arrangement_of
from plumbnet.drawing.routing.placement import Arrangement, Junction, Placement, Route
from plumbnet.layout.model.system import System
from plumbnet.report.schematic.schematic_contents import schematic_of


@dataclass(frozen=True)
class Sketch:
    """A system on its way to a drawing, asked by the names of parts."""

    system: System

    @cached_property
    def report(self) -> Report:
        return plumbnet.check(self.system)

    @cached_property
    def schematic(self) -> Schematic:
        return schematic_of(self.report)

    @cached_property
    def diagram(self) -> Diagram:
        return self.schematic.diagram

    @cached_property
    def stacks(self) -> tuple[Stack, ...]:
        return stacks(self.diagram)

    @cached_property
    def layers(self) -> Layers:
        return layers_of(self.diagram)

    @cached_property
    def grid(self) -> Grid:
        return self.layers.grid

    @cached_property
    def graph(self) -> ArcGraph:
        return self.grid.graph

    @cached_property
    def columns(self) -> Columns:
        return order(self.grid)

    @cached_property
    def footprints(self) -> tuple[Footprint, ...]:
        return self.layers.footprints

    @cached_property
    def arrangement(self) -> Arrangement:
        return arrangement_of(self.diagram)

    @cached_property
    def composition(self) -> Composition:
        return composition(self.schematic)

    def service(self, name: str) -> Service:
        """The service of the pipe of that name, as "street -> meter"."""
        services = (link.service for link in self.diagram.links)
        return dict(zip((pipe.name for pipe in self.system.pipes), services, strict=True))[name]

    def column(self, name: str) -> int:
        return self.grid.column_of[self.graph.pieces[name][0]]

    def footprint(self, name: str) -> Footprint:
        return self.footprints[self.graph.pieces[name][0]]

    def mounts(self, host: str) -> tuple[Mount, ...]:
        return self.footprint(host).mounts

    def placement(self, name: str) -> Placement:
        return next(placement for placement in self.arrangement.placements if placement.item.name == name)

    def joint(self, name: str) -> Junction:
        return next(joint for joint in self.arrangement.junctions if joint.item.name == name)

    def route(self, start: str, end: str) -> Route:
        return next(
            route
            for route in self.arrangement.routes
            if route.link is not None and (route.link.start.part, route.link.end.part) == (start, end)
        )


def sketch(runs: str, **parts: str) -> Sketch:
    """The sketch of a layout, drawn as in `conftest.layout`."""
    return Sketch(system_of(runs, **parts))
