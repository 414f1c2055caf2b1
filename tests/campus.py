"""A generated campus and a generated school, for benchmarks and tests of scale; the same for the same size."""

from collections.abc import Iterator
from random import Random

HOUSE_PARTS = 10


def campus(parts: int, *, seed: int = 1) -> str:
    """YAML text of a layout with about `parts` parts: a trunk, streets off it, and houses of several sorts on them."""
    random = Random(seed)  # noqa: S311  # a layout, not a secret
    houses = max(1, parts // (HOUSE_PARTS + 1))
    on_a_street = max(1, round(houses**0.5))
    declared = ["plumbnet: 1", "title: A generated campus", "parts:", "  street: {kind: main, pressure: 62 psi}"]
    runs = ["runs:"]
    upstream = "street"
    for street in range(-(-houses // on_a_street)):
        tee, valve = f"trunk{street}", f"street{street}-valve"
        declared += [f"  {tee}: tee", f"  {valve}: valve"]
        runs += [f"  - {upstream} -> {tee}", f"  - {tee} -> {valve}"]
        upstream, last = tee, valve
        for house in range(street * on_a_street, min(houses, (street + 1) * on_a_street)):
            declared.append(f"  t{house}: tee")
            runs.append(f"  - {last} -> t{house}")
            last = f"t{house}"
            house_parts, house_runs = _house(house, random)
            declared += house_parts
            runs += house_runs
    return "\n".join([*declared, *runs]) + "\n"


def _house(number: int, random: Random) -> tuple[list[str], list[str]]:
    """Parts and runs of one house: with or without a check in its meter, a tank, a loop."""
    n = f"h{number}"
    check = random.choice(["true", "false"])
    up = random.randrange(0, 30)
    declared = [
        f"  {n}-meter: {{kind: meter, check: {check}}}",
        f"  {n}-stop: valve",
        f"  {n}-split: tee",
        f"  {n}-cold: valve",
        f"  {n}-heater:",
        "    kind: storage_heater",
        f"    volume: {random.choice([40, 50, 75, 80])} gal",
        f"    setpoint: {random.choice([120, 140])} degF",
        "    relief: {pressure: 150 psi, temperature: 210 degF}",
        f"  {n}-far: tee",
        f"  {n}-sink: {{kind: fixture, elevation: {up} ft}}",
        f"  {n}-bath: {{kind: fixture, elevation: {up + 9} ft}}",
    ]
    runs = [
        f"  - t{number} -> {n}-meter -> {n}-stop -> {n}-split -> {n}-cold -> {n}-heater -> {n}-far -> {n}-sink.hot",
        f"  - {{path: {n}-split -> {n}-sink.cold, pipe: copper-L 3/4 in, length: {random.randrange(10, 60)} ft}}",
        f"  - {n}-far -> {n}-bath.hot",
        *_extra(n, random, declared),
    ]
    return declared, runs


def _extra(n: str, random: Random, declared: list[str]) -> Iterator[str]:
    match random.choice(["tank", "loop", "plain"]):
        case "tank":
            declared.append(f"  {n}-tank: {{kind: expansion_tank, volume: 5 gal, precharge: 62 psi}}")
            yield f"  - {n}-split -> {n}-tank"
        case "loop":
            declared.append(f"  {n}-pump: {{kind: circulator, check: true}}")
            yield f"  - {n}-far -> {n}-pump -> {n}-heater.return"
        case _:
            declared.append(f"  {n}-tap: fixture")
            yield f"  - {n}-split -> {n}-tap.cold"


def school(heaters: int = 40, tanks: int = 15, wings: int = 8) -> str:
    """YAML text of a school: wings behind checks of their own, heaters in parallel in each, tanks shared out."""
    declared = [
        "plumbnet: 1",
        "title: A generated school",
        "parts:",
        "  street: {kind: main, pressure: 60 psi}",
        "  entry: reduced_pressure_assembly",
        "  header: tee",
    ]
    runs = ["runs:", "  - street -> entry -> header"]
    for wing in range(wings):
        declared += [f"  check{wing}: check_valve", f"  cold{wing}: tee", f"  hot{wing}: tee", f"  tap{wing}: fixture"]
        runs += [f"  - header -> check{wing} -> cold{wing}", f"  - hot{wing} -> tap{wing}.hot"]
    for number in range(heaters):
        wing = number % wings
        declared.append(
            f"  heater{number}: {{kind: storage_heater, volume: {40 + number} gal, setpoint: 140 degF, "
            f"input: 40000 Btu/h, relief: {{pressure: 150 psi, temperature: 210 degF}}}}"
        )
        runs.append(f"  - cold{wing} -> heater{number} -> hot{wing}")
    for number in range(tanks):
        place = f"cold{number % wings}" if number % (wings + 1) else "header"
        declared.append(f"  tank{number}: {{kind: expansion_tank, volume: {10 + number} gal, precharge: 60 psi}}")
        runs.append(f"  - {place} -> tank{number}")
    return "\n".join([*declared, *runs]) + "\n"
