"""Random layouts that follow the declarations of the kinds, joined in pipes, with odd values in some places."""

import json
import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from importlib.resources import files
from random import Random
from typing import Final

import yaml
from pydantic import ValidationError

from fuzzing.extremes import quantities_in
from fuzzing.fields import Filling, Value
from fuzzing.odd import CONTROLS, NAMES, NUMBERS, WORDS
from fuzzing.supposing import accepted, scenarios
from plumbnet.layout.file.document import Document, RunWithPipe
from plumbnet.layout.model.build import make_part
from plumbnet.layout.model.part import KINDS, Part
from plumbnet.layout.model.runs import NAME
from plumbnet.layout.units.tubes import read_tubes
from plumbnet.rules.rule_profile import profile_names

_TABLE: Final = (files("plumbnet") / "data" / "tubes.csv").read_text(encoding="utf-8")
TUBES: Final = tuple(f"{tube.material} {tube.size}" for tube in read_tubes(_TABLE))
ODDNESS: Final = (0.0, 0.0, 0.01, 0.03, 0.1, 0.3)
EXTREMITY: Final = (0.0, 0.0, 0.03, 0.1, 0.3, 1.0)
_KINDS: Final = tuple(sorted(KINDS))
_SOURCES: Final = tuple(kind for kind in _KINDS if KINDS[kind].outlet and not KINDS[kind].through)
_HEATERS: Final = tuple(kind for kind in _KINDS if KINDS[kind].is_vessel and "setpoint_k" in KINDS[kind].model_fields)
_IN_LINE: Final = tuple(kind for kind in _KINDS if len(KINDS[kind].through) == 1 and not KINDS[kind].is_vessel)
_TEE: Final = next(kind for kind in _KINDS if KINDS[kind].is_fitting)
_MOST = 12
_JOINED = 0.75
_NOT_IN_YAML: Final = re.compile("[\x7f-\x9f]")


def generated(random: Random) -> bytes:
    """The bytes of a layout file."""
    filling = Filling(random, random.choice(ODDNESS), random.choice(EXTREMITY))
    drawing = Drawing(filling)
    drawing.declare()
    drawing.join()
    document = drawing.document()
    if random.random() < 0.05:
        return yaml.safe_dump(document, allow_unicode=random.random() < 0.5, sort_keys=False).encode()
    text = json.dumps(document, ensure_ascii=False)
    if not filling.is_odd():
        text = _NOT_IN_YAML.sub(lambda found: f"\\x{ord(found[0]):02x}", text)
    return text.encode("utf-8", "surrogatepass")


