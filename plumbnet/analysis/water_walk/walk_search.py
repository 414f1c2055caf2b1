"""A report and one of its heaters to the walk of its water from part to part."""

from collections.abc import Iterator

from plumbnet.analysis.report import Report
from plumbnet.analysis.water_walk.gates_met import GateView
from plumbnet.analysis.water_walk.outlets_met import OutletView, lost
from plumbnet.analysis.water_walk.walk_steps import Conduct, Gated, GateMet, Meeting, WalkStep, WaterWalk
from plumbnet.analysis.water_walk.walk_tries import tries
from plumbnet.layout.model import End, Free, Part
from plumbnet.rules.facts import HeaterFacts


def water_walk(report: Report, heater: HeaterFacts) -> WaterWalk:
    """The walk of a heater's water, which goes on until it is stopped; its outlets are those of the heater's ladder.

    Linear in the parts that it meets.
    """
    steps = tuple(_Walk(report, heater).steps())
    return WaterWalk(heater, steps, tuple(tries(steps)), _below_limit_m(report, heater))


def _below_limit_m(report: Report, heater: HeaterFacts) -> float:
    parts = report.system.parts
    setting = parts.get(heater.limit_at)
    return 0.0 if setting is None else setting.elevation_m - parts[heater.name].elevation_m


class _Walk:
    """Follows the water from part to part, depth first."""

    def __init__(self, report: Report, heater: HeaterFacts) -> None:
        network = report.network
        self.name, self.ports = heater.name, network.piping.ports
        self.parts = network.piping.system.parts
        head_pa = network.piping.heads_pa[next(network.piping.nodes_of(heater.name))]
        self.outlet_view, self.gate_view = OutletView(report, heater, head_pa), GateView(network, heater, head_pa)
        self.gates, self.pipes = network.gates_at, network.piped

    def steps(self) -> Iterator[WalkStep]:
        """Every step; a part is met once on each side of it that the water comes to."""
        store = self.parts[self.name].heat()
        ports = () if store is None else _joined(self.parts[self.name], store.inlet)
        seen = {End(self.name, port) for port in ports}
        stack: list[tuple[End, int | None, str]] = [
            (far, None, port) for port in reversed(ports) for far in self.pipes.get(End(self.name, port), [])
        ]
        number = 0
        while stack:
            end, came_from, by = stack.pop()
            if end in seen:
                continue
            met, onward = self._meets(end)
            seen |= {end, *onward}
            yield WalkStep(end.part, self.parts[end.part].kind, end.port, came_from, by, met)
            ahead = [far for near in onward for far in self.pipes.get(near, []) if far not in seen]
            stack += [(far, number, "") for far in reversed(ahead)]
            number += 1

    def _meets(self, end: End) -> tuple[Meeting, list[End]]:
        """What the water meets at a port, and the ports of the part by which it goes on."""
        part = self.parts[end.part]
        outlet = next((outlet for outlet in part.outlets() if outlet.port == end.port), None)
        if outlet is not None:
            return self.outlet_view.met(end, outlet), _others(end, _joined(part, end.port))
        if part.is_fitting:
            return Conduct.SPREADS, [end]
        reached, gates = self._inside(end)
        onward = _others(end, reached)
        plain = Conduct.LETS_THROUGH if onward else Conduct.ENDS
        return lost(part) or (Gated(tuple(gates)) if gates else plain), onward

    def _inside(self, end: End) -> tuple[list[str], list[GateMet]]:
        """The ports of a part that the water comes to from one of them, and what its gates do on the way."""
        part = self.parts[end.part]
        reached: list[str] = list(_joined(part, end.port))
        gates: list[GateMet] = []
        for port in reached:
            for crossing in self.gates.get(End(end.part, port), []):
                beyond = self.ports[crossing.enters].port
                if beyond in reached:
                    continue
                gates.append(self.gate_view.met(crossing))
                if gates[-1].answer.passes:
                    reached += [other for other in _joined(part, beyond) if other not in reached]
        return reached, gates


def _joined(part: Part, port: str) -> tuple[str, ...]:
    """The ports of a part that free passages join to one of them, itself first."""
    joined = [port]
    for known in joined:
        for passage in part.passages():
            if isinstance(passage, Free) and known in (passage.a, passage.b):
                joined += [other for other in (passage.a, passage.b) if other not in joined]
    return tuple(joined)


def _others(end: End, ports: list[str] | tuple[str, ...]) -> list[End]:
    """Ports of the part at which water has come in, less that port."""
    return [End(end.part, port) for port in ports if port != end.port]
