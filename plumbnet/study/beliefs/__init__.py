"""What people believe of heated water, each with what answers it: which belief stands behind an answer to an exercise.

A belief is read from the sort of question and from what an option means, asked of the analysis of the exercise's own
layout; the sentences are data.
"""

from plumbnet.study.beliefs.answer_hints import exercise_hints
from plumbnet.study.beliefs.belief_file import Belief, belief_layout, known_beliefs, known_misreadings
from plumbnet.study.beliefs.hint import BlankHints, ChoiceHints, Hint, MeasureHints, told_as
from plumbnet.study.beliefs.tied_beliefs import NotShown, chosen_belief

__all__ = [
    "Belief",
    "BlankHints",
    "ChoiceHints",
    "Hint",
    "MeasureHints",
    "NotShown",
    "belief_layout",
    "chosen_belief",
    "exercise_hints",
    "known_beliefs",
    "known_misreadings",
    "told_as",
]
