"""The bytes of a YAML file to what a declaration makes of it, with the tree that knows where each value stands."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Generic, TypeVar

from pydantic import ValidationError

from plumbnet.layout.model import Declared, Mistake, validation_faults
from plumbnet.layout.yaml import Fault, LayoutError, YamlNode, decode, parse_yaml

Form = TypeVar("Form", bound=Declared)


@dataclass(frozen=True, slots=True)
class DeclaredFile(Generic[Form]):
    """A file as its declaration has it, its tree and its text."""

    form: Form
    root: YamlNode
    text: str


def _as_it_is(_root: YamlNode) -> Mistake | None:
    return None


def read_declared(
    data: bytes, form: type[Form], *, file: str, unlike: Callable[[YamlNode], Mistake | None] = _as_it_is
) -> DeclaredFile[Form]:
    """The file as `form` has it; `unlike` says in a sentence where it is no such file at all.

    Raises LayoutError with every fault of the file.
    """
    faults: list[Fault] = []
    text = decode(data, faults)
    root = None if text is None else parse_yaml(text, faults)
    if text is not None and root is not None and not faults:
        mistake = unlike(root)
        if mistake is not None:
            raise LayoutError(file, [mistake.fault(root)], text)
        try:
            return DeclaredFile(form.model_validate(root.value), root, text)
        except ValidationError as error:
            faults += validation_faults(error, root, what=form.called, model=form)
    raise LayoutError(file, faults, text or "")
