"""What each layout in systems/ must answer, written down from reasoning before the program was asked.

`Answer` is the verdict, the first of the smallest sets of devices that stop the water, and what opens first
with its pressure at the heater, in the units of the file (psi, or kPa where the file is metric).
"""

from dataclasses import dataclass, field
from typing import NamedTuple

OPEN, CONTROLLED, TRAPPED, SEALED, ON_DEMAND = "open", "controlled", "trapped", "sealed", "on-demand"

Rung = tuple[str, float] | None


class Answer(NamedTuple):
    verdict: str
    stopped_by: tuple[str, ...]
    opens_first: Rung


@dataclass(frozen=True)
class Expected:
    heaters: dict[str, Answer]
    findings: tuple[str, ...] = ()
    """Names, as often as they are found, sorted."""
    scenarios: dict[str, dict[str, Answer]] = field(default_factory=dict)
    scenario_findings: dict[str, tuple[str, ...]] = field(default_factory=dict)


RELIEF = ("heater/relief", 150.0)

THREE_TAPS = ("static-above-limit",) * 3

OPEN_HOUSE = Expected(
    {"heater": Answer(OPEN, (), ("street", 62.0))},
    scenarios={
        "stop-left-shut": {"heater": Answer(TRAPPED, ("house-stop",), RELIEF)},
        "meter-exchanged": {"heater": Answer(TRAPPED, ("meter",), RELIEF)},
    },
    scenario_findings={"stop-left-shut": ("trapped-expansion",), "meter-exchanged": ("trapped-expansion",)},
)

HOUSE_WITH_CHECK = Expected(
    {"heater": Answer(TRAPPED, ("check",), RELIEF)},
    ("trapped-expansion",),
    scenarios={
        "tank-fitted": {"heater": Answer(CONTROLLED, ("check",), ("tank", 62.0))},
        "check-leaks": {"heater": Answer(OPEN, (), ("street", 62.0))},
        # The running shower stands 14 ft above the heater: 14 x 0.4335 psi.
        "shower-runs": {"heater": Answer(OPEN, (), ("shower", 6.07))},
    },
    scenario_findings={"tank-fitted": (), "check-leaks": (), "shower-runs": ()},
)

DUAL_CHECK_METER = Expected(
    {"heater": Answer(TRAPPED, ("dual-check",), RELIEF)},
    ("trapped-expansion",),
    scenarios={
        # Eight feet below the street: 58 + 8 x 0.4335 psi.
        "old-setter": {"heater": Answer(OPEN, (), ("street", 61.47))},
        "tank-fitted": {"heater": Answer(CONTROLLED, ("dual-check",), ("tank", 61.47))},
    },
    scenario_findings={"old-setter": (), "tank-fitted": ()},
)

REDUCER_WITHOUT_BYPASS_MAIN_BELOW_LIMIT = Expected(
    {"heater": Answer(TRAPPED, ("reducer",), RELIEF)},
    ("trapped-expansion",),
    scenarios={
        "main-falls": {"heater": Answer(TRAPPED, ("reducer",), RELIEF)},
        "reducer-exchanged": {"heater": Answer(OPEN, (), ("street", 74.0))},
    },
    scenario_findings={"main-falls": ("trapped-expansion",), "reducer-exchanged": ()},
)

REDUCER_WITH_BYPASS_MAIN_BELOW_LIMIT = Expected(
    {"heater": Answer(OPEN, (), ("street", 74.0))},
    scenarios={
        "bypass-stuck": {"heater": Answer(TRAPPED, ("reducer",), RELIEF)},
        "meter-exchanged": {"heater": Answer(TRAPPED, ("meter",), RELIEF)},
        "main-raised": {"heater": Answer(TRAPPED, ("reducer",), ("street", 95.0))},
    },
    scenario_findings={
        "bypass-stuck": ("trapped-expansion",),
        "meter-exchanged": ("trapped-expansion",),
        "main-raised": ("trapped-expansion",),
    },
)

REDUCER_WITHOUT_BYPASS_MAIN_ABOVE_LIMIT = Expected(
    {"heater": Answer(TRAPPED, ("reducer",), RELIEF)},
    ("trapped-expansion",),
    scenarios={
        "tank-fitted": {"heater": Answer(CONTROLLED, ("reducer",), ("tank", 60.0))},
        "tank-charged-to-the-street": {"heater": Answer(TRAPPED, ("reducer",), ("tank", 118.0))},
        "reducer-set-too-high": {"heater": Answer(TRAPPED, ("reducer",), RELIEF)},
    },
    scenario_findings={
        "tank-fitted": (),
        "tank-charged-to-the-street": ("tank-charge-differs", "tank-too-small"),
        "reducer-set-too-high": ("static-above-limit", "static-above-limit", "trapped-expansion"),
    },
)

REDUCER_WITH_BYPASS_MAIN_ABOVE_LIMIT = Expected(
    {"heater": Answer(TRAPPED, ("reducer",), ("street", 118.0))},
    ("trapped-expansion",),
    scenarios={
        "main-lowered": {"heater": Answer(OPEN, (), ("street", 76.0))},
        "tank-fitted": {"heater": Answer(CONTROLLED, ("reducer",), ("tank", 60.0))},
    },
    scenario_findings={"main-lowered": (), "tank-fitted": ()},
)

