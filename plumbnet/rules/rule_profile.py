"""A rule profile read from data: every value with its clause, and whether that clause was seen."""

from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from typing import ClassVar

from pydantic import Field, PrivateAttr, ValidationError

from plumbnet.layout.model import Declared, Mistake, validation_faults
from plumbnet.layout.yaml import (
    Fault,
    LayoutError,
    Plain,
    YamlNode,
    bytes_of,
    decode,
    nearest,
    parse_yaml,
    quoted,
    shipped_in,
)
from plumbnet.rules.known import FINDINGS_ADVICE, RESTS_ON, unknown_finding, without_clause
from plumbnet.rules.profile_base import NoBase, Opened, ProfileSource, is_file, source_of
from plumbnet.rules.ruling import (
    COMMON_PRACTICE,
    BypassRuling,
    CheckRuling,
    ChoiceRuling,
    ExpansionReliefRuling,
    FillPreventerRuling,
    FindingRuling,
    FractionRuling,
    HeatersRuling,
    OutdoorTapsRuling,
    PressureRuling,
    ReliefForRuling,
    Ruling,
    SideRuling,
    SiteRuling,
    SizingRuling,
    StoredRuling,
    TankBehindReducerRuling,
    TemperatureDifferenceRuling,
    TemperatureRuling,
    VacuumReliefRuling,
    WayBackRuling,
)

GENERAL = "general"
NOWHERE = Opened()
"""The profile stands in no file."""


class UnknownProfile(ValueError):
    """No rule profile has this name; the message says which do."""


class Profile(Declared):
    """The rules of one code, or of general practice.

    A profile that `extends` another takes from it every value that it does not write itself, every finding's clause,
    and everything to be seen on site that it does not call "not-asked".
    """

    called: ClassVar[str] = "a rule profile"

    profile: str
    """Name of the profile."""
    title: str
    """What it stands for, in words."""
    note: str = ""
    """What a reader should know of it before relying on it."""
    extends: str | None = None
    """Name of the profile that gives what this one leaves out, or its file, seen from the folder of this one."""
    distribution_limit: PressureRuling
    """Highest pressure where people draw water, heated up and with every fixture shut."""
    static_limit: PressureRuling | None = None
    """Highest pressure there with nothing heated; the distribution limit when left out."""
    outdoor_taps: OutdoorTapsRuling
    """Whether both hold for hose bibbs and hydrants, too."""
    least_at_tap: PressureRuling
    """Least pressure where people draw water, with every fixture shut and the supply at its lowest."""
    least_at_top: PressureRuling
    """Least pressure at the highest place of water that a pump drives round, cold, above what keeps it liquid hot."""
    relief_share: FractionRuling
    """Share of a safety relief valve's set pressure that the system may come up to."""
    relief_margin: PressureRuling | None = None
    """Pressure by which the system stays below that set, where this is lower still; none when left out."""
    relief_temperature: TemperatureRuling
    """Highest temperature at which a safety relief valve may open."""
    temperature_relief: ChoiceRuling
    """Temperature relief, beside that of pressure or in one valve with it, at each store of hot drinking water."""
    relief_for: ReliefForRuling
    """Which heaters must have a relief valve of their own."""
    relief_set: PressureRuling | None = None
    """Highest set of a safety relief valve, whatever the rating of its heater; none when left out."""
    relief_above_static: PressureRuling | None = None
    """How far a water heater's relief valve is set above what stands there cold; no distance when left out."""
    least_stored: StoredRuling | None = None
    """Lowest temperature to which a store of hot drinking water is set; none when left out."""
    vacuum_relief: VacuumReliefRuling
    """Which stores of hot drinking water have a vacuum relief valve."""
    tank_service: ChoiceRuling
    """That an expansion tank can be parted from its supply, so that its charge can be read and set."""
    charge_tolerance: PressureRuling
    """How far a tank's charge may differ from the line pressure at the tank."""
    gauge_pressure: PressureRuling
    """What a pressure gauge on site is read to."""
    gauge_temperature: TemperatureDifferenceRuling
    """What a thermometer, or the mark of a thermostat, is read to."""
    control_for: HeatersRuling
    """Which closed heaters must have a control of expansion."""
    bypass: BypassRuling
    """What the bypass of a reducer is worth as the only way back."""
    tank_behind_reducer: TankBehindReducerRuling
    """An expansion tank behind each reducer, with a bypass or without."""
    expansion_relief: ExpansionReliefRuling
    """Whether an expansion relief valve counts as the control."""
    control_side: SideRuling
    """Where the control connects."""
    valve_before_tank: ChoiceRuling
    """That nothing which can be shut stands between a heater and its expansion tank."""
    check_at_heater: CheckRuling
    """A check in the cold feed of each heater."""
    valve_at_heater: ChoiceRuling
    """A valve by which each heater can be shut off; what asks for it is not to blame it."""
    fill_preventer: FillPreventerRuling
    """What the fill of a circuit may stay joined behind."""
    way_back: WayBackRuling
    """How far expanding water may go back."""
    sizing: SizingRuling
    """Method by which an expansion tank is sized where its heater names none."""
    findings: dict[str, FindingRuling]
    """The clause behind a finding, by its name."""
    site: dict[str, SiteRuling] = Field(default_factory=dict)
    """What no layout can tell and is to be seen on site, by a name of its own."""

    _source: ProfileSource = PrivateAttr()

    def model_post_init(self, context: dict[str, ProfileSource]) -> None:
        """Keep what the reader found."""
        self._source = context["source"]

    @property
    def source(self) -> ProfileSource:
        """What it was read from."""
        return self._source

    @property
    def sha256(self) -> str:
        """SHA-256 of the profile's file, in hexadecimal; where it extends another, that of both hashes in a row."""
        return self._source.sha256

    @property
    def in_full(self) -> str:
        """Title and name, as a report gives them."""
        return f"{self.title} ({self.profile})"

    def highest_below_relief_pa(self, set_pa: float) -> float:
        """The highest pressure that keeps its distance below a safety relief valve's set; both gauge, at the valve."""
        by_share = set_pa * self.relief_share.value
        return by_share if self.relief_margin is None else max(0.0, min(by_share, set_pa - self.relief_margin.value_pa))

    @property
    def highest_static(self) -> PressureRuling:
        """The ruling on the highest pressure with nothing heated."""
        return self.static_limit or self.distribution_limit

    def highest_at_tap_pa(self, *, outdoors: bool) -> float | None:
        """The highest pressure where people draw water, heated; None outdoors where the rules set none there."""
        return self.outdoor_taps.limit_pa(self.distribution_limit.value_pa, outdoors=outdoors)

    def highest_static_at_tap_pa(self, *, outdoors: bool) -> float | None:
        """The same with nothing heated."""
        return self.outdoor_taps.limit_pa(self.highest_static.value_pa, outdoors=outdoors)

    def rulings(self) -> dict[str, Ruling]:
        """Every value of the profile that is a ruling, by the name it has in the file; findings not among them."""
        fields = {info.alias or name: getattr(self, name) for name, info in type(self).model_fields.items()}
        return {name: value for name, value in fields.items() if isinstance(value, Ruling)}

    def clauses(self) -> tuple[Ruling, ...]:
        """Everything of the profile that has a clause: its values, its findings, and what is to be seen on site."""
        return (*self.rulings().values(), *self.findings.values(), *self.site.values())


