"""Layouts of many shapes, each at any size: what a benchmark of growth and tests of bounded work are run on.

A family is a function from a number of parts, met roughly, to the YAML text of a layout, the same for the same number.
Most are no building that anybody would put up: each strains one search of the program.
"""

from collections import deque
from collections.abc import Callable
from typing import TypeAlias

Family: TypeAlias = Callable[[int], str]
FAMILIES: dict[str, Family] = {}

HEATER = (
    "{kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}"
)
TANK = "{kind: expansion_tank, volume: 5 gal, precharge: 62 psi}"
SMALL_TANK = "{kind: expansion_tank, volume: 2 gal, precharge: 62 psi}"
RELIEF = "{kind: relief_valve, pressure: 150 psi}"


def family(make: Callable[["Sketch", int], None]) -> Family:
    """Register a family under the name of the function that draws it."""

    def text(parts: int) -> str:
        sketch = Sketch()
        make(sketch, parts)
        return sketch.text()

    FAMILIES[make.__name__.replace("_", "-")] = text
    return text


class Sketch:
    """A layout as it is drawn: a street, then parts and runs."""

    def __init__(self) -> None:
        self.declared = ["  street: {kind: main, pressure: 62 psi}"]
        self.runs: list[str] = []
        self.behind: list[str] = []

    def part(self, name: str, declaration: str = "tee") -> str:
        self.declared.append(f"  {name}: {declaration}")
        return name

    def run(self, *ports: str) -> None:
        self.runs.append(f"  - {' -> '.join(ports)}")

    def heater(self, name: str, cold: str, declaration: str = HEATER) -> None:
        """A heater with its tap."""
        self.part(name, declaration)
        self.run(cold, name, f"{self.part(f'{name}-tap', 'fixture')}.hot")

    def entry(self, name: str = "entry", declaration: str = "check_valve") -> str:
        """What stands behind the street."""
        self.run("street", self.part(name, declaration))
        return name

    def chain(self, upstream: str, name: str, count: int, declaration: str = "tee") -> list[str]:
        names = [self.part(f"{name}{number}", declaration) for number in range(count)]
        for first, second in zip([upstream, *names], names, strict=False):
            self.run(first, second)
        return names

    def text(self) -> str:
        return "\n".join(["plumbnet: 1", "parts:", *self.declared, "runs:", *self.runs, *self.behind]) + "\n"


@family
def chain_of_valves(sketch: Sketch, parts: int) -> None:
    """A street, very many valves one behind the other, a heater."""
    sketch.heater("heater", sketch.chain(sketch.entry(), "valve", parts, "valve")[-1])


@family
def chain_of_checks(sketch: Sketch, parts: int) -> None:
    """The same of check valves: as many zones as parts."""
    sketch.heater("heater", sketch.chain("street", "check", parts, "check_valve")[-1])


@family
def chain_of_reducers(sketch: Sketch, parts: int) -> None:
    """The same of reducers, each set a little below the last."""
    last = "street"
    for number in range(parts):
        reducer = sketch.part(
            f"reducer{number}", f"{{kind: pressure_reducer, set: {60 - 20 * number / parts:.4f} psi}}"
        )
        sketch.run(last, reducer)
        last = reducer
    sketch.heater("heater", last)