MAIN_ABOVE_LIMIT = Expected(
    {"heater": Answer(TRAPPED, ("dual-check",), RELIEF)},
    (*THREE_TAPS, "trapped-expansion"),
    scenarios={
        "reducer-then-tank": {"heater": Answer(CONTROLLED, ("dual-check", "reducer"), ("tank", 55.0))},
        "dual-check-taken-out": {"heater": Answer(OPEN, (), ("street", 96.0))},
    },
    scenario_findings={"reducer-then-tank": (), "dual-check-taken-out": THREE_TAPS},
)

BAKERY_TANK_RIGHT = Expected(
    {"heater": Answer(CONTROLLED, ("meter", "reducer"), ("tank", 50.0))},
    scenarios={
        "tank-stop-shut": {"heater": Answer(TRAPPED, ("meter", "reducer"), RELIEF)},
        "tank-stop-locked": {"heater": Answer(CONTROLLED, ("meter", "reducer"), ("tank", 50.0))},
        "membrane-fails": {"heater": Answer(TRAPPED, ("meter", "reducer"), RELIEF)},
    },
    scenario_findings={
        "tank-stop-shut": ("tank-cut-off", "trapped-expansion"),
        "tank-stop-locked": (),
        "membrane-fails": ("tank-waterlogged", "trapped-expansion"),
    },
)

BAKERY_TANK_TOO_SMALL = Expected(
    {"heater": Answer(TRAPPED, ("meter", "reducer"), ("tank", 50.0))},
    ("tank-too-small",),
    scenarios={
        "larger-tank": {"heater": Answer(CONTROLLED, ("meter", "reducer"), ("tank", 50.0))},
        # Both tanks begin at once; the first by name is listed first.
        "second-tank": {"heater": Answer(CONTROLLED, ("meter", "reducer"), ("second-tank", 50.0))},
        "turned-down": {"heater": Answer(TRAPPED, ("meter", "reducer"), ("tank", 50.0))},
    },
    scenario_findings={"larger-tank": (), "second-tank": (), "turned-down": ("tank-too-small",)},
)

BAKERY_TANK_CUT_OFF = Expected(
    {"heater": Answer(TRAPPED, ("meter", "reducer"), RELIEF)},
    ("tank-cut-off", "trapped-expansion"),
    scenarios={"tank-moved": {"heater": Answer(CONTROLLED, ("meter", "reducer"), ("tank", 50.0))}},
    scenario_findings={"tank-moved": ()},
)

BAKERY_TANK_ON_HOT_SIDE = Expected(
    {"heater": Answer(CONTROLLED, ("meter", "reducer"), ("tank", 50.0))},
    ("tank-on-hot-side",),
    scenarios={"tank-moved": {"heater": Answer(CONTROLLED, ("meter", "reducer"), ("tank", 50.0))}},
    scenario_findings={"tank-moved": ()},
)

BAKERY_TANKS_WORN_OUT = Expected(
    # Charged to 40 on a line of 50, the new tank begins at the 50 it stands under.
    {"heater": Answer(TRAPPED, ("meter", "reducer"), ("new-tank", 50.0))},
    ("tank-charge-differs", "tank-too-small", "tank-waterlogged"),
    scenarios={
        "charged-to-the-line": {"heater": Answer(CONTROLLED, ("meter", "reducer"), ("new-tank", 50.0))},
        "charged-too-high": {"heater": Answer(TRAPPED, ("meter", "reducer"), ("new-tank", 75.0))},
    },
    scenario_findings={
        "charged-to-the-line": ("tank-waterlogged",),
        "charged-too-high": ("tank-charge-differs", "tank-too-small", "tank-waterlogged"),
    },
)

TANKLESS_ALONE = Expected(
    {"heater": Answer(ON_DEMAND, ("dual-check",), RELIEF)},
    scenarios={
        "comfort-pump": {"heater": Answer(TRAPPED, ("dual-check",), RELIEF)},
        "shower-runs": {"heater": Answer(OPEN, (), ("shower", 2.17))},  # 5 ft x 0.4335 psi
    },
    scenario_findings={"comfort-pump": ("tankless-in-loop", "trapped-expansion"), "shower-runs": ()},
)

CLINIC = Expected(
    {
        "heater-1": Answer(TRAPPED, ("rp",), ("heater-1/relief", 1000.0)),
        "heater-2": Answer(TRAPPED, ("rp",), ("heater-1/relief", 1000.0)),
    },
    ("tankless-in-loop", "tankless-in-loop", "trapped-expansion", "trapped-expansion"),
    scenarios={
        "pump-stopped": {
            "heater-1": Answer(ON_DEMAND, ("rp",), ("heater-1/relief", 1000.0)),
            "heater-2": Answer(ON_DEMAND, ("rp",), ("heater-1/relief", 1000.0)),
        },
        "tank-fitted": {
            "heater-1": Answer(CONTROLLED, ("rp",), ("tank", 420.0)),
            "heater-2": Answer(CONTROLLED, ("rp",), ("tank", 420.0)),
        },
    },
    scenario_findings={"pump-stopped": (), "tank-fitted": ("tankless-in-loop", "tankless-in-loop")},
)

