"""A layout supposed otherwise on the command line: in one of its scenarios, with changes made to it in their order."""

from plumbnet.cli.supposing.change_options import (
    AddOption,
    Close,
    DrawOption,
    FailOption,
    InsertOption,
    Open,
    Ordered,
    Remove,
    SetOption,
    fail_each,
    field_and_value,
    given_changes,
    value_in,
)
from plumbnet.cli.supposing.scenario_option import report_supposed, supposed

__all__ = [
    "AddOption",
    "Close",
    "DrawOption",
    "FailOption",
    "InsertOption",
    "Open",
    "Ordered",
    "Remove",
    "SetOption",
    "fail_each",
    "field_and_value",
    "given_changes",
    "report_supposed",
    "supposed",
    "value_in",
]
