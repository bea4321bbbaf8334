"""The binding's part of the project file: reading it and writing it."""

from __future__ import annotations

from typing import Any

from core.binding_choices import (
    Accent,
    AccentKind,
    BiasCut,
    BiasMethod,
    BiasSource,
    Face,
    Finishing,
    Order,
    Scrappy,
    Tails,
    Tuck,
    WidthRule,
)
from core.fabric import Grain
from core.language import told
from core.lengths import Inches, Units, exact_text
from core.quilt import Binding, Closing, Fold, Joins
from core.reading import Fields
from core.refusal import Refusal
from core.shape import Facing

MOST_SCRAPPY = 50
MOST_SEED = 9999
_CLOTHS_AT_LEAST = 2


def read_binding(fields: Fields) -> Binding:
    """The binding that the object at `binding` holds. Raises `Refusal`."""
    strip, finished = _maybe(fields, "strip_width"), _maybe(fields, "finished_width")
    if strip is None and finished is None:
        raise Refusal(
            fields.at("strip_width"),
            told("this is missing; write the strip's width or the finished width"),
        )
    if strip is not None and finished is not None:
        raise Refusal(
            fields.at("finished_width"),
            told(
                "the strip's width is given as well, and one follows from the other; write only one"
            ),
        )
    binding = Binding(
        fabric=fields.text("fabric"),
        strip_width=strip,
        fold=fields.choice("fold", Fold),
        grain=fields.choice("grain", Grain),
        joins=fields.choice("joins", Joins),
        closing=fields.choice("closing", Closing),
        allowance=fields.length("allowance", zero=True),
        seam=fields.length("seam"),
        finished_width=finished,
        width_rule=fields.choice("width_rule", WidthRule, WidthRule.FACES.value),
        first_face=fields.choice("first_face", Face, Face.FRONT.value),
        finishing=fields.choice("finishing", Finishing, Finishing.HAND.value),
        reach=_maybe(fields, "reach", zero=True),
        shortest=_maybe(fields, "shortest"),
        back_fabric=fields.text("back_fabric") if fields.has("back_fabric") else None,
        tails=_tails(_inner(fields, "tails")),
        tuck=_tuck(_inner(fields, "tuck")),
        bias=_bias(_inner(fields, "bias")),
        accent=_accent(_inner(fields, "accent")),
        scrappy=_scrappy(_inner(fields, "scrappy")),
        start_side=fields.choice("start_side", Facing) if fields.has("start_side") else None,
        least_to_corner=_maybe(fields, "least_to_corner"),
        cloths_seam=_maybe(fields, "cloths_seam"),
        turn_in=_maybe(fields, "turn_in"),
        stitching=_maybe(fields, "stitching"),
        start_at=_maybe(fields, "start_at", zero=True),
    )
    fields.done()
    return binding


def _inner(fields: Fields, key: str) -> Fields:
    """The object at `key`; empty where it is absent."""
    return Fields(fields.raw(key) if fields.has(key) else {}, fields.at(key), fields.units)


def _maybe(fields: Fields, key: str, *, zero: bool = False) -> Inches | None:
    return fields.length(key, zero=zero) if fields.has(key) else None


def _tails(fields: Fields) -> Tails:
    tails = Tails(tail=_maybe(fields, "tail"), gap=_maybe(fields, "gap", zero=True))
    fields.done()
    return tails


def _tuck(fields: Fields) -> Tuck:
    tuck = Tuck(
        turned=_maybe(fields, "turned"),
        overlap=_maybe(fields, "overlap"),
        start=_maybe(fields, "start", zero=True),
    )
    fields.done()
    return tuck


def _bias(fields: Fields) -> BiasCut:
    cut = BiasCut(
        method=fields.choice("method", BiasMethod, BiasMethod.TUBE.value),
        source=fields.choice("source", BiasSource, BiasSource.SQUARE.value),
        step=_maybe(fields, "step"),
    )
    fields.done()
    return cut


