"""A place by its name."""

from conftest import drawn

from plumbnet.analysis.required_tank.place import in_pipe, inlet_pipe, place_named


def test_part_and_pipe_are_found_by_name_and_nothing_else_is() -> None:
    network = drawn("street -> cv -> tee -> heater -> tap.hot").network
    tee, pipe = place_named(network, "tee", "here"), place_named(network, "tee -> heater", "here")
    assert tee is not None
    assert (tee.name, network.piping.ports[tee.node].part, tee.why) == ("tee", "tee", "here")
    assert pipe is not None
    assert network.piping.ports[pipe.node].part == "heater"
    assert place_named(network, "cv -> heater", "") is None


def test_pipe_has_the_height_of_the_heater_whichever_way_it_was_drawn() -> None:
    network = drawn("street -> cv -> tee -> tap.cold\nheater.cold -> tee\nheater.hot -> tap2.hot").network
    heights = {
        pipe.name: network.piping.ports[in_pipe(network, pipe, "").node].part for pipe in network.piping.system.pipes
    }
    assert heights["heater -> tee"] == "heater"
    assert heights["cv -> tee"] == "tee"


def test_heater_without_a_cold_pipe_is_the_place_itself() -> None:
    network = drawn("heater -> tap.hot\nstreet -> tap.cold").network
    assert inlet_pipe(network, network.heated[0], "").name == "heater"
