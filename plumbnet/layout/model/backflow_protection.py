"""How a device keeps water from coming back: its sort of protection, which codes name, and a rank among the sorts.

The order is that of EN 1717, whose letters stand beside each, and of the North American standards for the same devices
(from memory). A code that asks for a sort by name, as for a double check or a reduced-pressure assembly and not for a
vented dual check between them in rank, is held to the names; only one that asks for "no less than" is held to ranks.
"""

from enum import StrEnum


class BackflowProtection(StrEnum):
    """The sorts of protection against backflow, from the least to the greatest."""

    VACUUM_BREAKER = "vacuum breaker"
    """A check with an air inlet (ASSE 1020): against back-siphonage only."""
    SINGLE_CHECK = "single check"
    """One check valve (EN 1717: EA, EB)."""
    DUAL_CHECK = "dual check"
    """Two checks in one body that nobody can test (ASSE 1024)."""
    DOUBLE_CHECK = "double check"
    """Two checks that can be tested (ASSE 1015; EN 1717: EC, ED)."""
    VENTED_DUAL_CHECK = "vented dual check"
    """Two checks with a vent to the air between them (ASSE 1012, CSA B64.3; EN 14367: CA)."""
    REDUCED_PRESSURE = "reduced pressure"
    """Two checks with a relief port that keeps the space between them below the supply (ASSE 1013; EN 12729: BA)."""
    AIR_GAP = "air gap"
    """Water falls through open air (EN 1717: AA)."""

    @property
    def rank(self) -> int:
        """Its place in the order, from 1; compare ranks only where a code asks for a least degree of protection.

        >>> BackflowProtection.AIR_GAP.rank > BackflowProtection.REDUCED_PRESSURE.rank
        True
        """
        return list(BackflowProtection).index(self) + 1

    @property
    def bears_backpressure(self) -> bool:
        """Whether it holds against a building that stands above its supply, and not against suction alone."""
        return self is not BackflowProtection.VACUUM_BREAKER

    @property
    def vents(self) -> bool:
        """Whether what leaks back through it runs to the open air, where it is seen, and not on."""
        return self.rank >= BackflowProtection.VENTED_DUAL_CHECK.rank