TWO_HEATERS_ONE_TANK = Expected(
    {
        "heater-a": Answer(CONTROLLED, ("meter",), ("tank", 58.0)),
        "heater-b": Answer(CONTROLLED, ("meter",), ("tank", 58.0)),
    },
    scenarios={
        "heater-a-shut-off": {
            "heater-a": Answer(TRAPPED, ("cold-a", "meter"), ("heater-a/relief", 125.0)),
            "heater-b": Answer(CONTROLLED, ("meter",), ("tank", 58.0)),
        },
        "cold-a-shut": {
            "heater-a": Answer(CONTROLLED, ("meter",), ("tank", 58.0)),
            "heater-b": Answer(CONTROLLED, ("meter",), ("tank", 58.0)),
        },
    },
    scenario_findings={"heater-a-shut-off": ("trapped-expansion",), "cold-a-shut": ()},
)

TWO_HEATERS_OWN_CHECKS = Expected(
    {
        "heater-a": Answer(TRAPPED, ("check-a", "meter"), ("heater-a/relief", 125.0)),
        "heater-b": Answer(TRAPPED, ("check-a", "meter"), ("heater-a/relief", 125.0)),
    },
    ("tank-cut-off", "trapped-expansion", "trapped-expansion"),
    scenarios={
        "tank-moved-to-heater-a": {
            "heater-a": Answer(CONTROLLED, ("check-a", "meter"), ("tank", 58.0)),
            "heater-b": Answer(CONTROLLED, ("check-a", "meter"), ("tank", 58.0)),
        },
        "one-check-taken-out": {
            "heater-a": Answer(CONTROLLED, ("meter",), ("tank", 58.0)),
            "heater-b": Answer(CONTROLLED, ("meter",), ("tank", 58.0)),
        },
    },
    scenario_findings={"tank-moved-to-heater-a": (), "one-check-taken-out": ()},
)

MIXING_VALVE_WITHOUT_CHECKS = Expected(
    {"heater": Answer(OPEN, (), ("street", 60.0))},
    ("open-only-by-crossover",),
    scenarios={
        "checks-fitted": {"heater": Answer(TRAPPED, ("check",), RELIEF)},
        "cold-check-taken-out": {"heater": Answer(OPEN, (), ("street", 60.0))},
    },
    scenario_findings={"checks-fitted": ("trapped-expansion",), "cold-check-taken-out": ()},
)

MIXING_VALVE_WITH_CHECKS = Expected(
    {"heater": Answer(TRAPPED, ("check",), RELIEF)},
    ("trapped-expansion",),
    scenarios={
        "checks-worn": {"heater": Answer(OPEN, (), ("street", 60.0))},
        "tank-fitted": {"heater": Answer(CONTROLLED, ("check",), ("tank", 60.0))},
    },
    scenario_findings={"checks-worn": ("open-only-by-crossover",), "tank-fitted": ()},
)

CROSSOVER_AT_A_FIXTURE = Expected(
    {"heater": Answer(OPEN, (), ("street", 66.0))},
    ("open-only-by-crossover",),
    scenarios={
        "bowl-mended": {"heater": Answer(TRAPPED, ("check",), RELIEF)},
        "bowl-mended-and-tank-fitted": {"heater": Answer(CONTROLLED, ("check",), ("tank", 66.0))},
        "second-bowl-worn": {"heater": Answer(OPEN, (), ("street", 66.0))},
    },
    scenario_findings={
        "bowl-mended": ("trapped-expansion",),
        "bowl-mended-and-tank-fitted": (),
        "second-bowl-worn": ("open-only-by-crossover",),
    },
)

WELL_WITH_CHECKED_SOFTENER = Expected(
    # A well takes nothing back, so there is no way out at all that a device could stand in.
    {"heater": Answer(TRAPPED, (), RELIEF)},
    ("tank-cut-off", "trapped-expansion"),
    scenarios={
        "softener-without-check": {"heater": Answer(CONTROLLED, (), ("well-tank", 60.0))},
        "tank-fitted": {"heater": Answer(CONTROLLED, (), ("tank", 60.0))},
    },
    scenario_findings={"softener-without-check": (), "tank-fitted": ()},
)

BOOSTED = ("booster", "double-check")
TOWER = Expected(
    {
        # 68 psi in the basement less 94 ft x 0.4335 psi.
        "heater-1": Answer(CONTROLLED, BOOSTED, ("tank", 27.25)),
        "heater-2": Answer(CONTROLLED, BOOSTED, ("tank", 27.25)),
    },
    scenarios={
        "charged-as-in-the-basement": {
            "heater-1": Answer(TRAPPED, BOOSTED, ("tank", 68.0)),
            "heater-2": Answer(TRAPPED, BOOSTED, ("tank", 68.0)),
        },
        "tank-in-the-basement": {
            "heater-1": Answer(TRAPPED, BOOSTED, ("tank", 27.25)),
            "heater-2": Answer(TRAPPED, BOOSTED, ("tank", 27.25)),
        },
    },
    scenario_findings={
        "charged-as-in-the-basement": ("tank-charge-differs", "tank-too-small", "tank-too-small"),
        "tank-in-the-basement": ("tank-too-small", "tank-too-small"),
    },
)

