"""A walk of the water to what of its trace an answer rests on: how it stands cold, what it tries, what comes of it."""

from dataclasses import dataclass

from plumbnet.analysis.water_walk import WaterWalk
from plumbnet.report.trace.trace_report import cold_sentence, verdict_sentences
from plumbnet.report.trace.walk import tries_in_words
from plumbnet.rules.facts import Facts


@dataclass(frozen=True, slots=True)
class ShortTrace:
    """The trace of one heater without its wrapping: a sentence, what is tried, each in a sentence or two, the end."""

    heater: str
    cold: str
    tries: tuple[str, ...]
    ends: tuple[str, ...]


def short_trace(facts: Facts, walk: WaterWalk) -> ShortTrace:
    """The trace of a walk in short; `cold` is empty where no water reaches its heater."""
    tries = tuple(" ".join(sentences) for sentences in tries_in_words(facts, walk))
    return ShortTrace(walk.heater.name, cold_sentence(facts, walk), tries, tuple(verdict_sentences(facts, walk.heater)))
