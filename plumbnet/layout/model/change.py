"""Changes to a system, as scenarios, the command line and remedies write them: close, insert, set, fail and so on."""

from typing import Annotated, ClassVar, Self

from pydantic import BeforeValidator, ConfigDict, Field, JsonValue, model_validator

from plumbnet.layout.model.base_model import Declared

_Neighbours = Annotated[tuple[str, str], Field(strict=False)]
_Values = dict[str, JsonValue]


class WithValues(Declared):
    """A part and, beside its name, values for its fields."""

    model_config = ConfigDict(extra="allow")
    __pydantic_extra__: _Values

    @property
    def values(self) -> _Values:
        """The values, as written."""
        return dict(self.__pydantic_extra__ or {})


class PlacedPart(WithValues):
    """A part that a change brings in: its name, its kind, and its fields beside them."""

    part: str = Field(examples=["tank"])
    """Name of the new part."""
    kind: str = Field(examples=["expansion_tank"])
    """Its kind."""


class Insert(PlacedPart):
    """A part set into the pipe between two neighbours; the first of them is at its inlet."""

    called: ClassVar[str] = "insert"

    between: _Neighbours = Field(examples=[["split", "heater"]])
    """The two parts that the pipe joins now; a port may be named, as heater.hot."""


class Add(PlacedPart):
    """A part and the run that joins it to what is there."""

    called: ClassVar[str] = "add"

    run: str = Field(examples=["split -> tank"])
    """The run, written like any other."""


class SetValues(WithValues):
    """New values for fields of a part that is there; null takes a field back to what holds where nothing is said."""

    called: ClassVar[str] = "set"

    part: str = Field(examples=["heater"])
    """Name of the part."""


class Fail(Declared):
    """A failure that the kind of part can have."""

    called: ClassVar[str] = "fail"

    part: str = Field(examples=["tank"])
    """Name of the part."""
    how: str = ""
    """Name of the failure; may be left out where the kind has only one."""


def _named_alone(value: object) -> object:
    return {"part": value} if isinstance(value, str) else value


class Change(Declared):
    """One change: exactly one of the actions, with what it acts on."""

    called: ClassVar[str] = "a change"
    actions: ClassVar[tuple[str, ...]] = ("close", "open", "remove", "insert", "add", "set", "fail", "draw")

    close: str | None = None
    """Shut this valve."""
    open: str | None = None
    """Open this valve."""
    remove: str | None = None
    """Take this part out and make the pipe good."""
    insert: Insert | None = None
    """Set a part into a pipe."""
    add: Add | None = None
    """Add a part and the run that joins it."""
    set: SetValues | None = None
    """Give fields of a part new values."""
    fail: Annotated[Fail | None, BeforeValidator(_named_alone, json_schema_input_type=str | Fail)] = None
    """Let a part fail: its name, or its name and how."""
    draw: str | None = None
    """Open this fixture and let it run."""

    @model_validator(mode="after")
    def _is_one_action(self) -> Self:
        if len(self.model_fields_set) != 1 or getattr(self, self.action) is None:
            raise ValueError(f"exactly one of {', '.join(self.actions)} is wanted here, with what it acts on")
        return self

    @property
    def action(self) -> str:
        """Name of the action."""
        return next(iter(self.model_fields_set))


class Scenario(Declared):
    """A named what-if: a note and the changes that make it."""

    called: ClassVar[str] = "a scenario"

    note: str = ""
    """What the scenario supposes."""
    change: Annotated[tuple[Change, ...], Field(strict=False, min_length=1)] = Field(examples=[[{"close": "stop"}]])
    """The changes, in the order they are made."""
    after: str | None = None
    """The scenario that it builds on: the changes of that one are made first."""
