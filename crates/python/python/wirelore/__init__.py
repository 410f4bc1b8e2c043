"""Recordings of vehicle networks to Arrow tables, by a description in plain text.

>>> import wirelore
>>> van = wirelore.open("van.lore")
>>> tables = van.decode("drive.pcapng")
>>> tables["wheel_speeds"].column("front_left")

For the bench and the desk: nothing here sends frames into a vehicle. Follow the manufacturer's information and local law.
"""

from __future__ import annotations

import os

from . import _core
from ._core import LoreError

__all__ = ["Decoded", "Description", "LoreError", "open"]


class Decoded(dict):
    """The tables of one call of ``decode``: a dictionary of ``pyarrow.Table`` by the names of the frames that were seen.

    ``counts`` says what became of every frame, of every message that was put together from frames, and of every row behind the first one of a
    payload with several; all but ``read`` are its parts and add up to it. ``notes`` says in sentences what was lost or damaged, and which channel was taken for which network.
    """

    def __init__(self, tables, counts, notes):
        super().__init__(tables)
        self.counts = counts
        self.notes = notes


class Description:
    """A checked description of a vehicle's networks."""

    def __init__(self, path: str | os.PathLike):
        self._description = _core.open(path)

    @property
    def networks(self) -> list[str]:
        """The names of the networks."""
        return self._description.networks

    @property
    def ecus(self) -> list[str]:
        """The names of the control units."""
        return self._description.ecus

    @property
    def frames(self) -> list[str]:
        """The names of the frames."""
        return self._description.frames

    def to_json(self) -> str:
        """The whole description as JSON, by the schema that comes with Wirelore."""
        return self._description.to_json()

    def decode(self, *logs, **options) -> Decoded:
        """Decodes recordings, one after the other, into one table for each frame that was seen.

        signals   patterns of FRAME.SIGNAL with commas between them: ``"wheel_speeds.*,shift_request"``
        only      a list of networks; frames of others are left out
        bind      which channel is which network: ``"can0=drive,can1=body"``
        units     ``"imperial"``, or units with commas between them, as the command takes them
        store     ``"values"`` (doubles) or ``"raw"`` (as sent, with the formula in the metadata)
        states    True: beside each signal a column NAME.state, with its state word or why there is no value
        times     ``"start"``, ``"recorded"`` or ``"clock"``: what the column ``time`` counts from
        from_s, until_s    seconds after the first frame

        Where there is no reading a cell is null. Raises ``LoreError`` where a recording cannot be read or a channel cannot be told.
        """
        return Decoded(*self._description.decode(*logs, **options))

    def decode_frame(self, network: str, id: int, payload: bytes, *, extended: bool = False) -> dict[str, object]:
        """Decodes the bytes of one CAN or LIN frame, of several rows the first; signals without a reading are None."""
        return self._description.decode_frame(network, id, payload, extended=extended)

    def __repr__(self) -> str:
        return repr(self._description)


def open(path: str | os.PathLike) -> Description:
    """Opens a description: a ``.lore`` text with all files that it uses, or a compiled ``.json`` or ``.lorebin``.

    Raises ``LoreError`` with every mistake, its place, its reason and a way out.
    """
    return Description(path)
