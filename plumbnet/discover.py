"""Imports every module of a package and of its folders in name order, so that what they declare is registered."""

import importlib
import pkgutil
from types import ModuleType


def discover(package: ModuleType) -> None:
    """Import all modules below `package`, sorted by their own name; registers fill in the same order everywhere."""
    found = [
        module.name for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}.") if not module.ispkg
    ]
    for name in sorted(found, key=lambda each: each.rsplit(".", 1)[1]):
        importlib.import_module(name)
