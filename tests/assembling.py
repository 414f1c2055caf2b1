"""Layouts with assemblies in a line or two, written out."""

from plumbnet.layout.assemblies.told_once import TextSource, ToldOnce
from plumbnet.layout.assemblies.writing_order import written_out
from plumbnet.layout.assemblies.writing_out import WrittenOut
from plumbnet.layout.model.runs import Stop
from plumbnet.layout.units.units import Units
from plumbnet.layout.yaml.source import parse_yaml


def told_and_written(text: str, *others: str, units: Units = "us") -> tuple[list[str], WrittenOut | None]:
    """What is wrong with a layout, and what it comes to; `others` are files that bring assemblies."""
    roots = [parse_yaml(f"plumbnet: 1\n{one}", []) for one in (text, *others)]
    sources = [TextSource(f"file{number}", root) for number, root in enumerate(roots) if root is not None]
    told = ToldOnce(sources)
    out = written_out(sources, units, told)
    return [str(mistake) for _source, mistake, _stop in told.all()], out


def written(text: str, *others: str) -> WrittenOut:
    """All that a layout comes to."""
    told, out = told_and_written(text, *others)
    assert told == []
    assert out is not None
    return out


def chains(text: str) -> list[str]:
    """Its chains, each as a run."""
    out = written(text)
    return [
        " -> ".join(_named("" if where is None else where.prefix, stop) for stop in chain.stops)
        for chain, where in out.chains
    ]


def _named(prefix: str, stop: Stop) -> str:
    return f"{prefix}{stop.name}" + (f".{stop.port}" if stop.port else "")