@dataclass
class Drawing:
    """A layout that comes about: parts as they are written, what the reader makes of them, runs."""

    filling: Filling
    written: dict[str, Value] = field(default_factory=dict)
    parts: dict[str, Part] = field(default_factory=dict)
    runs: list[Value] = field(default_factory=list)
    taken: set[tuple[str, str]] = field(default_factory=set)
    named: set[str] = field(default_factory=set)

    @property
    def random(self) -> Random:
        return self.filling.random

    def declare(self) -> None:
        """Parts of any kind, a supply and a heater nearly always among them, things that stand in a pipe thick."""
        random = self.random
        kinds = [*random.choices(_SOURCES, k=random.choice((1, 1, 1, 1, 2, 4))), *random.choices(_HEATERS, k=1)]
        kinds += random.choices(_IN_LINE, k=random.randrange(5)) + random.choices(_KINDS, k=random.randrange(_MOST - 4))
        kinds += [_TEE] * random.randint(1, 4)
        if self.filling.is_odd() and self.filling.is_odd():
            random.shuffle(kinds)
            del kinds[random.randrange(len(kinds)) :]
        for number, kind in enumerate(kinds):
            self._declare(self._name(kind, number), kind)

    def _name(self, kind: str, number: int) -> str:
        if not self.filling.is_odd():
            return f"{kind}{number}"
        name = self.random.choice(NAMES)
        return name if NAME.fullmatch(name) or (self.filling.is_odd() and self.filling.is_odd()) else f"{kind}{number}"

    def _declare(self, name: str, kind: str) -> None:
        values = self.filling.fields(KINDS[kind])
        try:
            self.parts[name] = make_part(kind, values, "metric")
        except ValidationError:
            if not self.filling.is_odd() and name in self.parts:
                return
        self.written[name] = {"kind": kind, **values} if values or self.random.random() < 0.9 else kind

    def join(self) -> None:
        """A chain of some parts, then each port that is left to a tee, to another port, or to nothing."""
        random = self.random
        tees = [name for name, part in self.parts.items() if part.is_fitting]
        self._chain()
        ends = [(name, port) for name, part in self.parts.items() if not part.is_fitting for port in part.port_names()]
        random.shuffle(ends)
        for name, port in ends:
            if self._is_free(name, port) and (name not in self.named or random.random() < _JOINED):
                near, far = f"{name}.{port}", self._other(name, ends, tees)
                self._pipe(*random.choice(((near, far), (far, near))))
        for first, second in zip(tees, [*tees[1:], *tees[:1]], strict=True):
            if first != second and (first not in self.named or random.random() < _JOINED):
                self._pipe(first, second)
        if not self.filling.is_odd():
            self.written = {name: values for name, values in self.written.items() if name in self.named}

    def _is_free(self, name: str, port: str) -> bool:
        has_own = any(own == port for own, _, _ in self.parts[name].fixed())
        return not (has_own or (name, port) in self.taken) or (self.filling.is_odd() and self.filling.is_odd())

    def _other(self, name: str, ends: Sequence[tuple[str, str]], tees: Sequence[str]) -> str:
        """Where a pipe from a part leads: mostly to a tee, so that much hangs together."""
        if tees and self.random.random() < _JOINED:
            return self.random.choice(tees)
        free = [end for end in ends if self._is_free(*end) and end[0] != name]
        return ".".join(self.random.choice(free)) if free else self.random.choice([*tees, name])

    def _chain(self) -> None:
        """A run from a supply through parts that have a way through, as far as it goes."""
        passing = [name for name, part in self.parts.items() if (at := part.enters_at()) and part.mate(at)]
        self.random.shuffle(passing)
        chain = [name for name, part in self.parts.items() if part.leaves_at() and not part.through][:1] + passing
        chain = chain[: self.random.randint(0, len(chain))]
        if len(chain) > 1:
            self._pipe(*chain)

    def _pipe(self, *stops: str) -> None:
        """A run, perhaps with what is known of its pipe."""
        for index, stop in enumerate(stops):
            name, dot, port = stop.rpartition(".")
            self.named.add(name if dot else stop)
            part = self.parts.get(stop)
            ports = (port,) if part is None else self._of_chain(part, index, len(stops))
            self.taken |= {(name if dot else stop, one) for one in ports if one is not None}
        random = self.random
        run: dict[str, Value] = {"path": " -> ".join(stops)}
        if random.random() < _JOINED:
            self.runs.append(run["path"])
            return
        if random.random() < _JOINED:
            run |= {"pipe": random.choice(TUBES), "length": self._of_run("length", f"{random.uniform(0, 50)} m")}
        if random.random() > _JOINED:
            run["volume"] = self._of_run("volume", f"{random.uniform(0, 50)} L")
        self.runs.append(run)

    def _of_run(self, field: str, usual: str) -> Value:
        """What is told of a pipe, as usual or at an edge of what is allowed."""
        is_usual = self.random.random() >= self.filling.extremity
        return usual if is_usual else self.filling.quantity(quantities_in(RunWithPipe)[field])

    def _of_chain(self, part: Part, index: int, count: int) -> tuple[str | None, ...]:
        """The ports that a run takes of a part it names without one."""
        if index == 0:
            return (part.leaves_at(),)
        entered = part.enters_at()
        return (entered,) if index == count - 1 or entered is None else (entered, part.mate(entered))

    def document(self) -> Value:
        """The whole file."""
        random = self.random
        document: dict[str, Value] = {"plumbnet": 1, "units": random.choice(("us", "metric"))}
        document |= {"parts": self.written, "runs": self.runs}
        if random.random() < 0.3:
            document["title"] = "".join(random.choices((*NAMES[:20], *CONTROLS, " "), k=3))
        if random.random() < 0.6:
            document["rules"] = random.choice(profile_names())
        if random.random() < 0.1:
            document["tank_sizes"] = [f"{random.uniform(0.1, 500)} L" for _ in range(random.randrange(4))]
            if random.random() < self.filling.extremity:
                document["tank_sizes"] = [self.filling.quantity(quantities_in(Document)["tank_sizes"])]
        if random.random() < 0.35:
            document["scenarios"] = scenarios(
                self.filling, self.parts, [run for run in self.runs if isinstance(run, str)]
            )
        if random.random() < 0.15:
            document["accept"] = accepted(self.filling, self.parts)
        if self.filling.is_odd() and self.filling.is_odd():
            document[random.choice(("title", "units", "rules", "runs", *NAMES))] = random.choice((*WORDS, *NUMBERS, []))
        return document
