"""Parts of heating circuits; what boilers and collectors share with heaters is tested with those."""

from usual import usual

from plumbnet.layout.model.part import Free


def test_emitter_holds_water_and_heats_nothing() -> None:
    emitter = usual("emitter", volume="20 L")
    assert emitter.heat() is None
    assert list(emitter.contents()) == [("in", 0.02)]
    assert list(emitter.passages()) == [Free("in", "out")]


def test_boilers_collectors_emitters_and_the_heating_sides_of_exchangers_carry_heat() -> None:
    held = {"volume": "20 L", "setpoint": "60 degC"}
    kinds = {
        "boiler": held,
        "solar_collector": held,
        "emitter": {"volume": "20 L"},
        "indirect_heater": held,
        "heat_exchanger": {"setpoint": "60 degC"},
        "storage_heater": held,
        "expansion_tank": {"volume": "20 L", "precharge": "1 bar"},
    }
    assert {kind: usual(kind, **fields).carries_heat_at() for kind, fields in kinds.items()} == {
        "boiler": ("return", "supply"),
        "solar_collector": ("in", "out"),
        "emitter": ("in", "out"),
        "indirect_heater": ("coil_in", "coil_out"),
        "heat_exchanger": ("primary_in", "primary_out"),
        "storage_heater": (),
        "expansion_tank": (),
    }
    glycol = {"glycol": "propylene", "share": "30 %"}
    assert usual("storage_heater", **held, antifreeze=glycol).carries_heat_at() == ("cold", "hot")
