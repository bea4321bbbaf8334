"""Money: amounts in whatever currency the prices were given."""

from __future__ import annotations

from fractions import Fraction

from core.numerals import told_decimal


def money(amount: Fraction) -> str:
    """An amount to two places, halves up.

    >>> money(Fraction(12345, 1000)), money(Fraction(1, 2))
    ('12.35', '0.50')
    """
    return told_decimal(bare_money(amount))


def bare_money(amount: Fraction) -> str:
    """The same with a decimal point in every language, for programs to read."""
    cents = int(amount * 100 + Fraction(1, 2))
    return f"{cents // 100}.{cents % 100:02d}"
