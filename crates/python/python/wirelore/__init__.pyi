import os
from typing import Literal

import pyarrow

class LoreError(ValueError): ...

class Decoded(dict[str, pyarrow.Table]):
    counts: dict[str, int]
    notes: list[str]

class Description:
    @property
    def networks(self) -> list[str]: ...
    @property
    def ecus(self) -> list[str]: ...
    @property
    def frames(self) -> list[str]: ...
    def to_json(self) -> str: ...
    def decode(
        self,
        *logs: str | os.PathLike[str],
        signals: str | None = None,
        only: list[str] | None = None,
        bind: str | None = None,
        units: str | None = None,
        store: Literal["values", "raw"] = "values",
        states: bool = False,
        times: Literal["start", "recorded", "clock"] = "start",
        from_s: float | None = None,
        until_s: float | None = None,
    ) -> Decoded: ...
    def decode_frame(
        self, network: str, id: int, payload: bytes, *, extended: bool = False
    ) -> dict[str, float | int | str | bytes | None]: ...

def open(path: str | os.PathLike[str]) -> Description: ...