def _accent(fields: Fields) -> Accent:
    accent = Accent(
        kind=fields.choice("kind", AccentKind, AccentKind.NONE.value),
        cloth=fields.text("cloth") if fields.has("cloth") else None,
        shows=_maybe(fields, "shows"),
        cord=_maybe(fields, "cord"),
        overlap=_maybe(fields, "overlap"),
    )
    fields.done()
    return accent


def _scrappy(fields: Fields) -> Scrappy:
    def fabric(value: object, path: str) -> str:
        return Fields({"name": value}, path).text("name")

    scrappy = Scrappy(
        order=fields.choice("order", Order, Order.NONE.value),
        cloths=fields.each("cloths", fabric, most=MOST_SCRAPPY),
        shortest=_maybe(fields, "shortest"),
        seed=fields.count("seed", 1, most=MOST_SEED),
    )
    fields.done()
    for place, name in enumerate(scrappy.cloths):
        if name in scrappy.cloths[:place]:
            raise Refusal(
                f"{fields.at('cloths')}[{place}]",
                told('"{name}" is listed twice; write it once', name=name),
            )
    if scrappy.order is not Order.NONE and len(scrappy.cloths) < _CLOTHS_AT_LEAST:
        raise Refusal(
            fields.at("cloths"),
            told("a scrappy binding is made of several; write at least two fabrics"),
        )
    return scrappy


def named_fabrics(binding: Binding) -> tuple[tuple[str, str | None], ...]:
    """Where the binding names a fabric: (path in the file, name or None)."""
    return (
        ("binding.fabric", binding.fabric),
        ("binding.back_fabric", binding.back_fabric),
        ("binding.accent.cloth", binding.accent.cloth),
        *(
            (f"binding.scrappy.cloths[{place}]", name)
            for place, name in enumerate(binding.scrappy.cloths)
        ),
    )


def write_binding(binding: Binding, units: Units) -> dict[str, Any]:
    """The binding as the JSON object of the file, lengths as exact text."""

    def text(length: Inches | None) -> str | None:
        return None if length is None else exact_text(length, units)

    accent, scrappy = binding.accent, binding.scrappy
    return {
        "fabric": binding.fabric,
        "strip_width": text(binding.strip_width),
        "finished_width": text(binding.finished_width),
        "width_rule": binding.width_rule.value,
        "fold": binding.fold.value,
        "grain": binding.grain.value,
        "bias": {
            "method": binding.bias.method.value,
            "source": binding.bias.source.value,
            "step": text(binding.bias.step),
        },
        "joins": binding.joins.value,
        "closing": binding.closing.value,
        "tails": {"tail": text(binding.tails.tail), "gap": text(binding.tails.gap)},
        "tuck": {
            "turned": text(binding.tuck.turned),
            "overlap": text(binding.tuck.overlap),
            "start": text(binding.tuck.start),
        },
        "allowance": text(binding.allowance),
        "seam": text(binding.seam),
        "shortest": text(binding.shortest),
        "first_face": binding.first_face.value,
        "finishing": binding.finishing.value,
        "reach": text(binding.reach),
        "back_fabric": binding.back_fabric,
        "accent": {
            "kind": accent.kind.value,
            "cloth": accent.cloth,
            "shows": text(accent.shows),
            "cord": text(accent.cord),
            "overlap": text(accent.overlap),
        },
        "scrappy": {
            "order": scrappy.order.value,
            "cloths": list(scrappy.cloths),
            "shortest": text(scrappy.shortest),
            "seed": scrappy.seed,
        },
        "start_side": None if binding.start_side is None else binding.start_side.value,
        "least_to_corner": text(binding.least_to_corner),
        "cloths_seam": text(binding.cloths_seam),
        "turn_in": text(binding.turn_in),
        "stitching": text(binding.stitching),
        "start_at": text(binding.start_at),
    }
