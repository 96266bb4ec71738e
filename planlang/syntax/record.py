"""Records: dataclasses that are quick to define, so that a short-lived process spends its time on the plan.

A frozen dataclass writes and compiles six methods for every class. A record has one of its own, `__init__`; equality,
hash and print are shared. It is frozen for the type checker, which reads all of the code; `replace` and `fields` work
as on any dataclass.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields
from typing import Any, TypeVar, dataclass_transform, overload

T = TypeVar("T")


@overload
def record(cls: type[T], /) -> type[T]: ...
@overload
def record(*, kw_only: bool = False) -> Callable[[type[T]], type[T]]: ...
@dataclass_transform(frozen_default=True)
def record(cls: type[Any] | None = None, /, *, kw_only: bool = False) -> Any:
    """Make a class a record; with `kw_only`, fields are given by name."""

    def make(plain: type[T]) -> type[T]:
        made = dataclass(repr=False, eq=False, slots=not kw_only, kw_only=kw_only)(plain)
        made.__eq__ = _equal  # type: ignore[method-assign]
        made.__hash__ = _hash  # type: ignore[method-assign]
        made.__repr__ = _print  # type: ignore[method-assign]
        return made

    return make if cls is None else make(cls)


def _values(value: Any) -> tuple[Any, ...]:
    return tuple(getattr(value, field.name) for field in fields(value))


def _equal(self: Any, other: object) -> Any:
    return _values(self) == _values(other) if type(self) is type(other) else NotImplemented


def _hash(self: Any) -> int:
    return hash((type(self), *_values(self)))


def _print(self: Any) -> str:
    shown = ", ".join(f"{field.name}={getattr(self, field.name)!r}" for field in fields(self))
    return f"{type(self).__name__}({shown})"
