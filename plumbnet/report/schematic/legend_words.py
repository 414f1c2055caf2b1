"""The words that explain a schematic: services, zones in trouble, what stops the water, the way out."""

from plumbnet.drawing import Service
from plumbnet.drawing.items import LegendWords
from plumbnet.report.schematic.revision_letters import LETTERS
from plumbnet.rules.facts import Verdict

LEGEND = LegendWords(
    services={
        Service.COLD: "cold water",
        Service.HOT: "hot water",
        Service.MIXED: "mixed water",
        Service.RETURN: "return, and its direction",
    },
    tones={
        Verdict.TRAPPED: "trapped zone: past its limit when all is hot",
        Verdict.SEALED: "sealed zone: no relief valve in reach, danger",
    },
    ring="stops the water on its way out",
    band="way out for growing water",
    letters=LETTERS,
)
