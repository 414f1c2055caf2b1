"""What the command line and other programs call: read a layout, check a system."""

import gc
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TypeAlias

from plumbnet.analysis import Report, analyse
from plumbnet.analysis.equilibrium import Unanswerable
from plumbnet.layout.file import read_system
from plumbnet.layout.model import AssemblyFile, Circuit, System
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import Fault, LayoutError, bytes_of, nearest
from plumbnet.rules import (
    FINDINGS_ADVICE,
    REQUIREMENTS,
    GivenRules,
    OwnAcceptances,
    Profile,
    Rules,
    RulesArgument,
    UnknownProfile,
    completed,
    given_rules,
    own_acceptances_at,
    profile,
    unknown_finding,
)

Layout: TypeAlias = System | str | Path | bytes
"""A system that was read, the path of a layout file, or the bytes of one."""


def read(path: str | Path, *, shelf: Sequence[AssemblyFile] = ()) -> System:
    """The system of a layout file: parts, pipes and scenarios, in SI; `shelf` brings assemblies that it may use.

    Raises LayoutError with every fault of the file, OSError where it cannot be opened.

    >>> house = read("systems/open-house.yaml")
    >>> house.title, len(house.parts), list(house.scenarios)
    ('12 Alder Street, Lantern Falls', 19, ['stop-left-shut', 'meter-exchanged'])
    """
    return read_bytes(bytes_of(path), file=str(path), shelf=shelf)


def read_bytes(data: bytes, *, file: str = "layout", shelf: Sequence[AssemblyFile] = ()) -> System:
    r"""The system that the bytes of a layout describe; `file` names it in messages, `shelf` brings assemblies.

    Raises LayoutError.

    >>> house = read_bytes(b"plumbnet: 1\nparts: {street: {kind: main, pressure: 62 psi}, sink: fixture}\n"
    ...                    b"runs: [street -> sink.cold]\n")
    >>> list(house.parts)
    ['street', 'sink']
    """
    with _no_search_for_garbage():
        return read_system(data, file=file, shelf=shelf)


def check(
    layout: Layout,
    *,
    rules: RulesArgument | None = None,
    units: Units | None = None,
    acceptances: str | Path | OwnAcceptances | None = None,
) -> Report:
    """The report on a layout under rules: those given, or the file's own, or general practice.

    `layout` is a system that was read, the path of a layout file, or the bytes of one, which messages then call layout.
    `rules` is a profile, the name of one that comes with the program, or the path of a file that holds one; or one of
    these for each circuit, as `{"water": "ipc-2021", "heating": "us-boiler"}`: for a circuit that is left out the file
    has its say. Sentences use `units`, or else those of the file; numbers are SI. `acceptances` is the inspector's own
    list, or the path of one, that decides in place of what the file accepts: an empty one, `OwnAcceptances()`, accepts
    nothing.

    Raises UnknownProfile for a name given here, UnknownCircuit for a circuit that codes do not tell apart, OSError and
    LayoutError for a file given here, LayoutError with every fault of a layout that is not read yet, for a profile or
    finding that the layout names and nobody knows, and for a heater of which nothing can be computed.

    >>> report = check("systems/house-with-check.yaml", rules="ipc-2021")
    >>> report
    <Report of systems/house-with-check.yaml, rules ipc-2021: 1 trapped; 1 finding>
    >>> heater = report.heaters[0]
    >>> heater.verdict.value, round(heater.static_pa), round(heater.limit_pa)
    ('trapped', 427475, 557559)
    """
    system = _system_of(layout)
    chosen = _chosen(system, rules)
    own = own_acceptances_at(str(acceptances)) if isinstance(acceptances, str | Path) else acceptances
    _refuse_unknown_findings(system)
    try:
        with _no_search_for_garbage():
            return analyse(system, chosen, units=units, own=own)
    except Unanswerable as error:
        fault = Fault(system.line_of(error.heater), 1, f"{error.heater}: {error}")
        raise LayoutError(system.record.file, [fault], system.record.text) from error


def _system_of(layout: Layout) -> System:
    """The system of a layout in any of its forms. Raises LayoutError, OSError where it has to be read."""
    if isinstance(layout, System):
        return layout
    return read_bytes(layout) if isinstance(layout, bytes) else read(layout)


def as_report(layout: Layout | Report, *, units: Units | None = None) -> Report:
    """A report as it is; of a layout the one that `check` makes, and what that raises."""
    return layout if isinstance(layout, Report) else check(layout, units=units)


@contextmanager
def _no_search_for_garbage() -> Iterator[None]:
    """Of what is made within next to none is garbage; to look for some takes up to half the time of a large layout."""
    was_at_work = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_at_work:
            gc.enable()


def _chosen(system: System, asked: RulesArgument | None) -> Rules:
    """The rules to judge by; a layout can name only profiles that come with the program."""
    if isinstance(asked, Rules):
        return asked
    given = given_rules(asked) if asked else GivenRules({})
    return given.whole or completed(given, _own(system, [one for one in Circuit if one not in given.profiles]))


def _own(system: System, circuits: list[Circuit]) -> dict[Circuit, Profile]:
    """The profiles that a layout names for some circuits. Raises LayoutError for names that nobody knows."""
    named = {one: system.rules if isinstance(system.rules, str) else (system.rules or {}).get(one) for one in circuits}
    found, faults = dict[Circuit, Profile](), list[Fault]()
    for circuit, name in named.items():
        try:
            if name is not None:
                found[circuit] = profile(name)
        except UnknownProfile as error:
            place = system.record.rules_at.get(circuit, (0, 0))
            faults.append(Fault(*place, str(error), width=len(name or "")))
    if faults:
        raise LayoutError(system.record.file, faults, system.record.text)
    return found


def _refuse_unknown_findings(system: System) -> None:
    """Raise LayoutError where the layout accepts a finding that does not exist."""
    faults = [
        Fault(
            *place,
            unknown_finding(acceptance.finding),
            nearest(acceptance.finding, REQUIREMENTS) or FINDINGS_ADVICE,
            width=len(acceptance.finding),
        )
        for acceptance, place in zip(system.accept, system.record.accept_at, strict=True)
        if acceptance.finding not in REQUIREMENTS
    ]
    if faults:
        raise LayoutError(system.record.file, faults, system.record.text)
