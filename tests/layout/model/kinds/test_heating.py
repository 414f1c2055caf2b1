"""Parts of heating circuits; what boilers and collectors share with heaters is tested with those."""

from usual import usual

from plumbnet.layout.model.part import Free


def test_emitter_holds_water_and_heats_nothing() -> None:
    emitter = usual("emitter", volume="20 L")
    assert emitter.heat() is None
    assert list(emitter.contents()) == [("in", 0.02)]
    assert list(emitter.passages()) == [Free("in", "out")]
