"""Drawings for tests, from a layout in a line or a few, stage by stage."""

from dataclasses import dataclass
from functools import cached_property

from conftest import system as system_of

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.system import System
from plumbnet.report.drawing.columns import columns
from plumbnet.report.drawing.grid import Grid, grid_of
from plumbnet.report.drawing.hanging import Hung
from plumbnet.report.drawing.model import Model, Stack, layered, model_of, stacks
from plumbnet.report.drawing.notes import notes
from plumbnet.report.drawing.order import Columns, order
from plumbnet.report.drawing.paint import Layout
from plumbnet.report.drawing.places import Body, Joint, Placed, Route
from plumbnet.report.drawing.placing import placed
from plumbnet.report.drawing.plan import Plan, plan_of
from plumbnet.report.drawing.remarks import Remarks, remarks
from plumbnet.report.drawing.schematic import layout_of
from plumbnet.report.drawing.service import services
from plumbnet.report.drawing.stance import Stance, Stances
from plumbnet.report.palette import Service


@dataclass(frozen=True)
class Sketch:
    """A system on its way to a drawing, asked by the names of parts."""

    system: System

    @cached_property
    def report(self) -> Report:
        return plumbnet.check(self.system)

    @cached_property
    def remarks(self) -> Remarks:
        return remarks(self.report)

    @cached_property
    def model(self) -> Model:
        verdicts = {heater.name: heater.verdict for heater in self.report.heaters}
        lines = notes(self.report)
        return model_of(self.system, services(self.system), notes=lines, verdicts=verdicts, ringed=self.remarks.stops)

    @cached_property
    def stacks(self) -> tuple[Stack, ...]:
        return stacks(self.model)

    @cached_property
    def plan(self) -> Plan:
        return plan_of(layered(self.model, self.stacks))

    @cached_property
    def grid(self) -> Grid:
        return grid_of(self.plan, columns(self.plan))

    @cached_property
    def columns(self) -> Columns:
        return order(self.grid)

    @cached_property
    def stances(self) -> tuple[Stance, ...]:
        return Stances(self.grid, self.columns, self.model, self.stacks).all()

    @cached_property
    def placed(self) -> Placed:
        return placed(self.model)

    @cached_property
    def layout(self) -> Layout:
        return layout_of(self.report)

    def service(self, name: str) -> Service:
        """The service of the pipe of that name, as "street -> meter"."""
        found = dict(zip((pipe.name for pipe in self.system.pipes), services(self.system), strict=True))
        return found[name]

    def column(self, name: str) -> int:
        return self.grid.column_of[self.plan.pieces[name][0]]

    def stance(self, name: str) -> Stance:
        return self.stances[self.plan.pieces[name][0]]

    def hung(self, host: str) -> tuple[Hung, ...]:
        return self.stance(host).hung

    def body(self, name: str) -> Body:
        return next(body for body in self.placed.bodies if body.item.name == name)

    def joint(self, name: str) -> Joint:
        return next(joint for joint in self.placed.joints if joint.item.name == name)

    def route(self, start: str, end: str) -> Route:
        return next(
            route
            for route in self.placed.routes
            if route.link is not None and (route.link.start.part, route.link.end.part) == (start, end)
        )


def sketch(runs: str, **parts: str) -> Sketch:
    """The sketch of a layout, drawn as in `conftest.layout`."""
    return Sketch(system_of(runs, **parts))