def profile_names() -> tuple[str, ...]:
    """Names of the profiles that come with the program."""
    return shipped_in("profiles").names()


@lru_cache
def profile(name: str) -> Profile:
    """The rule profile of that name. Raises UnknownProfile."""
    return read_profile(_bytes_of(name), file=f"{name}.yaml")


def profile_at(name_or_path: str) -> Profile:
    """The rule profile of that name, or that of a file: a name with a folder in it or the ending of a YAML file.

    Raises UnknownProfile; LayoutError and OSError for a file.
    """
    if is_file(name_or_path):
        return read_profile(bytes_of(name_or_path), file=name_or_path, opened=Opened((Path(name_or_path),)))
    return profile(name_or_path)


def read_profile(data: bytes, *, file: str, opened: Opened = NOWHERE) -> Profile:
    """The rule profile that the bytes of a file describe; bare numbers count as US units.

    `opened` are the files read so far, this one last, which may name another; without them it can extend only a profile
    that comes with the program. Raises LayoutError with every fault of the file, as a layout does.
    """
    faults: list[Fault] = []
    because: LayoutError | None = None
    text = decode(data, faults)
    root = None if text is None else parse_yaml(text, faults)
    if root is not None and not faults:
        try:
            faults.extend(mistake.fault(root) for mistake in _unknown_findings(root))
            base = _base_of(root.value, opened)
            source = source_of(root.value, data, None if base is None else base.source)
            read = Profile.model_validate(source.fields, context={"units": "us", "source": source})
            if not faults:  # a slip in a name leaves another without a clause
                faults.extend(mistake.fault(root) for mistake in _clauses_missing(read))
            if not faults:
                return read
        except ValidationError as error:
            faults.extend(validation_faults(error, root, what="a rule profile", model=Profile))
        except (UnknownProfile, NoBase) as error:
            faults.append(_at(root.at("extends"), str(error)))
        except LayoutError as error:  # of a profile that this one extends
            because = error
            named = root.at("extends")
            faults.append(_at(named, f"{quoted(str(named.value))}, which this profile extends, has faults"))
    raise LayoutError(file, faults, text or "", because)


def _unknown_findings(root: YamlNode) -> Iterator[Mistake]:
    """The findings that a profile writes and that there are not."""
    written = root.value.get("findings") if isinstance(root.value, dict) else None
    for name in written if isinstance(written, dict) else ():
        if name not in RESTS_ON:
            text = unknown_finding(name)
            yield Mistake(("findings", name), text, FINDINGS_ADVICE, at_key=True, meant=(name, RESTS_ON))


def _clauses_missing(read: Profile) -> Iterator[Mistake]:
    """That findings have no clause, all in one sentence."""
    missing = sorted(without_clause(read.findings, read.rulings()))
    if missing:
        text = f"a rule profile needs a clause for each finding, and has none for {', '.join(missing)}"
        entry = f'{missing[0]}: {{clause: "{COMMON_PRACTICE}", verified: false}}'
        hint = f"write {entry}, or extends: {GENERAL} to take over what is left out"
        yield Mistake(("findings",), text, hint, at_key=True)


def _base_of(value: Plain, opened: Opened) -> Profile | None:
    """The profile that another one extends. Raises UnknownProfile, NoBase, LayoutError."""
    extends = value.get("extends") if isinstance(value, dict) else None
    if not isinstance(extends, str):
        return None
    if not is_file(extends):
        return profile(extends)
    path, data = opened.beside(extends)
    return read_profile(data, file=str(path), opened=opened.then(path))


def _bytes_of(name: str) -> bytes:
    if name not in profile_names():
        hint = nearest(name, profile_names()) or f"there is {', '.join(profile_names())}"
        raise UnknownProfile(f"no rule profile is called {quoted(name)}{':' if hint.endswith('?') else ';'} {hint}")
    return shipped_in("profiles").read(name)


def _at(node: YamlNode, text: str) -> Fault:
    return Fault(node.line, node.column, text, width=node.width)
