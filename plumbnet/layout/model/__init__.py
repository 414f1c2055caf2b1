"""What a layout is made of: parts with ports and passages, runs and pipes, changes and acceptances, the system.

`kinds` below it holds every kind of part, a class each; nothing here knows one by name.
"""

from plumbnet.layout.model.acceptance import Acceptance, of_no_part
from plumbnet.layout.model.backflow_protection import BackflowProtection
from plumbnet.layout.model.base_model import Declared, said_of
from plumbnet.layout.model.build import crowded, fixed_to, make_part, occupied
from plumbnet.layout.model.change import Add, Change, Fail, Insert, PlacedPart, Scenario, SetValues
from plumbnet.layout.model.circuit import Circuit
from plumbnet.layout.model.event import Alternative, Event, Extremes, Sort
from plumbnet.layout.model.fields import NOT_GIVEN, FieldChange, field_changes, fields_as_written
from plumbnet.layout.model.instance import indoors, instance_of
from plumbnet.layout.model.job import Job
from plumbnet.layout.model.part import (
    KINDS,
    MIXED,
    OUT,
    RELIEF,
    Boosting,
    Cushion,
    Free,
    HeatSource,
    Mixture,
    OneWay,
    Outlet,
    Part,
    Passage,
    Reducing,
    Role,
    Shut,
    Source,
    Stray,
)
from plumbnet.layout.model.runs import (
    ARROW,
    MOST_PIPES,
    MOST_PIPES_OF_RUN,
    NAME,
    NAME_ADVICE,
    Stop,
    joints,
    listed_names,
    run_stops,
)
from plumbnet.layout.model.system import End, Instance, Pipe, Record, System
from plumbnet.layout.model.validation_messages import (
    Mistake,
    Path,
    declared_in,
    is_bare,
    mistakes,
    shown_value,
    validation_faults,
    with_article,
)

__all__ = [
    "ARROW",
    "KINDS",
    "MIXED",
    "MOST_PIPES",
    "MOST_PIPES_OF_RUN",
    "NAME",
    "NAME_ADVICE",
    "NOT_GIVEN",
    "OUT",
    "RELIEF",
    "Acceptance",
    "Add",
    "Alternative",
    "BackflowProtection",
    "Boosting",
    "Change",
    "Circuit",
    "Cushion",
    "Declared",
    "End",
    "Event",
    "Extremes",
    "Fail",
    "FieldChange",
    "Free",
    "HeatSource",
    "Insert",
    "Instance",
    "Job",
    "Mistake",
    "Mixture",
    "OneWay",
    "Outlet",
    "Part",
    "Passage",
    "Path",
    "Pipe",
    "PlacedPart",
    "Record",
    "Reducing",
    "Role",
    "Scenario",
    "SetValues",
    "Shut",
    "Sort",
    "Source",
    "Stop",
    "Stray",
    "System",
    "crowded",
    "declared_in",
    "field_changes",
    "fields_as_written",
    "fixed_to",
    "indoors",
    "instance_of",
    "is_bare",
    "joints",
    "listed_names",
    "make_part",
    "mistakes",
    "occupied",
    "of_no_part",
    "run_stops",
    "said_of",
    "shown_value",
    "validation_faults",
    "with_article",
]
