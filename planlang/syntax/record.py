"""Records: dataclasses that are quick to define, so that a short-lived process spends its time on the plan.

A dataclass looks into every field and writes up to six methods when its class is defined. A record writes its
`__init__` alone; equality, hash and print are shared, and what `dataclasses.replace` and `fields` want to know is made
when they first ask. It is frozen for the type checker, which reads all of the code; a workpiece is a record that
changes while something is made of it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import MISSING, Field, dataclass, field
from functools import partial
from inspect import get_annotations
from typing import Any, TypeVar, dataclass_transform, overload

T = TypeVar("T")
REQUIRED = object()
FIELDS = "__dataclass_fields__"


@overload
def record(cls: type[T], /) -> type[T]: ...
@overload
def record(*, kw_only: bool = False) -> Callable[[type[T]], type[T]]: ...
@dataclass_transform(frozen_default=True)
def record(cls: type[Any] | None = None, /, *, kw_only: bool = False) -> Any:
    """Make a class a record; with `kw_only`, fields are given by name. A record and its bases do alike.

    Raises:
        TypeError: a field has a default that could change, or a field without default follows one that has one.
    """

    return partial(_made, kw_only=kw_only) if cls is None else _made(cls, kw_only=kw_only)


@dataclass_transform(field_specifiers=(field,))
def workpiece(cls: type[T]) -> type[T]:
    """Make a class a record that may change; `field(default_factory=…)` makes a list or the like for each.

    Raises:
        TypeError: as `record`.
    """
    made: type[T] = _made(cls, kw_only=False, factories=True)
    return made


def _made(plain: Any, kw_only: bool, factories: bool = False) -> Any:
    defaults = dict(getattr(plain, "_defaults", {}))
    for name in get_annotations(plain):
        defaults[name] = _default(plain, name, factories)
    required = [default is REQUIRED for default in defaults.values()]
    if not kw_only and required != sorted(required, reverse=True):
        raise TypeError(f"a field without default follows one that has one: {', '.join(defaults)}")
    plain._defaults = defaults
    setattr(plain, "__match_args__", () if kw_only else tuple(defaults))  # noqa: B010 - mypy forbids the plain way
    plain.__init__ = _init_by_name if kw_only else _init_on_demand(plain)
    plain.__eq__, plain.__hash__, plain.__repr__ = _equal, _hash, _print
    setattr(plain, FIELDS, _FieldsOnDemand(plain, kw_only))
    return plain


def _default(plain: type[Any], name: str, factories: bool) -> Any:
    """The default of a field: REQUIRED where it has none, a `Field` where one is made for each."""
    default = plain.__dict__.get(name, REQUIRED)
    if type(default).__hash__ is None or (
        isinstance(default, Field) and not (factories and default.default_factory is not MISSING)
    ):
        raise TypeError(f"{name} could change: {default!r}")
    return default


def _init_by_name(self: Any, **given: Any) -> None:
    """The `__init__` of records whose fields are given by name: these have many fields, and a plan has few of them."""
    values = {**self._defaults, **given}
    self.__dict__.update(values)
    if len(values) > len(self._defaults) or REQUIRED in values.values():
        missing = [name for name, value in values.items() if value is REQUIRED]
        raise TypeError(f"{type(self).__name__}: missing {missing}, unknown {[*given.keys() - self._defaults.keys()]}")
    if hasattr(self, "__post_init__"):
        self.__post_init__()


def _init_on_demand(plain: Any) -> Any:
    """Stands in for the `__init__` of a record until the first one is made."""

    def first(self: Any, *given: Any, **named: Any) -> None:
        plain.__init__ = _written_init(plain._defaults, hasattr(plain, "__post_init__"))
        plain.__init__(self, *given, **named)

    return first


def _written_init(defaults: dict[str, Any], checked: bool) -> Any:
    """The `__init__` of a record with these fields; `checked` where `__post_init__` looks at it afterwards."""
    stated = {f"default_{name}": default for name, default in defaults.items() if default is not REQUIRED}
    each = [name for name, default in defaults.items() if isinstance(default, Field)]
    arguments = [f"{name}=default_{name}" if f"default_{name}" in stated else name for name in defaults]
    body = [f" if {name} is default_{name}: {name} = default_{name}.default_factory()" for name in each]
    body += [f" self.{name} = {name}" for name in defaults]
    ending = " self.__post_init__()" if checked else " pass"
    made: dict[str, Any] = {}
    exec("\n".join([f"def __init__({', '.join(['self', *arguments])}):", *body, ending]), stated, made)
    return made["__init__"]


class _FieldsOnDemand:
    """Stands where a dataclass keeps its fields until somebody asks for them, which makes the class a dataclass."""

    def __init__(self, owner: type[Any], kw_only: bool) -> None:
        self.owner, self.kw_only = owner, kw_only

    def __get__(self, instance: object, asked: type[Any]) -> Any:
        dataclass(init=False, repr=False, eq=False, match_args=False, kw_only=self.kw_only)(self.owner)
        return self.owner.__dict__[FIELDS]


def _values(value: Any) -> tuple[Any, ...]:
    return tuple([getattr(value, name) for name in value._defaults])


def _equal(self: Any, other: object) -> Any:
    return _values(self) == _values(other) if type(self) is type(other) else NotImplemented


def _hash(self: Any) -> int:
    return hash((type(self), *_values(self)))


def _print(self: Any) -> str:
    shown = ", ".join(f"{name}={getattr(self, name)!r}" for name in self._defaults)
    return f"{type(self).__name__}({shown})"
