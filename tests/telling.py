"""What is wrong with a layout, whether it is refused as a whole or scenarios of it are kept apart."""

import pytest

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.yaml.fault import LayoutError


def told_of(data: bytes, *, file: str = "") -> LayoutError:
    """Every mistake of a file that has some."""
    try:
        found = read_system(data, file=file)
    except LayoutError as error:
        return error
    if not found.faulty_scenarios:
        pytest.fail("nothing is wrong with it")
    return found.scenario_error(*found.faulty_scenarios)
