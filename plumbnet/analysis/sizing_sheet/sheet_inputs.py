"""A heater's case to what goes into its calculation sheet: temperatures, antifreeze, and each piece of heated water."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from plumbnet.analysis.required_tank import WarmedWater
from plumbnet.analysis.sizing_sheet.provenance import Provenance
from plumbnet.analysis.sizing_sheet.sheet_model import Content, SheetItem
from plumbnet.analysis.verdict import Case
from plumbnet.network.loops import Piece
from plumbnet.physics.sizing import StepDimension
from plumbnet.rules import listed


@dataclass(frozen=True)
class SheetInputs:
    """What goes in, and where it came from; `beside` is the water that shares the tanks at hand."""

    case: Case
    origins: Provenance
    beside: tuple[WarmedWater, ...]

    def items(self) -> Iterator[SheetItem]:
        """Temperatures of each water, and antifreeze."""
        for water in self._waters:
            first, who = water.heaters[0], listed(water.heaters)
            yield SheetItem("T_1", f"cold, {who}", water.cold_k, "temperature", self._cold_origin(water))
            yield SheetItem("T_2", *self._hot(water, who))
            if water.mixture is not None:
                words = f"share of {water.mixture.glycol} glycol by volume, {who}"
                origin = self.origins.field(first, "antifreeze")
                yield SheetItem("e_glycol", words, water.mixture.share, "ratio", origin)

    def _hot(self, water: WarmedWater, who: str) -> tuple[str, float, StepDimension, str]:
        """What a water comes to, and by whose thermostat: that of its heater, or of a mixing valve."""
        parts = self.case.network.piping.system.parts
        source = parts[water.heaters[0]].heat()
        if source is not None and source.hot_k != water.hot_k:
            mixers = (name for name, part in parts.items() if part.tempers_k() == water.hot_k)
            mixer = next(mixers, water.heaters[0])
            return f"mixed, {who}", water.hot_k, "temperature", f"{mixer}, {self.origins.field(mixer, 'outlet')}"
        return f"hot, {who}", water.hot_k, "temperature", self.origins.field(water.heaters[0], "setpoint")

    def _cold_origin(self, water: WarmedWater) -> str:
        network = self.case.network
        inlet = next(each.inlet for each in network.heated if each.name == water.heaters[0])
        for name in network.supplies(network.zoning.zone_of[inlet]):
            source = self.case.network.piping.system.parts[name].source()
            if source is not None and source.temperature_k == water.cold_k:
                return f"{name}, {self.origins.field(name, 'temperature')}"
        return "default: no supply reaches it, and cold water is taken at this temperature"

    def contents(self) -> Iterator[Content]:
        """Each piece of heated water, with what holds it, which heaters warm it, and with what it is counted."""
        for water in self._waters:
            beside = "" if water in self.case.tank.waters else ", with the tanks at hand"
            for piece in water.pieces:
                name, origin = self.origins.piece(piece)
                whole = listed(water.heaters) + beside
                yield Content(name, listed(self._warmers(water, piece)) + beside, piece.volume_m3, origin, whole)

    def _warmers(self, water: WarmedWater, piece: Piece) -> list[str]:
        """The heaters that warm a piece: of a heater's own store that heater, of a loop those that it passes."""
        part = piece.name.rpartition(".")[0]
        if part in water.heaters:
            return [part]
        return [heater for heater in water.heaters if piece.name in self._warmed_by[heater]]

    @cached_property
    def _warmed_by(self) -> Mapping[str, frozenset[str]]:
        """The names of the pieces of water that each heater warms."""
        return {each.name: frozenset(piece.name for piece in each.pieces) for each in self.case.network.heated}

    @property
    def _waters(self) -> tuple[WarmedWater, ...]:
        """Every water of which steps speak: what the tank is for, then what else shares the tanks at hand."""
        return tuple(dict.fromkeys((*self.case.tank.waters, *self.beside)))
