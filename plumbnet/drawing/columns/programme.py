"""A linear programme with sparse rows to its least point."""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from scipy.optimize import linprog
from scipy.sparse import csr_array


@dataclass(slots=True)
class Programme:
    """Values to be found: each at least 0, with a cost; and pairs that must keep a distance."""

    costs: list[float] = field(default_factory=list)
    fixed: dict[int, float] = field(default_factory=dict)
    _columns: list[int] = field(default_factory=list)
    _factors: list[float] = field(default_factory=list)
    _starts: list[int] = field(default_factory=lambda: [0])
    _bounds: list[float] = field(default_factory=list)

    def value(self, cost: float = 0.0) -> int:
        """A new value; its number."""
        self.costs.append(cost)
        return len(self.costs) - 1

    def demand(self, above: int, below: int, distance: float, slack: int | None = None) -> None:
        """That value `below` exceed value `above` by `distance`, or by that less value `slack`."""
        self._columns += [above, below] if slack is None else [above, below, slack]
        self._factors += [1.0, -1.0] if slack is None else [1.0, -1.0, -1.0]
        self._starts.append(len(self._columns))
        self._bounds.append(-distance)

    def near(self, first: int, second: int, distance: float, weight: float) -> None:
        """That `second` should exceed `first` by `distance`, at a cost of `weight` for each unit it does not."""
        slack = self.value(weight)
        self.demand(first, second, distance, slack)
        self.demand(second, first, -distance, slack)

    def solved(self) -> Sequence[float]:
        """The values of least cost. Raises ArithmeticError where the demands contradict each other."""
        if not self._bounds:
            return [self.fixed.get(number, 0.0) for number in range(len(self.costs))]
        rows = csr_array(
            (np.array(self._factors), np.array(self._columns), np.array(self._starts)),
            shape=(len(self._bounds), len(self.costs)),
        )
        bounds = [(self.fixed.get(number, 0.0), self.fixed.get(number)) for number in range(len(self.costs))]
        answer = linprog(self.costs, A_ub=rows, b_ub=self._bounds, bounds=bounds, method="highs-ds")
        if answer.x is None:
            raise ArithmeticError(answer.message)
        return [float(value) for value in answer.x]
