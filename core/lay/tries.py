"""What is tried: orders in which to lay things, and the rules to lay them by.

First those that usually serve, then others at random, half of them small
changes to the best so far.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from random import Random

from core.lay.start import FITS, SPLITS, Rules
from core.lay.ticks import Task

Order = tuple[int, ...]
Way = tuple[Order, Rules]
Key = Callable[[int], int | tuple[int, int]]
# The share of tries that change the best so far.
NEAR = 0.5
# The orders (see `_orders`), fits, splits and blocks that together serve the published sets
# best on a bolt as long as all could need, chosen one after the other; then some on a short one.
ON_PLENTY = (
    (1, 3, 7, 0),
    (4, 1, 7, 0),
    (1, 4, 0, 0),
    (0, 2, 2, 0),
    (1, 1, 6, 0),
    (3, 1, 7, 0),
    (1, 3, 6, 0),
    (1, 1, 1, 0),
    (5, 5, 6, 3),
    (3, 0, 1, 0),
    (3, 5, 6, 0),
    (3, 0, 7, 0),
    (0, 0, 6, 3),
    (2, 4, 4, 3),
    (1, 2, 7, 3),
    (0, 0, 1, 0),
    (4, 2, 1, 0),
)
PIECES_FIRST = (
    (1, Rules(3, 2)),
    (3, Rules(1, 5)),
    *(
        (order, Rules(fit, split, block, bolt_last=False, plenty=True))
        for order, fit, split, block in ON_PLENTY
    ),
    (1, Rules(4, 1, 1, bolt_last=False)),
    (1, Rules(0, 0)),
    (3, Rules(0, 1, bolt_last=False)),
    (2, Rules(4, 3, bolt_last=False)),
    (1, Rules(1, 1)),
    (1, Rules(2, 1)),
)


def tries(task: Task, rng: Random, best: Callable[[], Way | None]) -> Iterator[Way]:
    """Ways to lay a task, without end; `best` tells the one that served best so far."""
    orders = list(_orders(task))
    if not task.strips:
        for place, rules in PIECES_FIRST:
            yield orders[place], rules
    orders = list(dict.fromkeys(orders))
    for rules in (
        Rules(),
        Rules(thrifty=False),
        Rules(widest=False),
        Rules(shares=True),
        Rules(thrifty=False, hand_first=False),
        Rules(split=0, fit=3, bolt_last=False, hand_first=False),
        Rules(split=0, fit=2),
        Rules(split=2, fit=1, block=1),
        Rules(bolt_last=False),
        Rules(bolt_last=False, split=4, block=2, fit=3),
    ):
        for order in orders:
            yield order, rules
    while True:
        way = best()
        if way is not None and rng.random() < NEAR:
            yield _near(*way, rng)
        else:
            order = orders[rng.randrange(len(orders))]
            yield _shuffled(order, rng), _any_rules(rng)


def _near(order: Order, rules: Rules, rng: Random) -> Way:
    """The same order with one item moved, or two, or one rule changed."""
    if rng.random() < 0.3:
        rule = rng.choice(Rules._fields)
        return order, rules._replace(**{rule: getattr(_any_rules(rng), rule)})
    moved = list(order)
    for _ in range(rng.choice((1, 1, 2, 3)) if moved else 0):
        item = moved.pop(rng.randrange(len(moved)))
        moved.insert(rng.randint(0, len(moved)), item)
    return tuple(moved), rules


def _any_rules(rng: Random) -> Rules:
    return Rules(
        rng.randrange(len(FITS)),
        rng.randrange(len(SPLITS)),
        rng.randrange(4),
        rng.random() < 0.5,
        rng.random() < 0.6,
        rng.random() < 0.6,
        rng.random() < 0.7,
        rng.random() < 0.3,
    )


def _shuffled(order: Order, rng: Random) -> Order:
    """The order with each item moved a little."""
    spread = rng.choice((0.5, 1.5, 4.0, 12.0))
    moved = [(place + rng.uniform(-spread, spread), item) for place, item in enumerate(order)]
    return tuple(item for _, item in sorted(moved))


def _orders(task: Task) -> Iterator[Order]:
    """Pieces by area, length, width and girth; runs after them, before them or among them.

    Where there are no runs, last by the shorter side.
    """
    sizes = range(len(task.sizes))
    runs = tuple(
        len(task.sizes) + place
        for place, strip in enumerate(task.strips)
        for _ in range(strip.copies)
    )
    boxes = [size[:2] for size in task.sizes] + [(task.width, s.strip) for s in task.strips]
    keys: list[Key] = [
        lambda item: -boxes[item][0] * boxes[item][1],
        lambda item: (-boxes[item][1], -boxes[item][0]),
        lambda item: (-boxes[item][0], -boxes[item][1]),
        lambda item: -max(boxes[item]),
        lambda item: -sum(boxes[item]),
    ]
    if not task.strips:
        keys.append(lambda item: -min(boxes[item]))
    for key in keys:
        pieces = tuple(sorted(sizes, key=key))
        yield pieces + runs
        if runs and sizes:
            yield runs + pieces
            yield tuple(sorted((*sizes, *runs), key=key))
        if len(runs) > 1:
            yield pieces + runs[::-1]
