"""Requirements on growth that has nowhere to go, or goes where it should not."""
