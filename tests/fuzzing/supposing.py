"""Random scenarios and acceptances for a layout, as a file would write them."""

from collections.abc import Callable, Mapping, Sequence
from typing import Final

from fuzzing.fields import Filling, Value
from fuzzing.odd import CONTROLS, NAMES, WORDS
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.part import KINDS, Part, Shut
from plumbnet.rules.requirement import REQUIREMENTS

Parts = Mapping[str, Part]
_IN_LINE: Final = tuple(kind for kind in sorted(KINDS) if len(KINDS[kind].through) == 1 and KINDS[kind].inlet)


def scenarios(filling: Filling, parts: Parts, runs: Sequence[str]) -> Value:
    """Named what-ifs of one or two changes each, most of which can be made."""
    random = filling.random
    found: dict[str, Value] = {}
    for number in range(random.randint(1, 3)):
        changes = [one for _ in range(random.randint(1, 2)) if (one := _change(filling, parts, runs))]
        name = random.choice((*NAMES, *CONTROLS)) if filling.is_odd() else f"s{number}"
        if changes or filling.is_odd():
            found[name] = {"note": random.choice((*WORDS, *CONTROLS)), "change": changes}
    return found


def accepted(filling: Filling, parts: Parts) -> Value:
    """Findings that the author accepts."""
    random = filling.random
    names = list(parts) or ["x"]
    return [
        {
            "finding": random.choice(WORDS if filling.is_odd() else sorted(REQUIREMENTS)),
            "part": random.choice(NAMES if filling.is_odd() else names),
            "reason": random.choice((*WORDS[:4], *CONTROLS, *NAMES)),
        }
        for _ in range(random.randint(1, 3))
    ]


def _change(filling: Filling, parts: Parts, runs: Sequence[str]) -> Value:
    """One change of any action; None where there is nothing that it could act on."""
    action = filling.random.choice(Change.actions)
    making = MAKING.get(action)
    if making is None or filling.is_odd():
        target = filling.random.choice((*parts, *NAMES[:6]))
        return {action: filling.random.choice((target, {"part": target}, [], None, {target: target}))}
    made = making(filling, parts, runs)
    return None if made is None else {action: made}


def _among(filling: Filling, parts: Parts, suits: Callable[[Part], object]) -> str | None:
    names = [name for name, part in parts.items() if suits(part)]
    return filling.random.choice(names) if names else None


def _close(filling: Filling, parts: Parts, _runs: Sequence[str]) -> Value:
    return _among(filling, parts, lambda part: part.is_valve())


def _open(filling: Filling, parts: Parts, _runs: Sequence[str]) -> Value:
    return _among(filling, parts, lambda part: any(isinstance(one, Shut) for one in part.passages()))


def _remove(filling: Filling, parts: Parts, _runs: Sequence[str]) -> Value:
    return _among(filling, parts, lambda part: len(part.port_names()) == 2)


def _draw(filling: Filling, parts: Parts, _runs: Sequence[str]) -> Value:
    return _among(filling, parts, lambda part: part.draws_at())


def _fail(filling: Filling, parts: Parts, _runs: Sequence[str]) -> Value:
    name = _among(filling, parts, lambda part: list(part.can_fail()))
    return None if name is None else {"part": name, "how": filling.random.choice(list(parts[name].can_fail()))}


def _set(filling: Filling, parts: Parts, _runs: Sequence[str]) -> Value:
    name = _among(filling, parts, lambda part: type(part).model_fields)
    if name is None:
        return None
    values = list(filling.fields(type(parts[name])).items())
    return {"part": name, **dict(filling.random.sample(values, min(1, len(values))))}


def _insert(filling: Filling, _parts: Parts, runs: Sequence[str]) -> Value:
    if not runs:
        return None
    stops = filling.random.choice(runs).split(" -> ")
    at = filling.random.randrange(len(stops) - 1)
    return {"between": stops[at : at + 2], **_placed(filling, filling.random.choice(_IN_LINE))}


def _add(filling: Filling, parts: Parts, _runs: Sequence[str]) -> Value:
    tee = _among(filling, parts, lambda part: part.is_fitting)
    kind = filling.random.choice(sorted(KINDS))
    port = filling.random.choice(KINDS[kind].ports)
    return None if tee is None else {"run": f"{tee} -> new.{port}", **_placed(filling, kind)}


def _placed(filling: Filling, kind: str) -> dict[str, Value]:
    return {"part": "new", "kind": kind, **filling.fields(KINDS[kind])}


MAKING: Final[dict[str, Callable[[Filling, Parts, Sequence[str]], Value]]] = {
    "close": _close,
    "open": _open,
    "remove": _remove,
    "insert": _insert,
    "add": _add,
    "set": _set,
    "fail": _fail,
    "draw": _draw,
}
