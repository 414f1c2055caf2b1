"""Imports every module of a package in name order, so that what they declare is registered."""

import importlib
import pkgutil
from types import ModuleType


def discover(package: ModuleType) -> None:
    """Import all modules below `package`, sorted by name; registers fill in the same order everywhere."""
    found = sorted(module.name for module in pkgutil.iter_modules(package.__path__))
    for name in found:
        importlib.import_module(f"{package.__name__}.{name}")
