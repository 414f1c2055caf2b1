"""What a building has many times, said once: assemblies and numbered parts written out, with the places kept.

The words of a file come in, and all parts and chains of pipe go out, as a plain file would have them. What a kind or
a pipe makes of them is read elsewhere.
"""

from plumbnet.layout.assemblies.body_reader import ASSEMBLIES, CHANGE, has_assemblies
from plumbnet.layout.assemblies.definition import WrittenAt
from plumbnet.layout.assemblies.differing import ELEVATION, differs, one_of, refuse_uneven, taking_of
from plumbnet.layout.assemblies.labels import SELECTING, say_which, selected
from plumbnet.layout.assemblies.run_plan import PlannedChain
from plumbnet.layout.assemblies.told_once import TextSource, ToldOnce, Where
from plumbnet.layout.assemblies.writing_order import written_out
from plumbnet.layout.assemblies.writing_out import WrittenChange, WrittenInstance, WrittenOut, WrittenPart, height_above
from plumbnet.layout.assemblies.wrong import Wrong, meant

__all__ = [
    "ASSEMBLIES",
    "CHANGE",
    "ELEVATION",
    "SELECTING",
    "PlannedChain",
    "TextSource",
    "ToldOnce",
    "Where",
    "WrittenAt",
    "WrittenChange",
    "WrittenInstance",
    "WrittenOut",
    "WrittenPart",
    "Wrong",
    "differs",
    "has_assemblies",
    "height_above",
    "meant",
    "one_of",
    "refuse_uneven",
    "say_which",
    "selected",
    "taking_of",
    "written_out",
]
