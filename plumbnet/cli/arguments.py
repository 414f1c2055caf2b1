"""What the file and the names on a command line stand for, or one calm sentence and exit status 2."""

import re
import sys
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import NoReturn

import typer

import plumbnet
from plumbnet.analysis import Report
from plumbnet.cli.ending import NOT_UNDERSTOOD
from plumbnet.cli.file_search import SHELF, STANDARD_INPUT, STANDARD_INPUT_NAME
from plumbnet.cli.progress_bar import at_work
from plumbnet.layout.model import Circuit, System
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import Fault, LayoutError, bytes_from, nearest, visible
from plumbnet.library import UnknownHeater, heater_named
from plumbnet.report.output import unread
from plumbnet.rules import (
    GivenRules,
    OwnAcceptances,
    Profile,
    RulesFrom,
    UnknownCircuit,
    UnknownProfile,
    circuit_named,
    profile_at,
)

_WORD = re.compile(r"[A-Za-z-]+")


def report_on(file: str, rules: GivenRules | None, units: Units | None, own: OwnAcceptances | None = None) -> Report:
    """The report on a file; says what is wrong and exits where it cannot be read."""
    try:
        system = system_from(file)
        with at_work("checking"):
            return plumbnet.check(system, rules=rules, units=units, acceptances=own)
    except (LayoutError, OSError) as error:
        refuse(file, error)


def report_with(
    file: str, heater: str | None, rules: Sequence[str] | None, units: Units | None, own: OwnAcceptances | None = None
) -> Report:
    """The report on a file; says what is wrong and exits where it cannot be read or has no such heater."""
    report = report_on(file, ruled(rules), units, own)
    if heater is not None:
        demand_heater(report, heater, file)
    return report


def demand_heater(report: Report, heater: str, file: str) -> None:
    """Say what is wrong and exit where a layout has no such heater."""
    try:
        heater_named(report, heater, file=file)
    except UnknownHeater as error:
        fail(str(error))


def system_from(file: str) -> System:
    """The system of a file, or of standard input. Raises LayoutError, OSError."""
    if file == STANDARD_INPUT:
        return plumbnet.read_bytes(bytes_from(sys.stdin.buffer), file=STANDARD_INPUT_NAME, shelf=SHELF.get())
    with at_work("reading"):
        return plumbnet.read(Path(file), shelf=SHELF.get())


def refuse(file: str, error: LayoutError | OSError) -> NoReturn:
    """Say why a file cannot be understood, with line and caret where there are any, and exit."""
    typer.echo(unread(file, error).words, err=True)
    raise typer.Exit(NOT_UNDERSTOOD) from error


def ruled(rules: Sequence[str] | None) -> GivenRules | None:
    """The rules that options name, each profile read once; says what is wrong and exits where one cannot be read."""
    if not rules:
        return None
    named: dict[str, str] = {}
    for text in rules:
        circuit, name = _of_circuit(text)
        if circuit in named:
            for_what = f"for the circuit {circuit}" if circuit else "for every circuit"
            fail(f"--rules names two profiles {for_what}, {named[circuit]} and {name}; name one")
        named[circuit] = name
    return GivenRules(
        _by_circuit({circuit: profile_named(name) for circuit, name in named.items()}), RulesFrom.COMMAND_LINE
    )


def _of_circuit(text: str) -> tuple[str, str]:
    """The circuit for which an option names a profile, empty for every one, and the profile."""
    circuit, equals, name = text.partition("=")
    if not equals or not _WORD.fullmatch(circuit):
        return "", text
    try:
        return circuit_named(circuit).value, name
    except UnknownCircuit as error:
        fail(f"--rules {text}: {error}")


def _by_circuit(read: Mapping[str, Profile]) -> dict[Circuit, Profile]:
    """The profile for each circuit: its own, or that which is named for every one."""
    found = {circuit: read.get(circuit.value, read.get("")) for circuit in Circuit}
    return {circuit: profile for circuit, profile in found.items() if profile is not None}


def profile_named(name_or_path: str) -> Profile:
    """The rule profile of a name or a file; says what is wrong and exits where there is none or it is faulty."""
    try:
        return profile_at(name_or_path)
    except UnknownProfile as error:
        fail(str(error))
    except (LayoutError, OSError) as error:
        refuse(name_or_path, error)


def fail(words: str, word: str = "", known: Iterable[str] = (), advice: str = "") -> NoReturn:
    """Say what is wrong, with the nearest known word or else the advice, and exit."""
    typer.echo(visible(Fault(0, 0, words, nearest(word, known) or advice).sentence), err=True)
    raise typer.Exit(NOT_UNDERSTOOD)
