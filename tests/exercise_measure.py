"""Deals many exercises, finds every key by another way, and prints how well their lists of parts give the answers away.

`python tests/exercise_measure.py --each 100 --seed 1` deals so many of each sort at each level, by turns in both units,
in classes of twelve; `--levels 23` and `--about verdict` choose. Beside the forests stand blind guessing and what is
right oftenest. It asks for some seconds of processor time to a dozen of exercises, and for scikit-learn.
"""

import argparse
import time
from collections import Counter
from collections.abc import Iterator

from answering import CHECKS, task
from guessing import blind, commonest, forest

from plumbnet.layout.units.units import Customary
from plumbnet.study.exercise.exercise import Exercise
from plumbnet.study.exercise.generator import exercises, questions_of
from plumbnet.study.exercise.level import LEVELS

CLASS = 12
UNITS: tuple[Customary, ...] = ("us", "metric")


def dealt(seed: int, level: int, about: str, number: int) -> Iterator[Exercise]:
    """So many exercises, in classes of twelve, by turns in both units."""
    for turn in range(-(-number // CLASS)):
        yield from exercises(
            seed + turn // 2, level, min(CLASS, number - turn * CLASS), about=about, units=UNITS[turn % 2]
        )


def measured(seed: int, level: int, about: str, number: int) -> tuple[int, int]:
    """Deal, check, and print a line; how many were dealt, and how many keys were found wrong."""
    start = time.process_time()
    found = list(dealt(seed, level, about, number))
    spent = (time.process_time() - start) / len(found)
    wrong = sum(not _is_right(one) for one in found)
    outcomes = ", ".join(f"{word} {count}" for word, count in Counter(one.asked.outcome for one in found).most_common())
    print(
        f"level {level} {about:16} {len(found):4} dealt, {spent:.2f} s each, {wrong} wrong; "
        f"forest {forest(found):4.0%}, blind {blind(found):4.0%}, commonest {commonest(found):4.0%}; {outcomes}",
        flush=True,
    )
    return len(found), wrong


def _is_right(one: Exercise) -> bool:
    try:
        CHECKS[one.question.name](task(one))
    except AssertionError as error:
        print(f"wrong: {one.origin} {one.question.name}: {error!r}")
        return False
    return True


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--each", type=int, default=100)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--levels", default="".join(map(str, LEVELS)))
    parser.add_argument("--about")
    chosen = parser.parse_args()
    sums = [
        measured(chosen.seed, level, question.name, chosen.each)
        for level in map(int, chosen.levels)
        for question in questions_of(level)
        if chosen.about in {None, question.name}
    ]
    print(f"{sum(one for one, _ in sums)} exercises, {sum(wrong for _, wrong in sums)} keys wrong")
