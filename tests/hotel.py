"""A generated hotel: two heater rooms behind their own checks and many guest rooms; the same for the same size."""

from collections.abc import Iterator


def hotel(rooms: int = 200, *, tank_gal: float = 8.0) -> str:
    """YAML text of a hotel: risers off two plant rooms, each with two heaters and a tank; five parts to a room."""
    declared = [
        "plumbnet: 1",
        "title: A generated hotel",
        "parts:",
        "  street: {kind: main, pressure: 95 psi}",
        "  entry: {kind: double_check}",
        "  prv: {kind: pressure_reducer, set: 75 psi}",
        "  trunk: tee",
    ]
    runs = ["runs:", "  - street -> entry -> prv -> trunk"]
    for plant in ("north", "south"):
        own_parts, own_runs = _plant(plant, tank_gal)
        declared += own_parts
        runs += own_runs
    for room in range(rooms):
        own_parts, own_runs = _room(room, "north" if room % 2 == 0 else "south")
        declared += own_parts
        runs += own_runs
    return "\n".join([*declared, *runs]) + "\n"


def _plant(name: str, tank_gal: float) -> tuple[list[str], list[str]]:
    """A heater room: a check, a header with a small tank, two heaters with their valves, a pumped return."""
    relief = "relief: {pressure: 150 psi, temperature: 210 degF}"
    declared = [
        f"  {name}-check: check_valve",
        f"  {name}-header: tee",
        f"  {name}-tank: {{kind: expansion_tank, volume: {tank_gal} gal, precharge: 75 psi}}",
        f"  {name}-hot: tee",
        f"  {name}-return: tee",
        f"  {name}-pump: {{kind: circulator, check: true}}",
        f"  {name}-riser: tee",
        f"  {name}-end: tee",
    ]
    for number in (1, 2):
        heater = f"{{kind: storage_heater, volume: 250 gal, setpoint: 140 degF, input: 400000 Btu/h, {relief}}}"
        declared += [f"  {name}-valve-{number}: valve", f"  {name}-heater-{number}: {heater}"]
    runs = [
        f"  - trunk -> {name}-check -> {name}-header -> {name}-return",
        f"  - {name}-header -> {name}-tank",
        *(f"  - {name}-return -> {name}-valve-{n} -> {name}-heater-{n} -> {name}-hot" for n in (1, 2)),
        f"  - {name}-hot -> {name}-riser",
        f"  - {name}-end -> {name}-pump -> {name}-return",
        f"  - {{path: {name}-riser -> {name}-end, pipe: copper-L 2 in, length: 200 ft}}",
    ]
    return declared, runs


def _room(number: int, plant: str) -> tuple[list[str], list[str]]:
    """A guest room: a valve to either side, basin and shower."""
    n = f"r{number}"
    declared = [
        f"  {n}-cold: valve",
        f"  {n}-cold-tee: tee",
        f"  {n}-hot: valve",
        f"  {n}-basin: {{kind: fixture, elevation: {3 + 10 * (number % 4)} ft}}",
        f"  {n}-shower: {{kind: fixture, elevation: {7 + 10 * (number % 4)} ft}}",
    ]
    return declared, list(_room_runs(n, plant))


def _room_runs(n: str, plant: str) -> Iterator[str]:
    yield f"  - trunk -> {n}-cold -> {n}-cold-tee -> {n}-basin.cold"
    yield f"  - {n}-cold-tee -> {n}-shower.cold"
    yield f"  - {plant}-riser -> {n}-hot -> {n}-basin.hot"
