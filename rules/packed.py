"""Frozen records that are quick to take out of the cache."""

from typing import Any


class Packed:
    """A base for frozen dataclasses with slots: pickled as the call that makes them.

    What dataclasses do by themselves looks every field up anew for each record, and a book holds thousands.
    """

    __slots__: tuple[str, ...] = ()

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), tuple(getattr(self, name) for name in self.__slots__)
