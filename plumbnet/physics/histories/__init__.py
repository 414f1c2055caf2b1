"""Histories: in which order and portions heaters warm, and how high each zone can come behind one-way gates.

`push` lifts one zone by another, `neighbours` settles what one zone's growth does, `plays` plays the orders,
`peak` is the worst of them, `ceiling` what no order passes, `ratchet` what many heat-ups without a draw do.
"""

from plumbnet.physics.histories.neighbours import Neighbours
from plumbnet.physics.histories.peak import Peaks
from plumbnet.physics.histories.plays import History
from plumbnet.physics.histories.push import Gates, Pushes, lifted_abs_pa, needed_abs_pa
from plumbnet.physics.histories.ratchet import Ratchet

__all__ = ["Gates", "History", "Neighbours", "Peaks", "Pushes", "Ratchet", "lifted_abs_pa", "needed_abs_pa"]
