"""What stores of water have in common, heated in them or elsewhere."""

from plumbnet.layout.model.part import Part


class Store(Part):
    """A store of water, fed from above by a dip tube or from below."""

    fed_from_below: bool | None = None
    """Whether its cold water comes in at the bottom, and not from above by a dip tube."""

    def is_fed_from_below(self) -> bool | None:
        """As its author says."""
        return self.fed_from_below
