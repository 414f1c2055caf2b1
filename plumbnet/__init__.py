"""Finds heated water with no way back to the street, what stops it, and what it needs.

>>> import plumbnet
>>> system = plumbnet.read("systems/open-house.yaml")
>>> [heater.verdict.value for heater in plumbnet.check(system).heaters]
['open']
"""

from plumbnet.api import check, read, read_bytes
from plumbnet.study.remedies import remedies

__all__ = ["check", "read", "read_bytes", "remedies"]