FILLED = ("dual-check", "fill-reducer", "fill-rp")
BOILER_LOOP = Expected(
    {
        "indirect": Answer(CONTROLLED, ("dual-check",), ("tap-tank", 55.0)),
        "boiler": Answer(CONTROLLED, FILLED, ("heating-tank", 12.0)),
    },
    scenarios={
        "heating-tank-waterlogged": {
            "indirect": Answer(CONTROLLED, ("dual-check",), ("tap-tank", 55.0)),
            "boiler": Answer(TRAPPED, FILLED, ("boiler/relief", 30.0)),
        },
        "fill-turned-up": {
            "indirect": Answer(CONTROLLED, ("dual-check",), ("tap-tank", 55.0)),
            "boiler": Answer(TRAPPED, FILLED, ("heating-tank", 22.0)),
        },
        "tap-tank-waterlogged": {
            "indirect": Answer(TRAPPED, ("dual-check",), ("indirect/relief", 150.0)),
            "boiler": Answer(CONTROLLED, FILLED, ("heating-tank", 12.0)),
        },
    },
    scenario_findings={
        "heating-tank-waterlogged": ("tank-waterlogged", "trapped-expansion"),
        "fill-turned-up": ("tank-charge-differs", "tank-too-small"),
        "tap-tank-waterlogged": ("tank-waterlogged", "trapped-expansion"),
    },
)

CISTERN = Expected(
    # The surface stands 6.7 m above the cylinder, the rim of the vent 7.3 m: 9.807 kPa a metre.
    {"cylinder": Answer(OPEN, (), ("cistern", 65.7))},
    # The surface stands 3.7 m above the bath and 3.2 m above the basin: 36 and 31 kPa, for want of 55 (8 psi).
    ("tap-below-least", "tap-below-least"),
    scenarios={
        "check-in-the-feed": {"cylinder": Answer(OPEN, (), ("vent", 71.6))},
        "vent-frozen": {"cylinder": Answer(OPEN, (), ("cistern", 65.7))},
        "both": {"cylinder": Answer(SEALED, ("feed-check",), None)},
    },
    scenario_findings={
        "check-in-the-feed": ("tap-below-least", "tap-below-least"),
        "vent-frozen": ("tap-below-least", "tap-below-least"),
        "both": ("relief-missing", "sealed-heater", "tap-below-least", "tap-below-least"),
    },
)

HILL_HOUSE = Expected(
    # At night 70 psi stand at the tank, which was charged to the afternoon's 48; in the morning 34 psi reach 78 ft,
    # above the cloakroom at 64 and below the lantern at 82.
    {"heater": Answer(CONTROLLED, ("dual-check",), ("tank", 70.0))},
    ("tank-charge-differs", "tap-below-least", "tap-without-water"),
    scenarios={
        "charged-for-the-night": {"heater": Answer(CONTROLLED, ("dual-check",), ("tank", 70.0))},
        "afternoon-alone": {"heater": Answer(CONTROLLED, ("dual-check",), ("tank", 48.0))},
    },
    scenario_findings={
        "charged-for-the-night": ("tap-below-least", "tap-without-water"),
        # 48 psi less 82 x 0.4335 leave 12.5 at the lantern, and nobody hears of night or morning.
        "afternoon-alone": (),
    },
)

MILL = Expected(
    # 13 m weigh 127 kPa, more than the 120 of the fill. Of 90 kPa 31 stand at 6 m: 132 absolute, under which water
    # boils at 107.5 degC, below the setpoint of 109; at the boiler 191 kPa keep it liquid up to 119.
    {
        "loft-boiler": Answer(CONTROLLED, (), ("loft-tank", 120.0)),
        "drying-boiler": Answer(CONTROLLED, (), ("drying-tank", 90.0)),
    },
    ("circuit-not-full", "circuit-top-below-least", "loop-above-boiling"),
    scenarios={
        "filled-to-the-top": {
            "loft-boiler": Answer(CONTROLLED, (), ("loft-tank", 160.0)),
            "drying-boiler": Answer(CONTROLLED, (), ("drying-tank", 130.0)),
        },
        "drying-cooler": {
            "loft-boiler": Answer(CONTROLLED, (), ("loft-tank", 120.0)),
            "drying-boiler": Answer(CONTROLLED, (), ("drying-tank", 90.0)),
        },
    },
    scenario_findings={"filled-to-the-top": (), "drying-cooler": ("circuit-not-full",)},
)

EXPANSION_RELIEF = Expected(
    {"heater": Answer(CONTROLLED, ("reducer",), ("spill", 75.0))},
    scenarios={
        "stuck-with-scale": {"heater": Answer(TRAPPED, ("reducer",), RELIEF)},
        "set-too-high": {"heater": Answer(TRAPPED, ("reducer",), ("spill", 100.0))},
    },
    scenario_findings={"stuck-with-scale": ("trapped-expansion",), "set-too-high": ("trapped-expansion",)},
)

EXPANSION_RELIEF_WRONGLY_SET = Expected(
    # Ten feet down 64.3 psi stand on a valve set to 62; read at the heater it opens at 62 - 10 x 0.4335 psi.
    # The pressure rests at the static 60, so the growth is let off below the limit, at a price.
    {"heater": Answer(CONTROLLED, ("meter",), ("cellar-spill", 57.66))},
    ("expansion-relief-above-safety", "expansion-relief-below-static"),
    scenarios={
        "cellar-spill-taken-out": {"heater": Answer(TRAPPED, ("meter",), ("heater/relief", 125.0))},
        "set-right": {"heater": Answer(CONTROLLED, ("meter",), ("heater-spill", 75.0))},
    },
    scenario_findings={
        "cellar-spill-taken-out": ("expansion-relief-above-safety", "trapped-expansion"),
        "set-right": (),
    },
)

