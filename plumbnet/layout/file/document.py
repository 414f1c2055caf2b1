"""The file as a whole: its top-level fields, and what a run with a pipe looks like."""

from typing import Annotated, ClassVar, Literal, TypeAlias

from pydantic import Field, JsonValue

from plumbnet.layout.model import Acceptance, Change, Circuit, Declared, Job, Scenario
from plumbnet.layout.units import Length, Units, Volume, vessel_volume

FORMAT = 1


RulesByCircuit: TypeAlias = Annotated[dict[Annotated[Circuit, Field(strict=False)], str], Field(min_length=1)]
"""The name of a rule profile for each circuit, or for one of them."""


class RunWithPipe(Declared):
    """A run with what is known of its pipe; it applies to the whole chain."""

    called: ClassVar[str] = "a run"

    path: str = Field(examples=["street -> meter -> heater"])
    """Names joined by ->, in the direction water normally flows."""
    pipe: str | None = Field(default=None, examples=["copper-L 3/4 in"])
    """Material and nominal size from the tube tables, for example copper-L 3/4 in."""
    length_m: Length | None = None
    """Length of the whole chain."""
    volume_m3: Volume | None = None
    """Water the whole chain holds, where it is not to be computed from pipe and length."""


class Document(Declared):
    """A layout file: format version, title, units, rules, parts, runs, scenarios, accepted findings."""

    called: ClassVar[str] = "a layout"

    plumbnet: Literal[1] = Field(examples=[FORMAT])
    """Version of the file format."""
    title: str = ""
    """What the layout shows."""
    units: Units = "us"
    """What a bare number means: us (psi, degF, gal, ft, in, Btu/h, gpm), metric (kPa, degC, L, m, mm, kW, L/min) or
    metric-bar (the same with bar)."""
    rules: str | RulesByCircuit | None = Field(default=None, examples=["general"])
    """Name of a rule profile, or of one for each circuit (water, heating); general practice when left out."""
    job: Job = Field(default_factory=Job)
    """Number, address, revision, date and author, for the cover of a review."""
    tank_sizes: Annotated[tuple[Annotated[float, vessel_volume()], ...], Field(strict=False)] = ()
    """Sizes of expansion tank that can be had; a table of round sizes when left out."""
    parts: dict[str, JsonValue] = Field(examples=[{"street": {"kind": "main", "pressure": "62 psi"}}])
    """Every part by its name: a kind, or a mapping of a kind and its fields."""
    runs: list[JsonValue] = Field(examples=[["street -> meter -> heater"]])
    """Chains of parts joined by pipe."""
    assemblies: dict[str, JsonValue] = Field(default_factory=dict)
    """Groups of parts and runs that the layout has many times, each with its ports."""
    change: Annotated[tuple[Change, ...], Field(strict=False)] = ()
    """Where the building differs from what its assemblies say: made in this order once all is written out."""
    scenarios: dict[str, Scenario] = Field(default_factory=dict)
    """Named what-ifs."""
    accept: Annotated[tuple[Acceptance, ...], Field(strict=False)] = ()
    """Findings that the author accepts, each with a reason."""
