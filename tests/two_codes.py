"""A building with two circuits, each judged by rules of its own."""

from conftest import system

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.system import System

CODES = {"water": "upc-2024", "heating": "us-boiler"}
IN_A_LINE = "water: upc-2024; heating: us-boiler"


def boiler_and_cylinder() -> System:
    """A meter with a check, a cylinder, and a boiler with a permanent fill that heats it and a radiator."""
    return system(
        """
        street -> meter -> tee1 -> indirect -> tap.hot
        tee1 -> tap.cold
        tee1 -> cv -> prv -> tee2 -> boiler -> pump -> tee3 -> indirect.coil_in
        indirect.coil_out -> tee4 -> tee2
        tee3 -> emitter -> tee4
        tee2 -> tank
        """,
        meter="check: true",
        cv="kind: reduced_pressure_assembly",
        prv="set: 15 psi",
        boiler="volume: 12 gal, relief: {pressure: 30 psi}",
        indirect="relief: {pressure: 150 psi}",
        tank="volume: 2 gal, precharge: 12 psi",
    )


def by_two_codes() -> Report:
    """The report on it."""
    return plumbnet.check(boiler_and_cylinder(), rules=CODES)
