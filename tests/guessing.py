"""Guesses at exercises from the list of parts alone: what a learner could pick up who never looks at the piping."""

from collections import Counter
from collections.abc import Iterator, Sequence

import numpy as np
from sklearn.ensemble import RandomForestClassifier
from sklearn.feature_extraction import DictVectorizer
from sklearn.model_selection import GroupKFold

from plumbnet.layout.model.part import Part
from plumbnet.study.exercise.answer import Measure
from plumbnet.study.exercise.exercise import Exercise

TREES = 150
FOLDS = 5
Features = dict[str, float]


def blind(exercises: Sequence[Exercise]) -> float:
    """The share that is right by ticking an option with closed eyes."""
    return float(np.mean([1.0 / len(one.asked.choice.options) for one in exercises]))


def commonest(exercises: Sequence[Exercise]) -> float:
    """The share that is right by always ticking what is right oftenest: a word, or a place among the options."""
    words, places = Counter(one.asked.answer for one in exercises), Counter(map(_place, exercises))
    return max(*words.values(), *places.values()) / len(exercises)


def _place(one: Exercise) -> int:
    return one.asked.choice.options.index(one.asked.answer)


def forest(exercises: Sequence[Exercise], trees: int = TREES) -> float:
    """The share that forests of trees get right: the better of one that weighs options and one that learns answers."""
    return max(_by_option(exercises, trees), _by_answer(exercises, trees))


def _by_answer(exercises: Sequence[Exercise], trees: int) -> float:
    """The answer as a word is learned from the list."""
    rows = DictVectorizer(sparse=False).fit_transform([whole(one) for one in exercises])
    right = np.array([one.asked.answer for one in exercises])
    hits = [
        _trained(rows[train], right[train], trees).predict(rows[test]) == right[test]
        for train, test in _folds(np.arange(len(exercises)))
    ]
    return float(np.mean(np.concatenate(hits)))


def _by_option(exercises: Sequence[Exercise], trees: int) -> float:
    """Whether an option is right is learned from what it is, beside the list; the likeliest one is ticked."""
    pairs = [(number, option) for number, one in enumerate(exercises) for option in one.asked.choice.options]
    wholes = [whole(one) for one in exercises]
    rows = DictVectorizer(sparse=False).fit_transform(
        [wholes[number] | dict(own(exercises[number], option)) for number, option in pairs]
    )
    groups = np.array([number for number, _ in pairs])
    right = np.array([exercises[number].asked.answer == option for number, option in pairs])
    chance = np.zeros(len(pairs))
    for train, test in _folds(groups):
        chance[test] = _trained(rows[train], right[train], trees).predict_proba(rows[test])[:, 1]
    return float(np.mean([right[groups == number][np.argmax(chance[groups == number])] for number in set(groups)]))


def _trained(rows: np.ndarray, right: np.ndarray, trees: int) -> RandomForestClassifier:
    return RandomForestClassifier(trees, min_samples_leaf=2, random_state=1).fit(rows, right)


def _folds(groups: np.ndarray) -> Iterator[tuple[np.ndarray, np.ndarray]]:
    yield from GroupKFold(FOLDS).split(groups, groups=groups)


def whole(one: Exercise) -> Features:
    """The list of parts, the event, the heater asked about, and the options: nothing of the piping."""
    found: Counter[str] = Counter()
    for name, part in one.system.parts.items():
        if name in one.system.written:
            found.update(_part(part))
    found[f"heater {_kind(one, one.asked.heater or '')}"] = 1
    found[f"event {' '.join('it' if word in one.system.parts else word for word in one.supposed.split())}"] = 1
    for name in one.supposed.split():
        if name in one.system.parts:
            found[f"event of {one.system.parts[name].kind}"] = 1
    found.update(f"offers {_kind(one, option)}" for option in one.asked.choice.options)
    numbers = {f"number {key}": float(value) for key, value in _numbers(one)}
    return {**{key: float(value) for key, value in found.items()}, **numbers}


def own(one: Exercise, option: str) -> Iterator[tuple[str, float]]:
    """What an option is: kind, fields, place among the options and in the list, whether the event names it."""
    names, options = list(one.system.parts), one.asked.choice.options
    yield f"own kind {_kind(one, option)}", 1.0
    yield "own place", float(options.index(option))
    yield "own rank", float(names.index(option)) if option in names else -1.0
    yield "own event", float(option in one.supposed.split())
    yield "own heater", float((one.asked.heater or "?") in option)
    if option in one.system.parts:
        yield from ((f"own {key}", float(value)) for key, value in _part(one.system.parts[option]).items())
        alike = [name for name in names if one.system.parts[name].kind == one.system.parts[option].kind]
        yield "own rank among alike", float(alike.index(option))


def _kind(one: Exercise, name: str) -> str:
    return one.system.parts[name].kind if name in one.system.parts else name.rsplit("/", maxsplit=1)[-1]


def _part(part: Part) -> Counter[str]:
    """A part as the list has it: its kind, and each field that is a word or a flag."""
    fields = part.model_dump()
    told = Counter([part.kind])
    told.update(f"{part.kind} {key} {value}" for key, value in fields.items() if isinstance(value, bool | str))
    return told


def _numbers(one: Exercise) -> Iterator[tuple[str, float]]:
    """The lowest and the highest of each number in the list, by kind and field."""
    found: dict[str, list[float]] = {}
    for part in one.system.parts.values():
        for key, value in part.model_dump().items():
            if isinstance(value, int | float) and not isinstance(value, bool):
                found.setdefault(f"{part.kind} {key}", []).append(float(value))
    for key, values in found.items():
        yield f"least {key}", min(values)
        yield f"most {key}", max(values)
    for blank in one.asked.blanks:
        if isinstance(blank, Measure):
            yield "measures", 1.0
