"""Any other device: its ports and passages written out by the author."""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Self

from pydantic import Field, model_validator

from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.model.part import Free, OneWay, Part, Passage, Reducing, Shut, kind
from plumbnet.layout.units import set_pressure, standing_pressure, water_inside

Pair = Annotated[tuple[str, str], Field(strict=False)]
PortNames = Annotated[
    tuple[Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]*$")], ...], Field(strict=False, min_length=1)
]


class WrittenPassage(Declared):
    """One passage of a device: exactly one of free, one_way, reducing, shut, each a pair of ports."""

    called: ClassVar[str] = "a passage"

    free: Pair | None = None
    """Both ways between two ports."""
    one_way: Pair | None = None
    """From the first port to the second, never back."""
    reducing: Pair | None = None
    """From the first port to the second while the second stands below `set`."""
    shut: Pair | None = None
    """Closed between two ports."""
    opens_pa: Annotated[float, standing_pressure()] = 0.0
    """For one_way: pressure difference that opens it."""
    set_pa: Annotated[float, set_pressure()] | None = None
    """For reducing: the outlet pressure it is set to."""
    bypass: bool = False
    """For reducing: whether water passes back once the outlet exceeds the inlet."""

    @model_validator(mode="after")
    def _is_one_passage(self) -> Self:
        written = [pair for pair in (self.free, self.one_way, self.reducing, self.shut) if pair is not None]
        if len(written) != 1:
            raise ValueError("a passage is exactly one of free, one_way, reducing, shut")
        if written[0][0] == written[0][1]:
            raise ValueError("a passage leads from one port to another")
        if self.reducing is not None and self.set_pa is None:
            raise ValueError("a reducing passage needs its set pressure: write set")
        if self.reducing is None and (self.set_pa is not None or self.bypass):
            raise ValueError("set and bypass belong to a reducing passage")
        if self.one_way is None and self.opens_pa:
            raise ValueError("opens belongs to a one_way passage")
        return self

    def pair(self) -> tuple[str, str]:
        """The two ports."""
        return next(pair for pair in (self.free, self.one_way, self.reducing, self.shut) if pair is not None)

    def passage(self) -> Passage:
        """The passage this describes."""
        first, second = self.pair()
        if self.one_way is not None:
            return OneWay(first, second, self.opens_pa)
        if self.set_pa is not None:
            return Reducing(first, second, self.set_pa, self.bypass)
        return Shut(first, second) if self.shut is not None else Free(first, second)


@kind("device")
class Device(Part):
    """Any device that has no kind of its own: its ports and passages are written out.

    The first two ports are its inlet and outlet in a run.
    """

    symbol: ClassVar[str] = "device"
    ports_are_of_its_kind: ClassVar[bool] = False

    own_ports: PortNames = Field(alias="ports", examples=[["in", "out"]])
    """Names of its connections; the first two are inlet and outlet in a run."""
    own_passages: Annotated[tuple[WrittenPassage, ...], Field(strict=False)] = Field(
        alias="passages", examples=[[{"free": ["in", "out"]}]]
    )
    """Ways through it."""
    volume_m3: Annotated[float, water_inside(0.001, 0.02)] = 0.0
    """Water it holds, standing at its first port."""

    @model_validator(mode="after")
    def _passages_join_known_ports(self) -> Self:
        if len(set(self.own_ports)) < len(self.own_ports):
            raise ValueError("each port of a device needs a name of its own")
        for written in self.own_passages:
            for port in written.pair():
                if port not in self.own_ports:
                    raise ValueError(f'a passage names the port "{port}", which is not one of its ports')
        return self

    def port_names(self) -> tuple[str, ...]:
        """The ports its author wrote."""
        return self.own_ports

    def enters_at(self) -> str:
        """Its first port."""
        return self.own_ports[0]

    def leaves_at(self) -> str | None:
        """Its second port, if it has one."""
        return self.own_ports[1] if len(self.own_ports) > 1 else None

    def mate(self, port: str) -> str | None:
        """The first two ports are mates."""
        first_two = self.own_ports[:2]
        others = [other for other in first_two if other != port]
        return others[0] if port in first_two and others else None

    def passages(self) -> Iterator[Passage]:
        """The passages its author wrote."""
        for written in self.own_passages:
            yield written.passage()

    def contents(self) -> Iterator[tuple[str, float]]:
        """Its water."""
        yield (self.own_ports[0], self.volume_m3)
