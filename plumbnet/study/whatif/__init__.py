"""A layout as it is and as it would be: one change, a scenario, or a kind of change to many files."""

from plumbnet.study.whatif.bulk_changes import FitEach, SetEach, Supposed, ToEach, joined_settings, to_each_of
from plumbnet.study.whatif.what_if import FaultyScenario, UnknownScenario, WhatIf, untouched, whatif

__all__ = [
    "FaultyScenario",
    "FitEach",
    "SetEach",
    "Supposed",
    "ToEach",
    "UnknownScenario",
    "WhatIf",
    "joined_settings",
    "to_each_of",
    "untouched",
    "whatif",
]
