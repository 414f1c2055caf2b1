"""The forms in which a report shows itself; who makes them stands above, and is imported once asked."""

from typing import TYPE_CHECKING

from plumbnet.layout import Shown, shown

if TYPE_CHECKING:
    from pandas import DataFrame


class Forms(Shown):
    """A report as fields for a program, as a table, as text; in a notebook as HTML."""

    __slots__ = ()

    def to_dict(self, *, remedies: bool = True) -> dict[str, object]:
        """The report as JSON has it, schema 1: SI units, gauge pressures at each heater's own height; safe to change.

        Exactly the object that stands for the file under `reports` in what `plumbnet check --format json` writes. What
        stands round the reports there (program, schema, errors) tells of many files; a service answers with its own.
        Remedies are looked for where the layout is small, as there; without `remedies` they are not, which saves
        some ten analyses for each heater in trouble, and `remedies_searched` says so.

        >>> import plumbnet
        >>> fields = plumbnet.check("systems/house-with-check.yaml").to_dict()
        >>> fields["heaters"][0]["verdict"], fields["heaters"][0]["stopped_by"], fields["findings"][0]["name"]
        ('trapped', [['check']], 'trapped-expansion')
        """
        return shown(self, "dict", dict, remedies=remedies)

    def to_frame(self) -> "DataFrame":
        """The heaters as a table of pandas, a row to each in the order of the file; needs the extra `frames`.

        The columns are those of a heater in what `plumbnet check --format csv` writes, behind the file: quantities in
        SI with the unit at the end of the name, NaN where there is none. Raises ImportError where pandas is missing.

        >>> import plumbnet
        >>> frame = plumbnet.check("systems/house-with-check.yaml").to_frame()
        >>> frame[["name", "verdict", "static_pa", "expansion_m3"]].round({"static_pa": 0, "expansion_m3": 6})
             name  verdict  static_pa  expansion_m3
        0  heater  trapped   427475.0      0.002542
        """
        return shown(self, "frame", object)

    def to_text(self) -> str:
        """What `plumbnet check` prints of it, in the units of the report; ends with a line break."""
        return shown(self, "text", str)