@family
def ring_of_heaters(sketch: Sketch, parts: int) -> None:
    """Tees in a ring behind a check, a heater at each."""
    tees = sketch.chain(sketch.entry(), "tee", max(3, parts // 3))
    sketch.run(tees[-1], tees[0])
    for number, tee in enumerate(tees):
        sketch.heater(f"heater{number}", tee)


@family
def heaters_in_a_ring(sketch: Sketch, parts: int) -> None:
    """Heaters one behind the other, the last back to the first through a pump."""
    start = sketch.part("start")
    sketch.run(sketch.entry(), start)
    last = start
    for number in range(max(2, parts // 2)):
        name = sketch.part(f"heater{number}", HEATER)
        tee = sketch.part(f"tee{number}")
        sketch.run(last, name, tee)
        last = tee
    sketch.run(last, sketch.part("tap", "fixture") + ".hot")
    sketch.run(last, sketch.part("pump", "circulator"), start)


@family
def tanks_in_a_chain_of_checks(sketch: Sketch, parts: int) -> None:
    """Zones behind each other, each with a heater and a tank too small for it."""
    last = "street"
    for number in range(max(1, parts // 5)):
        check, tee = sketch.part(f"check{number}", "check_valve"), sketch.part(f"tee{number}")
        sketch.run(last, check, tee)
        sketch.run(tee, sketch.part(f"tank{number}", SMALL_TANK))
        sketch.heater(f"heater{number}", tee)
        last = tee


@family
def one_heater_before_tanks_in_a_chain(sketch: Sketch, parts: int) -> None:
    """Tanks joined by checks, a heater before the first of them alone."""
    last = sketch.part("start")
    sketch.run(sketch.entry(), last)
    sketch.heater("heater", last)
    for number in range(max(1, parts // 3)):
        check, tee = sketch.part(f"check{number}", "check_valve"), sketch.part(f"tee{number}")
        sketch.run(last, check, tee)
        sketch.run(tee, sketch.part(f"tank{number}", SMALL_TANK))
        last = tee


@family
def zones_on_a_header(sketch: Sketch, parts: int) -> None:
    """Zones beside each other behind a header, each with its check, heater and tank."""
    _zones(sketch, parts, TANK, "tee")


@family
def zones_behind_a_check(sketch: Sketch, parts: int) -> None:
    """The same, the header itself behind a check, and tanks too small."""
    _zones(sketch, parts, SMALL_TANK, "check_valve")


def _zones(sketch: Sketch, parts: int, tank: str, entry: str) -> None:
    header = sketch.part("header")
    sketch.run(sketch.entry("entry", entry), header)
    for number in range(max(1, parts // 5)):
        check, tee = sketch.part(f"check{number}", "check_valve"), sketch.part(f"tee{number}")
        sketch.run(header, check, tee)
        sketch.run(tee, sketch.part(f"tank{number}", tank))
        sketch.heater(f"heater{number}", tee)


@family
def zones_into_one(sketch: Sketch, parts: int) -> None:
    """Heated zones that all push into one zone through checks of their own, where one tank stands."""
    header, pool = sketch.part("header"), sketch.part("pool")
    sketch.run(sketch.entry("entry", "tee"), header)
    sketch.run(pool, sketch.part("tank", TANK))
    sketch.run(pool, sketch.part("pool-tap", "fixture") + ".hot")
    for number in range(max(1, parts // 4)):
        name = sketch.part(f"heater{number}", HEATER)
        tee = sketch.part(f"tee{number}")
        sketch.run(header, sketch.part(f"in{number}", "check_valve"), tee, name)
        sketch.run(name, sketch.part(f"out{number}", "check_valve"), pool)


@family
def heaters_in_one_zone(sketch: Sketch, parts: int) -> None:
    """Heaters beside each other on one header with one tank."""
    header = sketch.part("header")
    sketch.run(sketch.entry(), header)
    sketch.run(header, sketch.part("tank", TANK))
    for number in range(max(1, parts // 2)):
        sketch.heater(f"heater{number}", header)


@family
def relief_valves(sketch: Sketch, parts: int) -> None:
    """A heater, and relief valves along its cold pipe."""
    tees = sketch.chain(sketch.entry(), "tee", max(1, parts // 2))
    for number, tee in enumerate(tees):
        sketch.run(tee, sketch.part(f"relief{number}", f"{{kind: relief_valve, pressure: {100 + number % 50} psi}}"))
    sketch.heater("heater", tees[-1])


@family
def relief_valves_on_a_tee(sketch: Sketch, parts: int) -> None:
    """The same, all at one tee, each behind a valve."""
    tee = sketch.part("tee")
    sketch.run(sketch.entry(), tee)
    for number in range(max(1, parts // 2)):
        sketch.run(tee, sketch.part(f"valve{number}", "valve"), sketch.part(f"relief{number}", RELIEF))
    sketch.heater("heater", tee)


@family
def ladder_of_risers(sketch: Sketch, parts: int) -> None:
    """A hot and a cold riser with a mixing valve and a tap between them on each floor, and a pumped return."""
    start = sketch.part("start")
    sketch.run(sketch.entry(), start)
    sketch.part("heater", HEATER)
    hot_start = sketch.part("hot-start")
    sketch.run(start, "heater", hot_start)
    floors = max(1, parts // 4)
    cold, hot = sketch.chain(start, "cold", floors), sketch.chain(hot_start, "hot", floors)
    for number in range(floors):
        mixer, tap = sketch.part(f"mixer{number}", "mixing_valve"), sketch.part(f"tap{number}", "fixture")
        sketch.run(hot[number], f"{mixer}.hot")
        sketch.run(cold[number], f"{mixer}.cold")
        sketch.run(mixer, f"{tap}.hot")
    sketch.run(hot[-1], sketch.part("pump", "{kind: circulator, check: true}"), start)


@family
def ladder_of_valves(sketch: Sketch, parts: int) -> None:
    """Two rows of tees with a valve between each pair: as many ways round as rungs."""
    start = sketch.part("start")
    sketch.run(sketch.entry(), start)
    rungs = max(1, parts // 3)
    left, right = sketch.chain(start, "left", rungs), sketch.chain(start, "right", rungs)
    for number in range(rungs):
        sketch.run(left[number], sketch.part(f"rung{number}", "valve"), right[number])
    sketch.heater("heater", left[-1])


@family
def ladder_of_checks(sketch: Sketch, parts: int) -> None:
    """Two chains of check valves with checks to and fro between them."""
    rungs = max(1, parts // 5)
    left, right = "street", "street"
    for number in range(rungs):
        next_left, next_right = sketch.part(f"left{number}"), sketch.part(f"right{number}")
        sketch.run(left, sketch.part(f"left-check{number}", "check_valve"), next_left)
        sketch.run(right, sketch.part(f"right-check{number}", "check_valve"), next_right)
        sketch.run(next_left, sketch.part(f"rung{number}", "check_valve"), next_right)
        left, right = next_left, next_right
    sketch.run(left, sketch.part("end"))
    sketch.run(right, "end")
    sketch.heater("heater", "end")


@family
def ladder_of_heaters(sketch: Sketch, parts: int) -> None:
    """A riser with a check to each floor, a heater and a tap there: floors of their own."""
    tees = sketch.chain(sketch.entry("entry", "tee"), "riser", max(1, parts // 4))
    for number, tee in enumerate(tees):
        check = sketch.part(f"check{number}", "check_valve")
        sketch.run(tee, check)
        sketch.heater(f"heater{number}", check)


@family
def ladder_of_pumps(sketch: Sketch, parts: int) -> None:
    """A hot riser with a pumped return from each floor into one return riser."""
    start = sketch.part("start")
    sketch.run(sketch.entry(), start)
    sketch.part("heater", HEATER)
    hot_start = sketch.part("hot-start")
    sketch.run(start, "heater", hot_start)
    floors = max(1, parts // 3)
    hot, back = sketch.chain(hot_start, "hot", floors), sketch.chain(start, "back", floors)
    for number in range(floors):
        sketch.run(hot[number], sketch.part(f"pump{number}", "{kind: circulator, check: true}"), back[number])
    sketch.run(hot[-1], sketch.part("tap", "fixture") + ".hot")


@family
def pumps_over_checks(sketch: Sketch, parts: int) -> None:
    """Heaters, each with a loop of its own, on one header."""
    header = sketch.part("header")
    sketch.run(sketch.entry(), header)
    for number in range(max(1, parts // 5)):
        cold, hot = sketch.part(f"cold{number}"), sketch.part(f"hot{number}")
        sketch.part(f"heater{number}", HEATER)
        sketch.run(header, cold, f"heater{number}", hot)
        sketch.run(hot, sketch.part(f"tap{number}", "fixture") + ".hot")
        sketch.run(hot, sketch.part(f"pump{number}", "circulator"), cold)


@family
def boilers(sketch: Sketch, parts: int) -> None:
    """Boilers in circuits of their own, each filled from one header."""
    header = sketch.part("header")
    sketch.run(sketch.entry(), header)
    for number in range(max(1, parts // 5)):
        boiler = "{kind: boiler, volume: 10 gal, setpoint: 180 degF, relief: {pressure: 30 psi}}"
        sketch.part(f"boiler{number}", boiler)
        back = sketch.part(f"back{number}")
        fill = sketch.part(f"fill{number}", "{kind: pressure_reducer, set: 12 psi}")
        sketch.run(header, fill, back)
        sketch.run(back, f"boiler{number}", sketch.part(f"emitter{number}", "{kind: emitter, volume: 5 gal}"))
        sketch.run(f"emitter{number}", sketch.part(f"pump{number}", "circulator"), back)


@family
def grid_of_tees(sketch: Sketch, parts: int) -> None:
    """A grid of tees behind a check, a heater at its far corner."""
    _grid(sketch, parts, "tee")


@family
def grid_of_valves(sketch: Sketch, parts: int) -> None:
    """The same with a valve in every pipe that leads on."""
    _grid(sketch, parts // 3, "valve")


@family
def grid_of_checks(sketch: Sketch, parts: int) -> None:
    """The same of checks: every way on is one way."""
    _grid(sketch, parts // 3, "check_valve")


def _grid(sketch: Sketch, parts: int, between: str) -> None:
    side = max(2, round(parts**0.5))
    for number in range(side * side):
        sketch.part(f"t{number}")
    sketch.run(sketch.entry(), "t0")
    for number in range(side * side):
        for step, is_inside in ((1, (number + 1) % side), (side, number + side < side * side)):
            if is_inside:
                joint = [] if between == "tee" else [sketch.part(f"j{number}-{step}", between)]
                sketch.run(f"t{number}", *joint, f"t{number + step}")
    sketch.heater("heater", f"t{side * side - 1}")


@family
def nest_of_checks(sketch: Sketch, parts: int) -> None:
    """A tree in which every branch stands behind a check, a heater at each end."""
    _tree(sketch, parts // 4, "check_valve")


@family
def nest_of_valves(sketch: Sketch, parts: int) -> None:
    """The same with valves: one zone."""
    _tree(sketch, parts // 4, "valve")


def _tree(sketch: Sketch, branches: int, between: str) -> None:
    ends = deque([sketch.part("start")])
    sketch.run(sketch.entry(), "start")
    for number in range(max(2, branches)):
        end = ends[0] if number % 2 == 0 else ends.popleft()
        joint, tee = sketch.part(f"joint{number}", between), sketch.part(f"tee{number}")
        sketch.run(end, joint, tee)
        ends.append(tee)
    for number, end in enumerate(ends):
        sketch.heater(f"heater{number}", end)


@family
def comb_of_taps(sketch: Sketch, parts: int) -> None:
    """A trunk behind a heater with a tap at each tee."""
    sketch.part("heater", HEATER)
    sketch.run(sketch.entry(), "heater")
    for number, tee in enumerate(sketch.chain("heater", "tee", max(1, parts // 2))):
        sketch.run(tee, sketch.part(f"tap{number}", f"{{kind: fixture, elevation: {number % 30} ft}}") + ".hot")


@family
def comb_of_checked_taps(sketch: Sketch, parts: int) -> None:
    """The same, each tap behind a check: as many zones that the heater pushes into."""
    sketch.part("heater", HEATER)
    sketch.run(sketch.entry(), "heater")
    for number, tee in enumerate(sketch.chain("heater", "tee", max(1, parts // 3))):
        tap = sketch.part(f"tap{number}", f"{{kind: fixture, elevation: {number % 30} ft}}")
        sketch.run(tee, sketch.part(f"check{number}", "check_valve"), f"{tap}.hot")


@family
def streets(sketch: Sketch, parts: int) -> None:
    """A header fed by many mains, each through a check."""
    header = sketch.part("header")
    sketch.run(sketch.entry(), header)
    for number in range(max(1, parts // 2)):
        main = sketch.part(f"main{number}", f"{{kind: main, pressure: {50 + number % 20} psi}}")
        sketch.run(main, sketch.part(f"check{number}", "check_valve"), header)
    sketch.heater("heater", header)


@family
def checks_side_by_side(sketch: Sketch, parts: int) -> None:
    """One heater behind very many checks in parallel."""
    header = sketch.part("header")
    for number in range(max(1, parts)):
        sketch.run("street", sketch.part(f"check{number}", "check_valve"), header)
    sketch.heater("heater", header)


@family
def bypasses(sketch: Sketch, parts: int) -> None:
    """Checks one behind the other, each with a shut valve beside it."""
    last = sketch.entry("start", "tee")
    for number in range(max(1, parts // 3)):
        tee = sketch.part(f"tee{number}")
        sketch.run(last, sketch.part(f"check{number}", "check_valve"), tee)
        sketch.run(last, sketch.part(f"valve{number}", "{kind: valve, state: shut}"), tee)
        last = tee
    sketch.heater("heater", last)


@family
def scenario_of_inserts(sketch: Sketch, parts: int) -> None:
    """A house, and one scenario that inserts very many valves one behind the other."""
    sketch.heater("heater", sketch.entry())
    inserts = ["scenarios:", "  many:", "    change:"]
    last = "heater"
    for number in range(parts):
        inserts.append(f"      - insert: {{part: new{number}, kind: valve, between: [entry, {last}]}}")
        last = f"new{number}"
    sketch.behind += inserts


@family
def scenario_of_settings(sketch: Sketch, parts: int) -> None:
    """A chain of valves, and one scenario that shuts each of them."""
    valves = sketch.chain(sketch.entry(), "valve", parts, "valve")
    sketch.heater("heater", valves[-1])
    sketch.behind += ["scenarios:", "  many:", "    change:", *(f"      - close: {valve}" for valve in valves)]


@family
def many_scenarios(sketch: Sketch, parts: int) -> None:
    """A house with as many scenarios as parts are asked for, each after the last."""
    sketch.heater("heater", sketch.part("valve", "valve"))
    sketch.run(sketch.entry(), "valve")
    sketch.behind.append("scenarios:")
    for number in range(parts):
        after = f"after: s{number - 1}, " if number % 10 else ""
        sketch.behind.append(f"  s{number}: {{{after}change: [{{{'open' if number % 2 else 'close'}: valve}}]}}")


@family
def wrong_accepts(sketch: Sketch, parts: int) -> None:
    """A house that accepts, many times over, what does not stand."""
    sketch.heater("heater", sketch.entry())
    sketch.behind.append("accept:")
    sketch.behind += [
        f"  - {{finding: heat-soak, part: heater, reason: seen on site number {number}}}" for number in range(parts)
    ]


@family
def accepts_of_unknown_findings(sketch: Sketch, parts: int) -> None:
    """The same of findings that there are not: mistakes."""
    sketch.heater("heater", sketch.entry())
    sketch.behind.append("accept:")
    sketch.behind += [
        f"  - {{finding: heat-sock-{number}, part: heater, reason: seen on site}}" for number in range(parts)
    ]


@family
def accepts_of_unknown_parts(sketch: Sketch, parts: int) -> None:
    """The same of parts that there are not: mistakes, each with the nearest name looked for."""
    for number, tee in enumerate(sketch.chain(sketch.entry(), "tee", max(1, parts // 2))):
        if number == 0:
            sketch.heater("heater", tee)
    sketch.behind.append("accept:")
    sketch.behind += [
        f"  - {{finding: heat-soak, part: tea{number}, reason: seen on site}}" for number in range(max(1, parts // 2))
    ]


@family
def runs_to_unknown_parts(sketch: Sketch, parts: int) -> None:
    """Tees whose runs name parts that there are not."""
    sketch.heater("heater", sketch.entry())
    for number in range(max(1, parts // 2)):
        sketch.run(sketch.part(f"tee{number}"), f"tea-{number}")


@family
def parts_that_nothing_joins(sketch: Sketch, parts: int) -> None:
    """A house, and tees that stand alone."""
    sketch.heater("heater", sketch.entry())
    for number in range(parts):
        sketch.part(f"lone{number}")


@family
def manifold(sketch: Sketch, parts: int) -> None:
    """A device with as many ports as parts are asked for, water free between all, a tap at each."""
    ports = [f"p{number}" for number in range(max(2, parts // 2))]
    passages = ", ".join(f"{{free: [p0, {port}]}}" for port in ports[1:])
    sketch.part("manifold", f"{{kind: device, ports: [{', '.join(ports)}], passages: [{passages}]}}")
    sketch.part("heater", HEATER)
    sketch.run(sketch.entry(), "heater", "manifold.p0")
    for port in ports[1:]:
        sketch.run(f"manifold.{port}", sketch.part(f"tap-{port}", "fixture") + ".hot")


@family
def crossed_taps(sketch: Sketch, parts: int) -> None:
    """Taps that join hot and cold, between a hot and a cold trunk."""
    start = sketch.part("start")
    sketch.run(sketch.entry("entry", "tee"), start)
    sketch.part("heater", HEATER)
    hot_start = sketch.part("hot-start")
    sketch.run(start, sketch.part("check", "check_valve"), "heater", hot_start)
    floors = max(1, parts // 3)
    cold, hot = sketch.chain(start, "cold", floors), sketch.chain(hot_start, "hot", floors)
    for number in range(floors):
        sketch.part(f"tap{number}", "{kind: fixture, crossover: true}")
        sketch.run(hot[number], f"tap{number}.hot")
        sketch.run(cold[number], f"tap{number}.cold")
