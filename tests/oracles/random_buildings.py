"""Random buildings as people draw them: supply and devices, heaters with what controls them, taps, returns, boilers.

Each family of layouts leans to what it is named for, so that every verdict and every reason to stop comes up.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from hypothesis import strategies as st

from oracles.joined_layouts import joined_layouts
from oracles.random_closed import closed_layouts
from oracles.random_layouts import Layout, Values, layouts
from plumbnet.layout.model.part import KINDS

HEIGHTS = [0, 0, 0, 3, 8, -4]
SUPPLIES: tuple[Values, ...] = (
    {"kind": "main", "pressure": 300},
    {"kind": "main", "pressure": 450, "temperature": 1},
    {"kind": "main", "pressure": 600, "temperature": 5},
    {"kind": "well", "cut_in": 200, "cut_out": 350},
    {"kind": "open_tank", "elevation": 25},
)
ENTRIES: tuple[Values, ...] = (
    {"kind": "meter"},
    {"kind": "meter", "check": True},
    {"kind": "valve"},
    {"kind": "valve", "locked": True},
    {"kind": "valve", "state": "shut"},
    {"kind": "check_valve"},
    {"kind": "check_valve", "state": "stuck_open"},
    {"kind": "dual_check"},
    {"kind": "double_check", "opens": 7},
    {"kind": "reduced_pressure_assembly", "opens": 40},
    {"kind": "vacuum_breaker"},
    {"kind": "pressure_reducer", "set": 350},
    {"kind": "pressure_reducer", "set": 350, "bypass": True},
    {"kind": "pressure_reducer", "set": 250, "bypass": True},
    {"kind": "booster_pump", "rise": 150},
    {"kind": "booster_pump", "rise": 150, "check": False},
    {"kind": "softener", "volume": 30},
    {"kind": "softener", "check": True},
    {"kind": "filter"},
    {"kind": "filter", "check": True},
    {"kind": "heat_trap"},
    {"kind": "device", "ports": ["in", "out"], "passages": [{"one_way": ["in", "out"], "opens": 10}]},
)
CLOSING = tuple(entry for entry in ENTRIES if entry.get("check") is True or "check" in str(entry["kind"]))
TANK_PRESSURES = [150, 250, 300, 350, 450, 600]
METHODS = [
    *("membrane", "ashrae-diaphragm", "ashrae-air-water", "ashrae-open"),
    *("asme-iv", "en-12828", "din-4807-5", "uk-4-percent"),
]


class Plan:
    """A layout under way; every choice is drawn."""

    def __init__(self, draw: st.DrawFn) -> None:
        self.draw = draw
        self.parts: dict[str, Values] = {}
        self.runs: list[str] = []
        self.wide: set[str] = set()

    def part(self, values: Values) -> str:
        """A new part, by its kind and number."""
        name = f"{values['kind']}{len(self.parts)}"
        self.parts[name] = {"elevation": self.draw(st.sampled_from(HEIGHTS))} | values
        return name

    def run(self, *places: str) -> None:
        """A run through places; now and then of a pipe that holds water."""
        path = " -> ".join(places)
        self.runs.append(path)
        if not self.often(of=3):
            self.wide.add(path)

    def often(self, *, of: int = 2) -> bool:
        """True in all but one case of so many."""
        return self.draw(st.integers(1, of)) > 1

    def pick(self, *choices: Mapping[str, object]) -> Values:
        """One of them."""
        return dict(self.draw(st.sampled_from(choices)))

    def layout(self) -> Layout:
        """What has been drawn."""
        return Layout(self.parts, tuple(self.runs), frozenset(self.wide))


def entry(plan: Plan, entries: tuple[Values, ...] = ENTRIES, least: int = 0) -> str:
    """A supply, devices in a row, and the tee at their end."""
    devices = [plan.part(plan.pick(*entries)) for _ in range(plan.draw(st.integers(least, 3)))]
    tee = plan.part({"kind": "tee"})
    plan.run(plan.part(plan.pick(*SUPPLIES)), *devices, tee)
    if not plan.often(of=6):
        plan.run(plan.part(plan.pick(*SUPPLIES)), plan.part(plan.pick(*entries)), tee)
    return tee


def control(plan: Plan, tee: str) -> None:
    """A tank or an expansion relief valve at a tee, perhaps behind a valve."""
    volume, charge = plan.draw(st.sampled_from([2, 8, 18, 60])), plan.draw(st.sampled_from(TANK_PRESSURES))
    tank: Values = {"kind": "expansion_tank", "volume": volume, "precharge": charge}
    end = plan.part(
        plan.pick(
            *(tank, tank, tank, tank | {"acceptance": volume / 2}),
            *(tank | {"state": "waterlogged"}, {"kind": "expansion_relief", "pressure": 500}),
            {"kind": "expansion_relief", "pressure": 450, "state": "plugged"},
        )
    )
    between = [plan.part(plan.pick({"kind": "valve"}, {"kind": "valve", "state": "shut"}))] if not plan.often() else []
    plan.run(tee, *between, end)


def heater(plan: Plan, kinds: tuple[str, ...]) -> str:
    """A heater of one of these kinds, with its relief valve or without, and what else may differ."""
    kind = plan.draw(st.sampled_from(kinds))
    values: Values = {"kind": kind, "setpoint": plan.draw(st.sampled_from([50, 60, 60, 70, 80, 93]))}
    if kind not in {"tankless_heater", "heat_exchanger"}:
        values["volume"] = plan.draw(st.sampled_from([40, 150, 300]))
    fitted = plan.draw(st.sampled_from([None, 700, 700, 1000]))
    if fitted:
        values["relief"] = {"pressure": fitted}
    if not plan.often(of=3):
        values["sizing"] = plan.draw(st.sampled_from(METHODS))
    if not plan.often(of=4):
        values["rating"] = plan.draw(st.sampled_from([450, 600, 1000]))
    if kind in {"boiler", "solar_collector"} and not plan.often(of=3):
        values["antifreeze"] = {"glycol": plan.draw(st.sampled_from(["propylene", "ethylene"])), "share": 0.3}
    return plan.part(values)


TAP_HEATERS = (
    "storage_heater",
    "storage_heater",
    "storage_heater",
    "tankless_heater",
    "indirect_heater",
    "heat_exchanger",
)


def taps(plan: Plan, cold: str, hot: str) -> None:
    """Fixtures, with a mixing valve or a crossover, or drawing."""
    for _ in range(plan.draw(st.integers(0, 2))):
        tap = plan.part(
            plan.pick(
                *({"kind": "fixture"},) * 4,
                {"kind": "fixture", "crossover": True},
                {"kind": "fixture", "drawing": True},
            )
        )
        if plan.often(of=3):
            plan.run(hot, f"{tap}.hot")
            plan.run(cold, f"{tap}.cold")
        else:
            mixer = plan.part(plan.pick({"kind": "mixing_valve"}, {"kind": "mixing_valve", "checks": False}))
            plan.run(hot, f"{mixer}.hot")
            plan.run(cold, f"{mixer}.cold")
            plan.run(f"{mixer}.mixed", f"{tap}.hot")


def served(plan: Plan, tee: str) -> tuple[str, str, str]:
    """A heater behind its stop: its cold tee, itself, its hot tee."""
    cold, hot = plan.part({"kind": "tee"}), plan.part({"kind": "tee"})
    stop = [plan.part(plan.pick({"kind": "valve"}, *CLOSING))] if plan.often(of=3) else []
    one = heater(plan, TAP_HEATERS)
    plan.run(tee, *stop, cold, one, hot)
    if not plan.often(of=3):
        plan.run(
            hot, plan.part(plan.pick({"kind": "relief_valve", "pressure": 600}, {"kind": "vent", "elevation": 60}))
        )
    return cold, one, hot


@st.composite
def houses(draw: st.DrawFn, entries: tuple[Values, ...] = ENTRIES, least: int = 0) -> Layout:
    """One or two heaters on a supply."""
    plan = Plan(draw)
    tee = entry(plan, entries, least)
    for _ in range(draw(st.integers(1, 2))):
        cold, _, hot = served(plan, tee)
        for place in (tee, cold, hot):
            if not plan.often():
                control(plan, place)
        taps(plan, tee, hot)
    return plan.layout()


@st.composite
def returns(draw: st.DrawFn) -> Layout:
    """A heater whose hot water is driven round, by a pump with its check or without, or against one."""
    plan = Plan(draw)
    tee = entry(plan)
    cold, one, hot = served(plan, tee)
    pump = plan.part(
        plan.pick(
            *({"kind": "circulator"},) * 2,
            {"kind": "circulator", "check": True},
            {"kind": "circulator", "running": False},
        )
    )
    row = [plan.part({"kind": "tee"}), pump]
    if plan.often():
        row.insert(draw(st.integers(0, 2)), plan.part(plan.pick({"kind": "check_valve"}, {"kind": "valve"})))
    if not plan.often(of=3):
        row.insert(1, plan.part({"kind": "storage_tank", "volume": 200}))
    row = row if plan.often(of=5) else row[::-1]
    has_return = one.startswith(("storage_heater", "indirect_heater"))
    plan.run(hot, *row, f"{one}.return" if has_return and plan.often() else cold)
    if plan.often(of=3):
        control(plan, draw(st.sampled_from([tee, cold, hot])))
    taps(plan, tee, hot)
    return plan.layout()


@st.composite
def boilers(draw: st.DrawFn) -> Layout:
    """A heating circuit filled from the supply or shut off from it, with emitters or the coil of an indirect heater."""
    plan = Plan(draw)
    tee = entry(plan)
    fill = plan.part(plan.pick(*ENTRIES))
    back, out = plan.part({"kind": "tee"}), plan.part({"kind": "tee"})
    one = heater(plan, ("boiler", "boiler", "solar_collector"))
    plan.run(tee, fill, back, one, out)
    load: tuple[str, ...] = (plan.part({"kind": "emitter", "volume": draw(st.sampled_from([10, 80]))}),)
    if plan.often():
        tank = heater(plan, ("indirect_heater", "heat_exchanger"))
        side = ("coil_in", "coil_out") if tank.startswith("indirect") else ("primary_in", "primary_out")
        hot = plan.part({"kind": "tee"})
        plan.run(tee, plan.part(plan.pick(*ENTRIES)), tank, hot)
        taps(plan, tee, hot)
        plan.run(out, plan.part({"kind": "circulator", "check": plan.often()}), f"{tank}.{side[0]}")
        plan.run(f"{tank}.{side[1]}", back)
    plan.run(out, *load, plan.part({"kind": "circulator"}), back)
    if plan.often(of=4):
        control(plan, draw(st.sampled_from([back, out])))
    return plan.layout()


ONE_WAYS: tuple[Values, ...] = (
    {"kind": "check_valve"},
    {"kind": "check_valve"},
    {"kind": "check_valve", "opens": 5},
    {"kind": "double_check", "opens": 7},
    {"kind": "reduced_pressure_assembly", "opens": 40},
    {"kind": "pressure_reducer", "set": 500},
)


@st.composite
def cascades(draw: st.DrawFn) -> Layout:
    """Two to four heaters one behind another, or side by side, behind a check each, most with a tank."""
    plan = Plan(draw)
    tees = [entry(plan, CLOSING, 1)]
    for _ in range(draw(st.sampled_from([2, 2, 3, 3, 3, 4]))):
        cold, hot = plan.part({"kind": "tee"}), plan.part({"kind": "tee"})
        one = heater(plan, ("storage_heater", "storage_heater", "indirect_heater"))
        plan.run(draw(st.sampled_from(tees)), plan.part(plan.pick(*ONE_WAYS)), cold, one, hot)
        if plan.often(of=4):
            volume, charge = draw(st.sampled_from([8, 18, 18, 60])), draw(st.sampled_from(TANK_PRESSURES))
            plan.run(cold, plan.part({"kind": "expansion_tank", "volume": volume, "precharge": charge}))
        tees.append(hot)
    if plan.often():
        start, end = draw(st.permutations(tees))[:2]
        plan.run(start, plan.part(plan.pick(*ONE_WAYS)), end)
    taps(plan, tees[0], tees[-1])
    return plan.layout()


@st.composite
def changed(draw: st.DrawFn) -> Layout:
    """Houses, circuits and returns to which things happen: valves turned, failures, draws, other setpoints."""
    layout = draw(st.one_of(houses(), returns(), boilers()))
    happens = [change for name, values in layout.parts.items() for change in _changes(name, values)]
    return replace(layout, changes=tuple(draw(st.lists(st.sampled_from(happens), min_size=1, max_size=3))))


def _changes(name: str, values: Values) -> Iterator[Values]:
    """What may happen to a part."""
    kind = KINDS[str(values["kind"])]
    for how in kind.failures:
        yield {"fail": {"part": name, "how": how}}
    if kind.kind == "valve":
        yield {"close": name}
        yield {"open": name}
    if kind.kind == "fixture":
        yield {"draw": name}
    if "setpoint" in values:
        yield {"set": {"part": name, "setpoint": 90}}


@dataclass(frozen=True)
class Family:
    """Layouts of one sort, and how many of some thousand are of it."""

    layouts: st.SearchStrategy[Layout]
    of_thousand: int


FAMILIES: dict[str, Family] = {
    "anything": Family(layouts(), 150),
    "anything closed": Family(closed_layouts(), 150),
    "districts": Family(joined_layouts(), 100),
    "houses": Family(houses(), 100),
    "closed houses": Family(houses(CLOSING, 1), 150),
    "cascades": Family(cascades(), 100),
    "circulation": Family(returns(), 125),
    "heating": Family(boilers(), 125),
    "changed": Family(changed(), 100),
}
"""Layouts by what they lean to, eleven hundred in all."""
ANY = st.one_of(*(family.layouts for family in FAMILIES.values()))
"""A layout of any family."""
