"""Tall buildings for tests of riser diagrams: a tower of flats that can be altered, random ones, and their stages."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from random import Random

from drawing_board import Sketch

import plumbnet
from plumbnet.drawing.riser.likeness.alike import Likeness, likeness_of
from plumbnet.drawing.riser.likeness.folding import Folding, folding_of
from plumbnet.drawing.riser.riser_arrangement import RiserDiagram, riser_diagram
from plumbnet.drawing.riser.stacking.setting import Setting, setting_of
from plumbnet.drawing.riser.structure.building_structure import Structure, structure_of
from plumbnet.drawing.riser.structure.components import Component

RELIEF = "{pressure: 150 psi, capacity: 300000 Btu/h}"
PLANT = [
    "street: {kind: main, pressure: 80 psi, temperature: 50 degF}",
    "meter: meter",
    "check: check_valve",
    "split: tee",
    "tank-tee: tee",
    "tank: {kind: expansion_tank, volume: 20 gal, precharge: 80 psi}",
    "mix: tee",
    f"heater: {{kind: storage_heater, volume: 200 gal, setpoint: 140 degF, input: 200000 Btu/h, relief: {RELIEF}}}",
    "hot: tee",
    "back: tee",
    "pump: circulator",
]
PLANT_RUNS = ["street -> meter -> check -> split -> tank-tee -> mix -> heater -> hot", "tank-tee -> tank"]


def yaml_of(parts: list[str], runs: list[str]) -> str:
    declared, drawn = "".join(f"  {part}\n" for part in parts), "".join(f"  - {run}\n" for run in runs)
    return f"plumbnet: 1\ntitle: A tower\nunits: us\nrules: ipc-2021\nparts:\n{declared}runs:\n{drawn}"


def tower(storeys: int = 6, shafts: int = 2, step_ft: float = 10) -> str:
    """A tower with flats on every storey of every shaft, and a return from the top of each shaft."""
    parts, runs = list(PLANT), [*PLANT_RUNS, "back -> pump -> mix"]
    for shaft in "abcdefgh"[:shafts]:
        hot, cold = "hot", "split"
        for storey in range(1, storeys + 1):
            height, name = storey * step_ft, f"{storey}{shaft}"
            parts += [f"{side}{name}: {{kind: tee, elevation: {height} ft}}" for side in "hc"]
            parts.append(f"flat{name}: {{kind: fixture, elevation: {height + 3} ft}}")
            runs += [f"{hot} -> h{name} -> flat{name}.hot", f"{cold} -> c{name} -> flat{name}.cold"]
            hot, cold = f"h{name}", f"c{name}"
        parts += [f"balance-{shaft}: valve", f"swing-{shaft}: check_valve"]
        runs.append(f"{hot} -> balance-{shaft} -> swing-{shaft} -> back")
    return yaml_of(parts, runs)


@dataclass(frozen=True)
class Tall(Sketch):
    """A layout on its way to a riser diagram."""

    least: int = 3

    @cached_property
    def structure(self) -> Structure:
        assert self.schematic.building is not None
        return structure_of(self.schematic.diagram, self.schematic.building)

    @cached_property
    def likeness(self) -> Likeness:
        return likeness_of(self.structure)

    @cached_property
    def folding(self) -> Folding:
        return folding_of(self.structure, self.likeness, self.least)

    @cached_property
    def setting(self) -> Setting:
        return setting_of(self.structure, self.folding, ())

    @cached_property
    def drawn(self) -> RiserDiagram:
        return riser_diagram(self.structure, self.least)

    def component(self, name: str) -> Component:
        return self.structure.home[name]

    def letter(self, name: str) -> str | None:
        """The letter of the fold in which a part is, None where it is drawn out for itself alone."""
        fold = self.folding.fold_of.get(self.component(name).number)
        return None if fold is None else fold.letter


def tall(text: str, least: int = 3) -> Tall:
    """The stages of a layout in YAML."""
    return Tall(plumbnet.read_bytes(text.encode()), least)


def altered(text: str, *changes: tuple[str, str]) -> str:
    """A layout with lines replaced; what is to be replaced must be there."""
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return text


def random_tower(seed: int) -> str:
    """A building of 4 to 14 storeys with 1 to 4 shafts of different sorts; the same for the same seed."""
    return yaml_of(*_Random(seed).built())


class _Random:
    """Makes one building."""

    def __init__(self, seed: int) -> None:
        self.dice = Random(seed)  # noqa: S311  no secret
        self.has_all_heights = self.dice.random() < 0.7
        self.parts: list[str] = list(PLANT)
        self.runs: list[str] = list(PLANT_RUNS)
        if self.dice.random() < 0.3:
            self.parts = [self._sunk(part) for part in self.parts]
        self.storeys = self.dice.randint(4, 14)
        self.first_ft, self.cold_ft = self.dice.choice([0, 10, 12]), self.dice.choice([0, 0.5, 1])

    @staticmethod
    def _sunk(part: str) -> str:
        """The plant in a basement."""
        name, _, kind = part.partition(": ")
        if not kind.startswith("{"):
            return f"{name}: {{kind: {kind}, elevation: -12 ft}}"
        return f"{name}: {kind[:-1]}, elevation: -12 ft}}"

    def built(self) -> tuple[list[str], list[str]]:
        returned = [self._shaft(shaft) for shaft in "abcd"[: self.dice.randint(1, 4)]]
        if any(returned):
            self.runs.append("back -> pump -> mix")
        else:
            self.parts = [part for part in self.parts if not part.startswith(("back:", "pump:"))]
        return self.parts, self.runs

    def _shaft(self, shaft: str) -> bool:
        """One shaft; whether a return comes back from it."""
        low = self.dice.choice([1, 1, self.dice.randint(1, self.storeys - 2)])
        high = self.dice.randint(min(low + 2, self.storeys), self.storeys)
        sort = self.dice.choice(["tap", "mixer", "corridor", "mixed"])
        hot, cold = "hot", "split"
        for storey in range(low, high + 1):
            name = f"{storey}{shaft}"
            self._tee(f"h{name}", storey, 0.0)
            self._tee(f"c{name}", storey, self.cold_ft)
            if self.dice.random() < 0.1:
                self.parts.append(f"v{name}: valve")
                hot = f"{hot} -> v{name}"
            self.runs += [f"{hot} -> h{name}", f"{cold} -> c{name}"]
            hot, cold = f"h{name}", f"c{name}"
            is_odd = sort == "mixed" or self.dice.random() < 0.1
            self._branch(self.dice.choice(["tap", "mixer", "corridor"]) if is_odd else sort, name, storey)
        if self.dice.random() < 0.3:
            return False
        self.parts += [f"balance-{shaft}: valve", f"swing-{shaft}: check_valve"]
        self.runs.append(f"{hot} -> balance-{shaft} -> swing-{shaft} -> back")
        return True

    def _tee(self, name: str, storey: int, above_ft: float) -> None:
        height = self.first_ft + 10 * (storey - 1) + above_ft
        self.parts.append(f"{name}: {{kind: tee, elevation: {height} ft}}" if self.has_all_heights else f"{name}: tee")

    def _branch(self, sort: str, name: str, storey: int) -> None:
        foot = self.first_ft + 10 * (storey - 1)
        if sort == "tap":
            self.parts.append(f"tap{name}: {{kind: fixture, elevation: {foot + 3} ft}}")
            self.runs += [f"h{name} -> tap{name}.hot", f"c{name} -> tap{name}.cold"]
        elif sort == "mixer":
            self.parts += [f"mixer{name}: {{kind: mixing_valve, elevation: {foot + 4} ft}}"]
            self.parts += [f"{use}{name}: {{kind: fixture, elevation: {foot + 3} ft}}" for use in ("bath", "basin")]
            self.runs += [f"{side} -> mixer{name}.{port}" for side, port in ((f"h{name}", "hot"), (f"c{name}", "cold"))]
            self.runs += [f"mixer{name}.mixed -> bath{name}.hot", f"h{name} -> basin{name}.hot"]
            self.runs.append(f"c{name} -> basin{name}.cold")
        else:
            self._corridor(name, storey, foot)

    def _corridor(self, name: str, storey: int, foot: int) -> None:
        self.parts += [f"{side}stop{name}: valve" for side in "hc"]
        hot, cold = f"h{name} -> hstop{name}", f"c{name} -> cstop{name}"
        for place in range(3):
            self._tee(f"h{name}-{place}", storey, 0.0)
            self._tee(f"c{name}-{place}", storey, 0.0)
            self.parts.append(f"tap{name}-{place}: {{kind: fixture, elevation: {foot + 3} ft}}")
            self.runs += [f"{hot} -> h{name}-{place} -> tap{name}-{place}.hot"]
            self.runs += [f"{cold} -> c{name}-{place} -> tap{name}-{place}.cold"]
            hot, cold = f"h{name}-{place}", f"c{name}-{place}"


def names_of(drawn: RiserDiagram) -> Iterator[str]:
    """The parts of the layout that are drawn for themselves."""
    yield from (name for name in drawn.diagram.items if "\x01" not in name)
