"""Finds heated water with no way back to the street, what stops it, and what it needs.

>>> import plumbnet
>>> system = plumbnet.read("systems/open-house.yaml")
>>> [heater.verdict.value for heater in plumbnet.check(system).heaters]
['open']
"""

from plumbnet.api import check, read, read_bytes
from plumbnet.layout.apply import with_changes
from plumbnet.layout.change import Change
from plumbnet.layout.undo import undo
from plumbnet.study.remedies import remedies
from plumbnet.study.sweep import sweep
from plumbnet.study.whatif import whatif

__all__ = ["Change", "check", "read", "read_bytes", "remedies", "sweep", "undo", "whatif", "with_changes"]