# Twenty-two feet up, the street's 62 psi are 62 - 22 x 0.4335; a relief valve set to 55 may stand under 49.5.
OPEN_TO_62 = Answer(OPEN, (), ("street", 62.0))
BOARDING_HOUSE = {
    "cellar": OPEN_TO_62,
    "laundry": OPEN_TO_62,
    "annex": OPEN_TO_62,
    "attic": Answer(OPEN, (), ("street", 52.46)),
}
RELIEF_VALVES_WRONGLY_CHOSEN = Expected(
    BOARDING_HOUSE,
    ("relief-above-rating", "relief-below-input", "relief-near-static", "relief-opens-hot"),
    scenarios={"right-valves": BOARDING_HOUSE},
    scenario_findings={"right-valves": ()},
)

# The vessel of a collector has no valve of its own, as hardly any has: to read its charge the circuit is let down.
UNSERVED = ("tank-cannot-be-served",)
SOLAR = Expected(
    {
        "cylinder": Answer(CONTROLLED, ("dual-check",), ("tap-tank", 55.0)),
        "gas-heater": Answer(CONTROLLED, ("dual-check",), ("tap-tank", 55.0)),
        # 30 psi at the tank, read 20 ft higher at the collector: less 20 x 0.4335 psi.
        "collector": Answer(CONTROLLED, ("dual-check", "fill-reducer", "fill-rp", "fill-valve"), ("solar-tank", 21.33)),
    },
    UNSERVED,
    scenarios={
        "solar-tank-waterlogged": {
            "cylinder": Answer(CONTROLLED, ("dual-check",), ("tap-tank", 55.0)),
            "gas-heater": Answer(CONTROLLED, ("dual-check",), ("tap-tank", 55.0)),
            "collector": Answer(
                TRAPPED, ("dual-check", "fill-reducer", "fill-rp", "fill-valve"), ("collector/relief", 90.0)
            ),
        },
        "fill-left-open": {
            "cylinder": Answer(CONTROLLED, ("dual-check",), ("tap-tank", 55.0)),
            "gas-heater": Answer(CONTROLLED, ("dual-check",), ("tap-tank", 55.0)),
            "collector": Answer(CONTROLLED, ("dual-check", "fill-reducer", "fill-rp"), ("solar-tank", 21.33)),
        },
    },
    scenario_findings={
        "solar-tank-waterlogged": (*UNSERVED, "tank-waterlogged", "trapped-expansion"),
        "fill-left-open": UNSERVED,
    },
)

BATHHOUSE = Expected(
    {
        "exchanger": Answer(ON_DEMAND, ("rp",), None),
        "boiler": Answer(CONTROLLED, ("fill-reducer", "rp", "vented-check"), ("heating-tank", 15.0)),
    },
    scenarios={
        "circulation-added": {
            "exchanger": Answer(SEALED, ("rp",), None),
            "boiler": Answer(CONTROLLED, ("fill-reducer", "rp", "vented-check"), ("heating-tank", 15.0)),
        },
        "boiler-pump-off": {
            "exchanger": Answer(ON_DEMAND, ("rp",), None),
            "boiler": Answer(CONTROLLED, ("fill-reducer", "rp", "vented-check"), ("heating-tank", 15.0)),
        },
    },
    scenario_findings={
        "circulation-added": ("relief-missing", "sealed-heater", "tankless-in-loop"),
        "boiler-pump-off": (),
    },
)

WORKSHOP_WITHOUT_RELIEF = Expected(
    {"heater": Answer(SEALED, ("check",), None)},
    ("relief-missing", "sealed-heater"),
    scenarios={
        "relief-fitted": {"heater": Answer(TRAPPED, ("check",), RELIEF)},
        "relief-and-tank": {"heater": Answer(CONTROLLED, ("check",), ("tank", 60.0))},
    },
    scenario_findings={"relief-fitted": ("trapped-expansion",), "relief-and-tank": ()},
)

WORKSHOP_RELIEF_BEHIND_A_VALVE = Expected(
    {"heater": Answer(TRAPPED, ("meter",), ("relief", 150.0))},
    ("relief-behind-valve", "trapped-expansion"),
    scenarios={
        "relief-stop-shut": {"heater": Answer(SEALED, ("meter",), None)},
        "put-right": {"heater": Answer(CONTROLLED, ("meter",), ("tank", 60.0))},
    },
    scenario_findings={"relief-stop-shut": ("relief-behind-valve", "sealed-heater"), "put-right": ()},
)

PUMP_WITHOUT_RETURN = Expected(
    {"heater": Answer(OPEN, (), ("street", 64.0))},
    ("pump-drives-nothing",),
    scenarios={"meter-exchanged": {"heater": Answer(TRAPPED, ("meter",), RELIEF)}},
    scenario_findings={"meter-exchanged": ("pump-drives-nothing", "trapped-expansion")},
)

