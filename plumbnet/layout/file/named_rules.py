"""What a layout says of the rules it is judged by: one name, or one for each circuit, and where each stands."""

from collections.abc import Callable, Mapping

from plumbnet.layout.model import Circuit, Mistake, is_bare, shown_value
from plumbnet.layout.yaml import Plain, YamlNode, quoted

_FIELD = "rules"
_BY_CIRCUIT = "for example rules: {water: ipc-2021, heating: us-boiler}"
_CIRCUITS = "there is water, which people draw, and heating, to which solar circuits belong"
_QUOTES = "put it in quotes"


def named_rules(value: Plain, tell: Callable[[Mistake], None]) -> Plain:
    """What is written of rules, less what is wrong with it, which is told."""
    if value is None or isinstance(value, str):
        return value
    if not isinstance(value, dict) or not value:
        written = "an empty mapping" if isinstance(value, dict) else shown_value(value)
        text = f"rules: the name of a rule profile is wanted here, or one for each circuit, not {written}"
        tell(Mistake((_FIELD,), text, _QUOTES if is_bare(value) else _BY_CIRCUIT))
        return None
    wrong = {name: _wrong(name, named) for name, named in value.items()}
    for mistake in wrong.values():
        if mistake is not None:
            tell(mistake)
    return {name: named for name, named in value.items() if wrong[name] is None} or None


def _wrong(name: str, named: Plain) -> Mistake | None:
    """What is wrong with the rules of one circuit."""
    at, known = (_FIELD, name), [circuit.value for circuit in Circuit]
    if name not in known:
        return Mistake(at, f"no circuit is called {quoted(name)}", _CIRCUITS, at_key=True, meant=(name, known))
    if not isinstance(named, str):
        text = f"{name}: the name of a rule profile is wanted here, not {shown_value(named)}"
        return Mistake(at, text, _QUOTES if is_bare(named) else _BY_CIRCUIT)
    return None


def rules_places(rules: str | Mapping[Circuit, str] | None, root: YamlNode) -> dict[Circuit, tuple[int, int]]:
    """Where the name of a profile stands, by the circuits that it is for; the place of one name for all is that."""
    if rules is None:
        return {}
    paths = dict.fromkeys(Circuit, (_FIELD,)) if isinstance(rules, str) else _paths(rules)
    nodes = {circuit: root.at(*path) for circuit, path in paths.items()}
    return {circuit: (node.line, node.column) for circuit, node in nodes.items()}


def _paths(rules: Mapping[Circuit, str]) -> dict[Circuit, tuple[str, ...]]:
    return {circuit: (_FIELD, circuit.value) for circuit in rules}
