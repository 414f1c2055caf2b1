import pytest
from usual import usual

from plumbnet.layout.model.inside import Inner, Inside
from plumbnet.layout.model.instance import indoors, instance_of
from plumbnet.layout.model.part import Part
from plumbnet.layout.model.runs import Joint, Stop
from plumbnet.layout.model.system import End

WRITTEN = {"kind": "safety_group", "set": "7 bar", "elevation": "2 m"}
GROUP = instance_of("group", usual("safety_group"), WRITTEN, "metric", line=7)


def test_part_of_one_piece_opens_into_nothing() -> None:
    assert instance_of("stop", usual("valve"), {"kind": "valve"}, "metric") is None


# in >-- valve --|>-- branch --> out
#                       `-- relief
def test_group_opens_into_parts_named_after_it_and_pipes_of_its_line() -> None:
    assert GROUP is not None
    assert list(GROUP.parts) == ["group/valve", "group/check", "group/branch", "group/relief"]
    assert [pipe.name for pipe in GROUP.pipes] == [
        "group/valve -> group/check",
        "group/check -> group/branch",
        "group/branch -> group/relief",
    ]
    assert {pipe.line for pipe in GROUP.pipes} == {7}
    assert {part.elevation_m for part in GROUP.parts.values()} == {2.0}
    assert GROUP.written["group/relief"]["pressure"] == "7 bar"


def test_run_that_names_the_whole_joins_the_ports_inside() -> None:
    assert GROUP is not None
    stop = Stop("group", None, 0, 5)
    joint = indoors({"group": GROUP}, Joint(End("street", "out"), End("group", "in"), stop, stop))
    assert (joint.start, joint.end) == (End("street", "out"), End("group/valve", "in"))
    assert GROUP.outdoors(joint.end) == End("group", "in")
    assert GROUP.outdoors(End("street", "out")) == End("street", "out")


def test_kind_whose_run_cannot_be_laid_is_refused_where_it_is_declared() -> None:
    class Broken(Part):
        opens_into = Inside({"valve": Inner("valve")}, ("valve -> nowhere",), {})

    with pytest.raises(ValueError, match="a kind opens into a run that cannot be laid, at nowhere"):
        instance_of("broken", Broken(), {}, "metric")
