"""Loops that a pump drives with every fixture shut, and the water that each heat source warms."""

from plumbnet.network.loops.cold_header import ColdHeader, ColdHeaders
from plumbnet.network.loops.heated_volume import HeatedVolume, Piece, heated_volumes
from plumbnet.network.loops.loops import Circulation, Loop, circulation

__all__ = ["Circulation", "ColdHeader", "ColdHeaders", "HeatedVolume", "Loop", "Piece", "circulation", "heated_volumes"]