# Without a check in the low return 100 psi stand in the low zone too, where 80 are allowed, and the low pump would have
# to lift from 60 psi to 100. With a check the zone stands at its set, and the pump still drives nothing. With 110 ft of
# head (47.7 psi) it drives; what it warms behind the reducer has no tank of its own, and goes to that at 100 psi only.
TOWER_LOW_ZONE_RETURN = Expected(
    {"heater": Answer(TRAPPED, ("booster",), ("tank", 100.0))},
    ("pump-drives-nothing", "reducer-bypassed", "static-above-limit", "tank-too-small"),
    scenarios={
        "check-fitted": {"heater": Answer(CONTROLLED, ("booster",), ("tank", 100.0))},
        "stronger-pump": {"heater": Answer(TRAPPED, ("booster", "hot-reducer"), ("tank", 100.0))},
    },
    scenario_findings={"check-fitted": ("pump-drives-nothing",), "stronger-pump": ("tank-too-small",)},
)

CHECK_VALVE_BACKWARDS = Expected(
    {"heater": Answer(OPEN, (), ("street", 62.0))},
    ("unreached-part", "unreached-part", "unreached-part"),
    scenarios={"check-taken-out": {"heater": Answer(OPEN, (), ("street", 62.0))}},
    scenario_findings={"check-taken-out": ()},
)

CHECK_IN_THE_HOT_PIPE = Expected(
    {"heater": Answer(CONTROLLED, ("meter",), ("tank", 57.0))},
    ("check-on-hot-side",),
    scenarios={
        "hot-check-taken-out": {"heater": Answer(CONTROLLED, ("meter",), ("tank", 57.0))},
        "tank-moved-behind-the-check": {"heater": Answer(CONTROLLED, ("meter",), ("tank", 57.0))},
    },
    scenario_findings={
        "hot-check-taken-out": (),
        "tank-moved-behind-the-check": ("check-on-hot-side", "pumped-up", "tank-on-hot-side"),
    },
)

SCHOOL_HEATERS = {
    "heater-1": Answer(CONTROLLED, ("reducer", "rp"), ("tank-1", 420.0)),
    "heater-2": Answer(CONTROLLED, ("reducer", "rp"), ("tank-1", 420.0)),
}
GYM = {"gym-heater": Answer(ON_DEMAND, ("gym-check", "reducer", "rp"), ("gym-heater/relief", 1000.0))}
LAB = {"lab-heater": Answer(TRAPPED, ("lab-rp", "reducer", "rp"), ("lab-heater/relief", 1000.0))}
SCHOOL = Expected(
    SCHOOL_HEATERS | GYM | LAB,
    ("trapped-expansion",),
    scenarios={
        "one-tank-waterlogged": {
            "heater-1": Answer(TRAPPED, ("reducer", "rp"), ("tank-1", 420.0)),
            "heater-2": Answer(TRAPPED, ("reducer", "rp"), ("tank-1", 420.0)),
        }
        | GYM
        | LAB,
        # The house can push forward through lab-rp into the new tank, which is first by name of three at 420 kPa.
        "lab-tank-fitted": {
            "heater-1": Answer(CONTROLLED, ("reducer", "rp"), ("lab-tank", 420.0)),
            "heater-2": Answer(CONTROLLED, ("reducer", "rp"), ("lab-tank", 420.0)),
        }
        | GYM
        | {"lab-heater": Answer(CONTROLLED, ("lab-rp", "reducer", "rp"), ("lab-tank", 420.0))},
        "gym-circulates": SCHOOL_HEATERS
        | LAB
        | {"gym-heater": Answer(TRAPPED, ("gym-check", "reducer", "rp"), ("gym-heater/relief", 1000.0))},
    },
    scenario_findings={
        "one-tank-waterlogged": ("tank-too-small", "tank-too-small", "tank-waterlogged", "trapped-expansion"),
        "lab-tank-fitted": (),
        "gym-circulates": ("tankless-in-loop", "trapped-expansion", "trapped-expansion"),
    },
)

BARBER = Expected(
    {"heater": Answer(ON_DEMAND, ("meter",), None)},
    ("closed-without-control",),
    scenarios={"tank-fitted": {"heater": Answer(ON_DEMAND, ("meter",), ("tank", 60.0))}},
    scenario_findings={"tank-fitted": ()},
)

ROW_HOUSE = Expected(
    {"heater": Answer(OPEN, (), ("street", 74.0))},
    ("bypass-does-not-count",),
    scenarios={"tank-fitted": {"heater": Answer(OPEN, (), ("tank", 60.0))}},
    scenario_findings={"tank-fitted": ()},
)

DUPLEX = Expected(
    {"heater-a": Answer(OPEN, (), ("street", 70.0)), "heater-b": Answer(CONTROLLED, ("reducer-b",), ("spill-b", 75.0))},
    ("bypass-does-not-count", "expansion-relief-does-not-count", "relief-set-too-high"),
    scenarios={
        "tanks-fitted": {
            "heater-a": Answer(OPEN, (), ("tank-a", 55.0)),
            "heater-b": Answer(CONTROLLED, ("reducer-b",), ("tank-b", 55.0)),
        }
    },
    scenario_findings={"tanks-fitted": ("relief-set-too-high",)},
)

COTTAGE = Expected(
    {"cylinder": Answer(OPEN, (), ("street", 300.0))},
    ("growth-leaves-supply-pipe",),
    scenarios={
        "turned-down": {"cylinder": Answer(OPEN, (), ("street", 300.0))},
        "check-and-vessel": {"cylinder": Answer(CONTROLLED, ("check",), ("vessel", 300.0))},
    },
    scenario_findings={"turned-down": ("growth-leaves-supply-pipe", "stored-too-cool"), "check-and-vessel": ()},
)

