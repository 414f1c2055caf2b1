"""Prints how long things take, as ratios within one run; never fails. Run it alone: python tests/benchmark.py"""

import os
import resource
import subprocess
import sys
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory

import yaml
from campus import campus, school
from hotel import hotel

import plumbnet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheets
from plumbnet.drawing.ink.sheet_composition import composition
from plumbnet.report.figures.figure_file import saved
from plumbnet.report.schematic.schematic_contents import schematic_of
from plumbnet.report.schematic.schematic_figure import schematic, schematic_file
from plumbnet.study.contingency.event_sweep import sweep

HOUSE = Path(__file__).parent.parent / "systems" / "bakery-tank-right.yaml"
BARE_FIGURE = (
    "import io; from matplotlib.figure import Figure; figure = Figure(); figure.add_subplot().plot([0, 1]); "
    "figure.savefig(io.BytesIO(), format='svg')"
)
IMPORTS = "import networkx, typer, yaml; from pydantic import BaseModel"
HEAVY = "import iapws.iapws97, scipy.optimize"
SIZES = (1_000, 10_000, 100_000)


def seconds(action: Callable[[], object], times: int) -> float:
    """Median time of an action."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        action()
        taken.append(time.perf_counter() - start)
    return median(taken)


def process_ratio(arguments: list[str], imports: str, times: int = 7) -> float:
    """CPU time of the program, as a whole process, against that of a process that only imports."""
    ours, theirs = [sys.executable, "-m", "plumbnet", *arguments], [sys.executable, "-c", imports]
    return median(_cpu_s(ours) / _cpu_s(theirs) for _ in range(times))


def _cpu_s(command: list[str]) -> float:
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    _run(command)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def _run(command: list[str]) -> None:
    """Run a command as users do: from what was compiled the first time."""
    compiled = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    subprocess.run(command, check=False, stdout=subprocess.DEVNULL, env=compiled)  # noqa: S603  # commands of this file


def text_ratios(text: str, times: int) -> tuple[float, float, float]:
    """Reading and analysis against the C loader's parse of the same text, and that parse in seconds."""
    loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    parse = seconds(lambda: yaml.load(text, Loader=loader), times)  # noqa: S506  # a safe loader
    data = text.encode()
    system = plumbnet.read_bytes(data, file="campus")
    read = seconds(lambda: plumbnet.read_bytes(data, file="campus"), times)
    analyse = seconds(lambda: plumbnet.check(system), times)
    return read / parse, analyse / parse, parse


def rooms(risers: int) -> str:
    """A hotel said in twenty lines: risers of ten rooms with five parts each, off one heater."""
    return f"""
plumbnet: 1
assemblies:
  room:
    ports: [hot, cold]
    parts: {{hot: tee, cold: tee, mixer: {{kind: mixing_valve, elevation: 4 ft}}, shower: fixture, basin: fixture}}
    runs: [hot -> mixer.hot, cold -> mixer.cold, mixer.mixed -> shower.hot, hot -> basin.hot, cold -> basin.cold]
  riser:
    ports: {{hot: rooms/first.hot, cold: rooms/first.cold}}
    parts: {{rooms: {{use: room, times: 10, elevation: {{first: 10 ft, step: 10 ft}}}}}}
    runs: [rooms/each.hot -> rooms/next.hot, rooms/each.cold -> rooms/next.cold]
parts:
  street: {{kind: main, pressure: 60 psi}}
  cold: tee
  heater: {{kind: storage_heater, volume: 500 gal, setpoint: 140 degF, relief: {{pressure: 150 psi}}}}
  hot: tee
  risers: {{use: riser, times: {risers - 1}}}
runs: [street -> cold -> heater -> hot -> risers/each.hot, cold -> risers/each.cold]
"""


def sizing_ratio(times: int) -> float:
    """The calculation sheets of a school's 40 heaters, on 15 tanks, against its plain verdicts."""
    system = plumbnet.read_bytes(school().encode(), file="school")
    report = plumbnet.check(system)
    plain = seconds(lambda: plumbnet.check(system), times)
    return seconds(lambda: list(sheets(report, list(report.heaters))), times) / plain


def many_ratios(count: int = 1000) -> tuple[float, float]:
    """A folder of houses: two processes against one, and each file of it against a check of one house alone."""
    with TemporaryDirectory() as folder:
        for number in range(count):
            (Path(folder) / f"{number}.yaml").write_bytes(HOUSE.read_bytes())
        check = [sys.executable, "-m", "plumbnet", "check"]
        one = seconds(lambda: _run([*check, str(HOUSE)]), 3)
        alone, shared = (
            seconds(lambda: _run([*check, folder, "--format", "csv", "--jobs", jobs]), 1)  # noqa: B023  called at once
            for jobs in ("1", "2")
        )
    return shared / alone, alone / count / one


