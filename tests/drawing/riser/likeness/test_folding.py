from random import Random

import pytest
from tall_buildings import altered, random_tower, tall, tower

TEXT = tower(storeys=6, shafts=2)


def test_alike_flats_fold_and_the_lowest_is_drawn_out() -> None:
    building = tall(TEXT)
    (fold,) = building.folding.folds
    assert fold.letter == "A"
    assert len(fold.members) == 12
    assert building.structure.components[fold.shown].level == 1


def test_shafts_fold_from_so_many_on() -> None:
    assert [shaft.count for shaft in tall(TEXT, least=3).folding.shafts] == [1, 1]
    assert [shaft.count for shaft in tall(TEXT, least=2).folding.shafts] == [2]


def test_the_one_that_sets_a_limit_is_drawn_out() -> None:
    for seed in range(4):
        building = tall(random_tower(seed))
        limits = {name for name, one in building.structure.building.parts.items() if one.is_limit}
        for fold in building.folding.folds:
            members = {n for n in fold.members if not limits.isdisjoint(building.structure.components[n].members)}
            drawn = {number for shaft in building.folding.shafts for number in shaft.branches}
            assert fold.shown in members or members.isdisjoint(drawn)


@pytest.mark.parametrize("seed", range(4))
def test_counts_add_up(seed: int) -> None:
    building = tall(random_tower(seed), least=2)
    shafts, branches = building.folding.shafts, building.likeness.branches
    assert sum(shaft.count for shaft in shafts) == len(building.structure.shafts)
    assert sorted(place for shaft in shafts for place in (shaft.place, *shaft.others)) == list(
        range(sum(s.count for s in shafts))
    )
    told = [number for fold in building.folding.folds for number in fold.members]
    assert len(told) == len(set(told))
    assert building.folding.shown <= branches.keys()


def test_order_of_the_file_does_not_change_folds() -> None:
    head, _, rest = tower(storeys=5, shafts=3).partition("parts:\n")
    parts, _, runs = rest.partition("runs:\n")
    lines = parts.splitlines(keepends=True)
    Random(7).shuffle(lines)  # noqa: S311  no secret
    shuffled = f"{head}parts:\n{''.join(lines)}runs:\n{''.join(reversed(runs.splitlines(keepends=True)))}"
    one, other = tall(head + "parts:\n" + rest), tall(shuffled)

    def folds(building: object) -> list[frozenset[str]]:
        assert isinstance(building, type(one))
        components = building.structure.components
        return sorted(
            (
                frozenset(name for n in fold.members for name in components[n].members)
                for fold in building.folding.folds
            ),
            key=sorted,
        )

    assert folds(one) == folds(other)
    assert sorted(shaft.count for shaft in one.folding.shafts) == sorted(shaft.count for shaft in other.folding.shafts)


def test_an_odd_flat_has_no_letter() -> None:
    odd = altered(
        TEXT, ("h3a -> flat3a.hot", "h3a -> own-stop -> flat3a.hot"), ("runs:\n", "  own-stop: valve\nruns:\n")
    )
    assert tall(odd).letter("flat3a") is None
    assert tall(odd).letter("flat2a") == tall(odd).letter("flat2b") == "A"
