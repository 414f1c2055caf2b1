"""A reader with a hand calculator and a table of water: parses a printed sheet and works its formulas."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import takewhile

from plumbnet.physics.fluids.glycol import glycol_density_kg_m3
from plumbnet.physics.fluids.water import saturation_abs_pa, specific_volume_m3_kg

PASCAL_IN = {"psi abs": 6894.757293168361, "kPa abs": 1000.0}
KILOGRAM_VOLUME_IN = {"ft3/lb": 0.3048**3 / 0.45359237, "L/kg": 0.001}
_TOKEN = re.compile(r"\s*(\d+\.?\d*|[A-Za-z_]\w*|[-+*/(),])")
_NUMBER = re.compile(r"(-?\d+(?:\.\d+)?)(?: ([^(]*[^( ]))?(?: \(.*\))?")


@dataclass
class Printed:
    """A step as it stands on paper: texts of numbers and their units."""

    symbol: str
    formula: str
    result: str
    unit: str
    numbers: dict[str, str] = field(default_factory=dict)
    units: dict[str, str] = field(default_factory=dict)

    @property
    def last_digit(self) -> float:
        return float(10.0 ** -len(self.result.partition(".")[2]))

    def worked(self, mixture: tuple[str, float] | None = None) -> float:
        """The formula worked with the printed numbers, in the printed unit."""
        return _Calculator(self, mixture).worked()


class _Calculator:
    """Sums, products and brackets from left to right, and the tables of water."""

    def __init__(self, step: Printed, mixture: tuple[str, float] | None) -> None:
        self.step, self.mixture = step, mixture
        self.tokens = _TOKEN.findall(step.formula)
        assert "".join(self.tokens) == step.formula.replace(" ", "")

    def worked(self) -> float:
        value = self.sum()
        assert not self.tokens
        return value

    def sum(self) -> float:
        value = self.product()
        while self.tokens and self.tokens[0] in "+-":
            value = value + self.product() if self.tokens.pop(0) == "+" else value - self.product()
        return value

    def product(self) -> float:
        value = self.factor()
        while self.tokens and self.tokens[0] in "*/":
            value = value * self.factor() if self.tokens.pop(0) == "*" else value / self.factor()
        return value

    def factor(self) -> float:
        word = self.tokens.pop(0)
        if word == "(":
            value = self.sum()
            assert self.tokens.pop(0) == ")"
            return value
        if self.tokens[:1] == ["("]:
            return self.call(word)
        if word[0].isdigit():
            return float(word)
        return float(self.step.numbers[word])

    def call(self, name: str) -> float:
        self.tokens.pop(0)
        values = [self.sum()]
        while self.tokens[0] == ",":
            self.tokens.pop(0)
            values.append(self.sum())
        assert self.tokens.pop(0) == ")"
        if name in {"max", "min"}:
            return max(values) if name == "max" else min(values)
        return self.table(name, values)

    def table(self, name: str, values: list[float]) -> float:
        if name == "p_sat":
            (unit,) = {unit for unit in self.step.units.values() if unit in PASCAL_IN}
            return saturation_abs_pa(values[0]) / PASCAL_IN[unit]
        to_si = KILOGRAM_VOLUME_IN[self.step.unit]
        if name == "v":
            return specific_volume_m3_kg(values[0], pressure_abs_pa=values[1] * PASCAL_IN[self.step.units["p"]]) / to_si
        assert name == "v_mix"
        assert self.mixture is not None
        glycol, share = self.mixture
        assert glycol in {"propylene", "ethylene"}
        return (
            1.0 / glycol_density_kg_m3("propylene" if glycol == "propylene" else "ethylene", share, values[0]) / to_si
        )


def number(text: str) -> tuple[str, str]:
    """A printed number and its unit."""
    found = _NUMBER.fullmatch(text.strip())
    assert found, text
    return found[1], found[2] or ""


_STEP = re.compile(r"(?P<what>.*)\]: (?P<symbol>\w+) = (?P<formula>.*?)(?: = (?P<worked>.*))? = (?P<result>[^=]+)")
_SYMBOL = re.compile(r"([A-Za-z]\w*)(?!\w*\()")


def in_text(sheet: str) -> list[Printed]:
    """The steps of a sheet printed as text, units of numbers only where a table is entered with them."""
    found = []
    lines = sheet.splitlines()
    for at, line in enumerate(lines):
        if not re.match(r" ?\d+\. ", line):
            continue
        words = " ".join(each.strip() for each in [line, *_until_next(lines[at + 1 :])])
        stands = _STEP.fullmatch(words)
        assert stands, words
        step = Printed(stands["symbol"], stands["formula"], *number(stands["result"]))
        _add(step, list(_put_in(step.formula, stands["worked"] or step.result)))
        found.append(step)
    return found


def _put_in(formula: str, worked: str) -> Iterator[str]:
    """What stands for each symbol of a formula where it is written with numbers."""
    pieces = _SYMBOL.split(formula)
    seen: dict[str, int] = {}
    pattern = ""
    for at, piece in enumerate(pieces):
        if at % 2 == 0:
            pattern += re.escape(piece)
        elif piece in seen:
            pattern += f"(?P=n{seen[piece]})"
        else:
            pattern += f"(?P<n{at}>.+?)"
            seen[piece] = at
    stands = re.fullmatch(pattern, worked)
    assert stands, (formula, worked)
    yield from (f"{symbol} = {stands[f'n{at}']}" for symbol, at in seen.items())


def _until_next(lines: list[str]) -> list[str]:
    return list(takewhile(lambda line: line.startswith("    "), lines))


def in_markdown(sheet: str) -> list[Printed]:
    """The steps of a sheet printed as Markdown."""
    found = []
    for line in sheet.splitlines():
        cells = re.split(r"(?<!\\)\|", line)[1:-1]
        if len(cells) != 6 or not cells[0].strip().isdigit():
            continue
        symbol, formula = cells[2].strip().strip("`").split(" = ", 1)
        step = Printed(symbol, formula, *number(cells[4].strip().strip("*")))
        _add(step, cells[3].strip().replace("`", "").split("<br>") if cells[3].strip() else [])
        found.append(step)
    return found


def _add(step: Printed, numbers: list[str]) -> None:
    for each in numbers:
        symbol, text = each.split(" = ", 1)
        step.numbers[symbol], step.units[symbol] = number(text)