# Open, the loop lets the street's four bar in and nothing out; shut, it parts the circuit from all else.
FERRY_COTTAGE = Expected(
    {"boiler": Answer(TRAPPED, ("filling-loop",), ("boiler/relief", 300.0))},
    ("fill-without-preventer", "filling-loop-open", "relief-runs", "tank-charge-differs", "tank-too-small"),
    scenarios={
        "loop-shut": {"boiler": Answer(CONTROLLED, (), ("vessel", 100.0))},
        "filled-too-high": {"boiler": Answer(TRAPPED, (), ("vessel", 250.0))},
        "vessel-flat": {"boiler": Answer(CONTROLLED, (), ("vessel", 100.0))},
    },
    scenario_findings={
        "loop-shut": (),
        "filled-too-high": ("tank-charge-differs", "tank-too-small"),
        "vessel-flat": ("tank-charge-differs",),
    },
)

# Five gallons, 130 degF and 20 K more: water of 54 to 74 degC grows by 1.1 %, 0.055 gal, and the meter stops it.
ROWING_CLUB = Expected(
    {"heater": Answer(ON_DEMAND, ("meter",), RELIEF)},
    ("heat-soak",),
    scenarios={
        "tank-fitted": {"heater": Answer(ON_DEMAND, ("meter",), ("tank", 60.0))},
        "plain-meter": {"heater": Answer(OPEN, (), ("street", 60.0))},
    },
    scenario_findings={"tank-fitted": ("heat-soak",), "plain-meter": ()},
)

INN = Expected(
    {"cylinder": Answer(OPEN, (), ("street", 400.0))},
    ("check-missing-at-heater",),
    scenarios={
        "check-alone": {"cylinder": Answer(TRAPPED, ("check",), ("cylinder/relief", 700.0))},
        "safety-group": {"cylinder": Answer(CONTROLLED, ("check",), ("vessel", 400.0))},
    },
    scenario_findings={"check-alone": ("trapped-expansion",), "safety-group": ()},
)

# The loop is cut off from the street by the assembly and by the reducer: two devices.
GREENHOUSE = Expected(
    {"boiler": Answer(CONTROLLED, ("fill-reducer", "fill-rp"), ("tank", 15.0))},
    ("valve-before-tank",),
    scenarios={
        "valve-shut": {"boiler": Answer(TRAPPED, ("fill-reducer", "fill-rp"), ("boiler/relief", 30.0))},
        "valve-locked": {"boiler": Answer(CONTROLLED, ("fill-reducer", "fill-rp"), ("tank", 15.0))},
    },
    scenario_findings={"valve-shut": ("tank-cut-off", "trapped-expansion"), "valve-locked": ()},
)

# The loop stands open to the cistern, twelve feet up: 12 x 0.4335 psi.
POTTERY = Expected(
    {"boiler": Answer(OPEN, (), ("cistern", 5.2))},
    ("setpoint-above-boiling",),
    scenarios={"turned-down": {"boiler": Answer(OPEN, (), ("cistern", 5.2))}},
    scenario_findings={"turned-down": ()},
)

GUESTHOUSE = {
    "solar": Answer(CONTROLLED, ("stop-check",), ("vessel", 400.0)),
    "storage": Answer(CONTROLLED, ("hot-check", "stop-check"), ("vessel", 400.0)),
}
GUESTHOUSE_SOLAR_PREHEATER = Expected(
    GUESTHOUSE,
    ("pumped-up", "tank-on-hot-side"),
    scenarios={
        "vessel-before-the-check": {
            "solar": Answer(CONTROLLED, ("stop-check",), ("second-vessel", 400.0)),
            "storage": GUESTHOUSE["storage"],
        },
        "check-between-taken-out": {
            "solar": GUESTHOUSE["solar"],
            "storage": Answer(CONTROLLED, ("stop-check",), ("vessel", 400.0)),
        },
    },
    scenario_findings={
        "vessel-before-the-check": ("tank-on-hot-side",),
        "check-between-taken-out": ("tank-on-hot-side",),
    },
)

ANNEX_VESSEL_BELOW_THE_ALLOWANCE = Expected(
    {"cylinder": Answer(CONTROLLED, ("check",), ("vessel", 350.0))},
    ("tank-below-method",),
    scenarios={"vessel-by-the-allowance": {"cylinder": Answer(CONTROLLED, ("check",), ("vessel", 350.0))}},
    scenario_findings={"vessel-by-the-allowance": ()},
)

GROUP_LETS_OFF = ("group/relief", 700.0)

FRENCH_CYLINDER = Expected(
    # The group stands at the cylinder, behind its own check, and opens at its set.
    {"cylinder": Answer(CONTROLLED, ("group/check",), GROUP_LETS_OFF)},
    scenarios={
        # Two devices stop the water now; the group lets off all the same.
        "group-shut": {"cylinder": Answer(CONTROLLED, ("group/check", "group/valve"), GROUP_LETS_OFF)},
        "check-worn": {"cylinder": Answer(OPEN, (), ("street", 300.0))},
        "relief-scaled": {"cylinder": Answer(SEALED, ("group/check",), None)},
        "street-raised": {"cylinder": Answer(CONTROLLED, ("group/check",), GROUP_LETS_OFF)},
    },
    scenario_findings={
        "group-shut": (),
        "check-worn": ("check-missing-at-heater",),
        "relief-scaled": ("relief-missing", "sealed-heater"),
        # 6 bar is more than four fifths of 7, and more than 5 at the taps: hot and cold stand in two zones.
        "street-raised": ("relief-near-static", "static-above-limit", "static-above-limit"),
    },
)

