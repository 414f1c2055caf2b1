"""Changes to try on a layout: each action on each part and pipe, as far as it can be made."""

from collections.abc import Mapping

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import System


def change(fields: Mapping[str, object]) -> Change:
    return Change.model_validate(fields)


def every_change(of: System) -> list[Change]:
    """Each action on each part, where it can be made."""
    made: list[dict[str, object]] = []
    for name, part in of.parts.items():
        made += [{"close": name}, {"open": name}, {"remove": name}, {"draw": name}]
        made += [{"fail": {"part": name, "how": how}} for how in part.failures]
        made += [{"set": {"part": name, "elevation": 3, "rating": 900}}, {"set": {"part": name, "kind": "tee"}}]
        made += [{"set": {"part": name, "kind": "tankless_heater", "volume": None}}]
        tank = {"kind": "expansion_tank", "volume": 20, "precharge": 300}
        made.append({"add": {"part": "new-tank", **tank, "run": f"{name} -> new-tank"}})
    for pipe in of.pipes:
        between = [f"{end.part}.{end.port}" for end in pipe.ends]
        made.append({"insert": {"part": "new-check", "kind": "check_valve", "between": between}})
        made.append({"insert": {"part": "new-tee", "kind": "tee", "between": between[::-1]}})
    return [one for fields in made if can_be_made(of, one := change(fields))]


def can_be_made(of: System, one: Change) -> bool:
    try:
        with_changes(of, [one])
    except ChangeError:
        return False
    return True
