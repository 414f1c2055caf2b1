"""Names of the invented town of Lantern Falls: its streets, its buildings, and the rooms in them."""

from random import Random

TOWN = "Lantern Falls"
STREETS = (
    "Heron Lane",
    "Quarry Street",
    "Lockkeeper's Row",
    "Upper Ferry Street",
    "Clay Pit Road",
    "Sawmill Lane",
    "Bell Street",
    "Copper Hill",
    "Long Acre",
    "Ropewalk",
    "Millrace Street",
    "Lamplighter Court",
)
BUILDINGS = (
    "",
    "",
    "",
    "Tea room",
    "Barber shop",
    "Reading room",
    "Potter's workshop",
    "Flower shop",
    "Dog groomer's",
    "Village hall",
    "Bicycle shop",
    "Dentist's practice",
    "Cookshop",
    "Rowing club",
)
"""Kinds of building; the empty ones are dwellings."""
LARGE_BUILDINGS = ("Fire house", "Youth hostel", "Guest house", "Music school", "Ferry crew's lodging", "Care home")
ROOMS = ("kitchen", "bath", "basin", "laundry", "shower", "sink", "washroom", "scullery")
"""Where people draw water; a part is called by one of them."""


def address(chance: Random, *, large: bool = False) -> str:
    """A building in the town, as a title."""
    building = chance.choice(LARGE_BUILDINGS if large else BUILDINGS)
    place = f"{chance.randint(1, 60)} {chance.choice(STREETS)}, {TOWN}"
    return f"{building}, {place}" if building else place