def sweep_ratio(text: str, times: int) -> tuple[int, float]:
    """Events of a building, and all of them swept one by one against one plain check of it, taken in turn."""
    system = plumbnet.read_bytes(text.encode(), file="building")
    report = plumbnet.check(system)
    events = len(sweep(report).events)
    pairs = [(seconds(lambda: sweep(report), 1), seconds(lambda: plumbnet.check(system), 3)) for _ in range(times)]
    return events, median(swept / plain for swept, plain in pairs)


def remedies_ratio(times: int) -> tuple[int, float]:
    """Parts of a hotel with two heater rooms in trouble, and all its remedies against one plain check, in turn."""
    system = plumbnet.read_bytes(hotel().encode(), file="hotel")
    report = plumbnet.check(system)
    pairs = [
        (seconds(lambda: plumbnet.remedies(report), 1), seconds(lambda: plumbnet.check(system), 3))
        for _ in range(times)
    ]
    return len(system.parts), median(found / plain for found, plain in pairs)


def page_ratios(times: int = 5) -> tuple[float, float]:
    """`report` on one house, as HTML and as PDF, each a whole process, against one that saves one bare figure."""
    bare = [sys.executable, "-c", BARE_FIGURE]
    with TemporaryDirectory() as folder:
        outs = [str(Path(folder) / f"out.{form}") for form in ("html", "pdf")]
        pages = [[sys.executable, "-m", "plumbnet", "report", str(HOUSE), "-o", out] for out in outs]
        base = seconds(lambda: _run(bare), times)
        html, pdf = (seconds(partial(_run, page), times) / base for page in pages)
    return html, pdf


def drawing_ratios(parts: int, times: int) -> tuple[float, float, float]:
    """Placing a campus for its drawing, and its whole SVG, against importing the drawing library and saving one figure.

    The last is the share of the SVG's time that is not the library's own saving.
    """
    report = plumbnet.check(plumbnet.read_bytes(campus(parts).encode(), file="campus"))
    bare = seconds(lambda: _run([sys.executable, "-c", BARE_FIGURE]), times)
    layout = seconds(lambda: composition(schematic_of(report)), times)
    svg = seconds(lambda: schematic_file(report, "svg"), times)
    figure = schematic(report)
    saving = seconds(lambda: saved(figure, "svg", title="campus"), times)
    return layout / bare, svg / bare, 1.0 - saving / svg


def show(name: str, text: str, times: int) -> None:
    """One row of the table."""
    read, analyse, parse = text_ratios(text, times)
    peak_mib = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"{name:>16} {parse:>12.4f} s {read:>8.2f} {analyse:>10.2f} {peak_mib:>10.0f} MiB")


def main() -> None:
    """Everything; a size as argument does that campus alone, so that each is measured in a fresh process."""
    if len(sys.argv) > 1:
        parts = int(sys.argv[1])
        show(f"{parts:,} parts", campus(parts), 3 if parts < max(SIZES) else 1)
        return
    for imports in (IMPORTS, HEAVY):
        print(f"check of one house, CPU time against {imports!r}: {process_ratio(['check', str(HOUSE)], imports):.2f}")
    print(f"help, CPU time against 'import typer': {process_ratio(['--help'], 'import typer'):.2f}")
    print(f"sizing a school of 40 heaters and 15 tanks against its plain verdicts: {sizing_ratio(20):.2f}")
    shared, each = many_ratios()
    print(f"1,000 houses in a folder, 2 processes against 1: {shared:.2f}; each against one alone: {each:.4f}")
    for name, text in (
        ("houses on their meters", campus(200)),
        ("a school behind one preventer", school()),
        ("a hotel of 200 rooms", hotel()),
    ):
        events, ratio = sweep_ratio(text, 5)
        print(f"sweep of {events} single events in {name}, against one plain check: {ratio:.1f}")
    parts, ratio = remedies_ratio(5)
    print(f"all remedies of a hotel of {parts:,} parts with two heater rooms, against one plain check: {ratio:.1f}")
    html, pdf = page_ratios()
    print(
        f"report on one house, against importing the drawing library and saving one figure: {html:.2f} as HTML, ",
        end="",
    )
    print(f"{pdf:.2f} as PDF")
    print("drawing, against importing the drawing library and saving one figure:")
    print(f"{'':>16} {'placing':>8} {'whole SVG':>10} {'of it ours':>11}")
    for parts in (20, 100, 300):
        placing, svg, ours = drawing_ratios(parts, 3)
        print(f"{parts:>10} parts {placing:>8.2f} {svg:>10.2f} {ours:>11.0%}")
    print("read and analyse, against parsing the same text with the C loader:")
    print(f"{'':>16} {'C loader':>14} {'read':>8} {'analyse':>10} {'peak':>14}")
    for name in ("kingfisher-hotel", "weir-house"):
        building = (HOUSE.parent / "buildings" / f"{name}.yaml").read_text(encoding="utf-8")
        show(name, building, 20)
    show("of 20,000 rooms", rooms(2_000), 1)
    show("one house", HOUSE.read_text(encoding="utf-8"), 200)
    for parts in SIZES:
        sys.stdout.flush()
        subprocess.run([sys.executable, __file__, str(parts)], check=False)  # noqa: S603  # this file


if __name__ == "__main__":
    main()
