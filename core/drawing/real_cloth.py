"""Areas of a picture in the cloth that they are cut from, where the person said how it looks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from core.drawing.marks import Area, Mark
from core.fabric import RealCloth
from core.plan import Plan

NOT_CLOTH = ("flaw", "motif", "pin")  # what lies on a cloth, or is said of it


def cut_from(
    marks: Iterable[Mark], real: RealCloth | None, *, turned: bool = False
) -> Iterator[Mark]:
    """The marks, every area of them cut from one cloth."""
    for mark in marks:
        if real is not None and isinstance(mark, Area) and mark.role not in NOT_CLOTH:
            yield replace(mark, real=real, turned=turned)
        else:
            yield mark


def sewn_from(marks: Iterable[Mark], plan: Plan) -> Iterator[Mark]:
    """The marks of a picture of the quilt, each part of it in its own cloth.

    A part is known by its letter; the binding and the backing behind the quilt, which
    have none there, by their role.
    """
    project = plan.project
    fabrics = {part.letter: part.fabric for part in plan.parts}
    roles = {
        role: part.fabric
        for role, part in (("binding", project.binding), ("backing", project.backing))
        if part is not None
    }
    for mark in marks:
        name = None
        if isinstance(mark, Area):
            name = fabrics.get(mark.key) or roles.get(mark.role)
        yield from cut_from([mark], project.fabric(name).real if name else None)