BRITISH_STOPS = ("group/check", "group/reducer")

BRITISH_CYLINDER = Expected(
    {"cylinder": Answer(CONTROLLED, BRITISH_STOPS, ("vessel", 350.0))},
    scenarios={
        "vessel-lost": {"cylinder": Answer(CONTROLLED, BRITISH_STOPS, ("group/expansion-relief", 600.0))},
        "no-vessel": {"cylinder": Answer(CONTROLLED, BRITISH_STOPS, ("group/expansion-relief", 600.0))},
        "vessel-and-valve-lost": {"cylinder": Answer(TRAPPED, BRITISH_STOPS, ("cylinder/relief", 700.0))},
        "stop-shut": {"cylinder": Answer(CONTROLLED, ("group/check", "group/reducer", "stop"), ("vessel", 350.0))},
    },
    scenario_findings={
        "vessel-lost": ("expansion-relief-does-not-count", "tank-waterlogged"),
        "no-vessel": ("expansion-relief-does-not-count",),
        "vessel-and-valve-lost": ("tank-waterlogged", "trapped-expansion"),
        "stop-shut": (),
    },
)

SHOWCASE: dict[str, Expected] = {
    "annex-vessel-below-the-allowance": ANNEX_VESSEL_BELOW_THE_ALLOWANCE,
    "bakery-tank-cut-off": BAKERY_TANK_CUT_OFF,
    "bakery-tank-on-hot-side": BAKERY_TANK_ON_HOT_SIDE,
    "bakery-tank-right": BAKERY_TANK_RIGHT,
    "bakery-tank-too-small": BAKERY_TANK_TOO_SMALL,
    "bakery-tanks-worn-out": BAKERY_TANKS_WORN_OUT,
    "barber-tankless-under-upc": BARBER,
    "bathhouse-plate-exchanger": BATHHOUSE,
    "boiler-loop-with-indirect-heater": BOILER_LOOP,
    "check-in-the-hot-pipe": CHECK_IN_THE_HOT_PIPE,
    "check-valve-backwards": CHECK_VALVE_BACKWARDS,
    "british-cylinder": BRITISH_CYLINDER,
    "cistern-vented-cylinder": CISTERN,
    "clinic-tankless-recirculation": CLINIC,
    "cottage-supply-pipe-uk": COTTAGE,
    "crossover-at-a-fixture": CROSSOVER_AT_A_FIXTURE,
    "dual-check-meter": DUAL_CHECK_METER,
    "duplex-reducers-under-upc": DUPLEX,
    "expansion-relief-as-control": EXPANSION_RELIEF,
    "expansion-relief-wrongly-set": EXPANSION_RELIEF_WRONGLY_SET,
    "farmhouse-solar-loop": SOLAR,
    "ferry-cottage-filling-loop": FERRY_COTTAGE,
    "guesthouse-solar-preheater": GUESTHOUSE_SOLAR_PREHEATER,
    "french-cylinder": FRENCH_CYLINDER,
    "greenhouse-boiler-valve-at-tank": GREENHOUSE,
    "hill-house-street-not-steady": HILL_HOUSE,
    "house-with-check": HOUSE_WITH_CHECK,
    "inn-cylinder-under-en": INN,
    "main-above-limit-no-tank-can-help": MAIN_ABOVE_LIMIT,
    "mill-circuits-filled-too-low": MILL,
    "mixing-valve-with-checks": MIXING_VALVE_WITH_CHECKS,
    "mixing-valve-without-checks": MIXING_VALVE_WITHOUT_CHECKS,
    "open-house": OPEN_HOUSE,
    "pottery-boiler-set-too-hot": POTTERY,
    "pump-without-return": PUMP_WITHOUT_RETURN,
    "reducer-with-bypass-main-above-limit": REDUCER_WITH_BYPASS_MAIN_ABOVE_LIMIT,
    "reducer-with-bypass-main-below-limit": REDUCER_WITH_BYPASS_MAIN_BELOW_LIMIT,
    "reducer-without-bypass-main-above-limit": REDUCER_WITHOUT_BYPASS_MAIN_ABOVE_LIMIT,
    "reducer-without-bypass-main-below-limit": REDUCER_WITHOUT_BYPASS_MAIN_BELOW_LIMIT,
    "relief-valves-wrongly-chosen": RELIEF_VALVES_WRONGLY_CHOSEN,
    "row-house-bypass-under-ipc": ROW_HOUSE,
    "rowing-club-flow-through-heater": ROWING_CLUB,
    "school-shared-tanks": SCHOOL,
    "tankless-alone": TANKLESS_ALONE,
    "tower-low-zone-return": TOWER_LOW_ZONE_RETURN,
    "tower-tank-on-the-roof": TOWER,
    "two-heaters-one-tank": TWO_HEATERS_ONE_TANK,
    "two-heaters-own-checks": TWO_HEATERS_OWN_CHECKS,
    "well-with-checked-softener": WELL_WITH_CHECKED_SOFTENER,
    "workshop-relief-behind-a-valve": WORKSHOP_RELIEF_BEHIND_A_VALVE,
    "workshop-without-relief-valve": WORKSHOP_WITHOUT_RELIEF,
}
