"""What each finding says of its own bad layout, word for word."""

import pytest
from covering import findings_with_own_tests

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.rules.requirement import REQUIREMENTS

SAID: dict[str, tuple[str, str]] = {
    "bypass-does-not-count": (
        "heater is open only by the bypass of reducer, which the rules do not count as a way back.",
        "Fit an expansion tank between heater and reducer, charged to the set of the reducer.",
    ),
    "check-on-hot-side": (
        "check stands in a hot pipe and shuts in the water between itself and the taps.",
        "Take it out unless the design needs it there.",
    ),
    "circuit-not-full": (
        "no water stands at attic at 25 ft: the pressure there would be -2.8 psi.",
        "Fill at loop, cold, to at least 14.8 psi, as far as all that hangs on it may stand that.",
    ),
    "circuit-top-below-least": (
        "1.2 psi stands at attic at 25 ft, the highest place of what boiler warms; it needs 4 psi.",
        "Fill at loop, cold, to at least 14.8 psi, as far as all that hangs on it may stand that.",
    ),
    "closed-without-control": (
        (
            "tankless is closed (stopped by meter) and has no control of expansion; that it fires only while water "
            "runs is no exemption here."
        ),
        "Fit an expansion tank in its cold pipe, on the building's side of what closes it.",
    ),
    "expansion-relief-above-safety": (
        "letoff is set to 130 psi, no lower than the safety relief at 125 psi.",
        "Fit an expansion relief valve set between the static pressure and the limit.",
    ),
    "expansion-relief-below-static": (
        "60 psi stands at letoff, which is set to 55 psi: it never shuts.",
        "Lower the static pressure, or fit an expansion relief valve set above it and below the limit.",
    ),
    "expansion-relief-does-not-count": (
        "heater is held by spill, set to 101.5 psi, and the rules count one up to 79.8 psi only.",
        "Fit an expansion tank that takes the growth before it opens, or have the design approved.",
    ),
    "filling-loop-open": (
        "loop stands open: what lies behind it is pressed by the cold pipe, and joined to it.",
        "Shut it, take its hose off, and let what it fills down to 100 kPa.",
    ),
    "growth-leaves-supply-pipe": (
        "heater gives 0.532 gal back towards street; the building's own supply pipe holds 0.407 gal of it.",
        "Fit a check in the cold pipe and an expansion vessel behind it, or make the pipe hold enough.",
    ),
    "loop-above-boiling": (
        "boiler is set to 225 degF; at attic at 25 ft 3.2 psi stands, and water boils there at 222 degF.",
        (
            "Set boiler below 222 degF. Or else: fill at loop, cold, to at least 19.1 psi, as far as all that hangs on "
            "it may stand that."
        ),
    ),
    "heat-soak": (
        (
            "tankless holds 3 gal that goes on warming once the tap is shut: by an estimate of 36 degF it grows by "
            "0.0352 gal; nothing below the limit takes it until a tap is opened."
        ),
        "Fit a small expansion tank in its cold pipe, on the building's side of what closes it.",
    ),
    "open-only-by-crossover": (
        "heater is open only because hot and cold are joined at shower.",
        "Treat it as closed: mend the joint, and fit a control for the expansion in the same visit.",
    ),
    "pump-drives-nothing": (
        "pump runs, but there is no way round on which it could drive the water.",
        "Look for a missing return, a shut valve, or a check that faces the wrong way.",
    ),
    "reducer-bypassed": (
        (
            "reducer is bypassed: water comes past it by way of heater and pump, and 68 psi stands behind it where it "
            "is set to 40 psi."
        ),
        (
            "Let no water come back that way: fit a check there or shut what stands open, or let the return of the "
            "zone behind reducer end behind it."
        ),
    ),
    "reducer-without-tank": (
        "heated water stands behind reducer, and no expansion tank.",
        "Fit one in the cold piping downstream of reducer, charged to its set of 55 psi.",
    ),
    "relief-above-rating": (
        "relief is set to 150 psi; heater is rated for 125 psi at its height.",
        "Fit a relief valve set to 125 psi or less.",
    ),
    "relief-behind-valve": (
        "relief does not sit on a heater: stop stands between.",
        "Connect the relief valve to the heater's own tapping, with nothing between that can shut or stick.",
    ),
    "relief-below-input": (
        "relief carries off 30,000 Btu/h; what it serves puts in 40,000 Btu/h.",
        "Fit a relief valve rated for at least 40,000 Btu/h.",
    ),
    "relief-missing": (
        "heater has no relief valve of its own.",
        "Keep it off until a temperature and pressure relief valve is on its own tapping, nothing between.",
    ),
    "relief-near-static": (
        "70 psi stands at relief, which is set to 75 psi.",
        "Lower the static pressure there to 67.5 psi or less.",
    ),
    "relief-opens-hot": ("relief opens at 240 degF.", "Fit one that opens at 210 degF or less."),
    "relief-runs": (
        "street stands at 160 psi, above the 150 psi set of relief: it runs all the time.",
        (
            "Fit a pressure reducer, or set the one that is there, so that no more than 135 psi stands at it, and look "
            "for the expansion tank behind the reducer; the valve stays as it is."
        ),
    ),
    "relief-set-too-high": (
        "relief is set to 175 psi; the rules allow 150 psi at most.",
        "Fit one set to 150 psi or less, and not above the heater's rating.",
    ),
    "sealed-heater": (
        (
            "DANGER: heater is closed (stopped by meter); its water grows by 0.671 gal, and nothing holds the "
            "pressure at or below 80 psi. No relief valve can open; heated, something breaks."
        ),
        (
            "Turn the heater off and keep it off until a relief valve is on its own tapping with nothing between. "
            "That makes it safe, not right. Fit an expansion tank of 5 gal (at least 3.18 gal), charged to 60 psi, "
            "connected in the pipe from meter to heater."
        ),
    ),
    "setpoint-above-boiling": (
        (
            "boiler is set to 115 degC; under the 50 kPa at which it stands water boils at 111.6 degC, and the "
            "growth told here is that of water alone."
        ),
        "Set it below 111.6 degC, or raise the pressure within the ratings.",
    ),
    "pumped-up": (
        (
            "with no tap drawn, solar pushes more water through hot-check at each heat-up, and none comes back: tap "
            "passes 552 kPa at heat-up 3, and goes on to 1000 kPa."
        ),
        "Fit a tank before hot-check too, at cold-tee: 50 L (at least 39.7 L), charged to 400 kPa.",
    ),
    "static-above-limit": (
        "95 psi stands at tap with no water running; the limit is 80 psi.",
        (
            "Fit a pressure reducer, or set the one that is there, so that no fixture stands above 80 psi; a reducer "
            "closes the system, so look for the expansion tank behind it."
        ),
    ),
    "tank-below-method": (
        "tank holds with 5 L; the method uk-4-percent asks for 10.4 L.",
        "Fit 10.4 L or more where that method is the rule.",
    ),
    "tap-below-least": (
        "6.2 psi stands at attic at 55 ft; the least is 8 psi.",
        "Fit a booster pump that adds at least 1.8 psi, or feed it from where more stands.",
    ),
    "tap-without-water": (
        "no water comes to attic at 75 ft: the pressure there would be -2.5 psi.",
        "Fit a booster pump that adds at least 10.5 psi, or feed it from where more stands.",
    ),
    "tank-charge-differs": (
        "tank is charged to 40 psi, below the 60 psi of the line there; it stands part full before anything is heated.",
        "Shut it off, drain it, charge it to 60 psi, and open it again.",
    ),
    "tank-cut-off": (
        "no heated water can reach tank: check stands between.",
        "Move tank to the cold pipe between the last check and the heater, and charge it to the line there.",
    ),
    "tank-on-hot-side": (
        "tank hangs on the hot pipe of a heater, where heat ages its membrane.",
        "Move it to the heater's cold pipe, downstream of the last check.",
    ),
    "tank-too-small": (
        (
            "the water that heater heats grows by 0.671 gal; below 80 psi tank takes 0.211 gal of it, and 0.46 gal "
            "finds no room."
        ),
        "Fit an expansion tank of 3 gal (at least 2.18 gal), charged to 60 psi, connected at split, beside tank.",
    ),
    "tank-waterlogged": (
        "tank has lost its air; it is full of water and takes no more.",
        "Exchange tank or its membrane, and charge it to the line pressure with no water in it.",
    ),
    "tankless-in-loop": (
        "heater fires while pump runs, with every fixture shut; its water expands like that of a storage heater.",
        "Ask its maker for the duty and the warranty in continuous circulation.",
    ),
    "trapped-expansion": (
        (
            "heater is closed (stopped by meter); its water grows by 0.671 gal, and nothing holds the pressure at or "
            "below 80 psi."
        ),
        (
            "Fit an expansion tank of 5 gal (at least 3.18 gal), charged to 60 psi, connected in the pipe from meter "
            "to heater."
        ),
    ),
    "unreached-part": (
        "no water reaches tap from any supply.",
        "Look for a device that faces the wrong way, or draw the supply that is missing.",
    ),
    "valve-before-tank": (
        "stop can be shut and stands between boiler and tank.",
        "Take stop out, or lock it open where the rules allow a locked valve for service.",
    ),
}
"""What is found, and what to do, by the finding's name."""


def test_every_finding_has_its_words_here_or_in_tests_of_its_own() -> None:
    assert SAID.keys() | findings_with_own_tests() == set(REQUIREMENTS)


@pytest.mark.parametrize("name", SAID)
def test_finding_says_what_is_wrong_and_what_to_do(name: str) -> None:
    found = plumbnet.check(read_system(REQUIREMENTS[name].bad.encode(), file="bad.yaml")).findings
    assert [(one.text, one.advice) for one in found if one.name == name] == [SAID[name]]
