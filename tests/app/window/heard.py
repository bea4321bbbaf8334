"""What a screen reader finds in a window: its tree of names, roles and values, as Qt has it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from PySide6.QtCore import QObject
from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtWidgets import QComboBox, QWidget

Role = QAccessible.Role
# What a person works with; each must have a name that says what it is for.
CONTROLS = frozenset(
    {
        Role.Button,
        Role.ButtonMenu,
        Role.CheckBox,
        Role.ComboBox,
        Role.EditableText,
        Role.List,
        Role.MenuItem,
        Role.PageTab,
        Role.PageTabList,
        Role.RadioButton,
        Role.SpinBox,
        Role.Table,
    }
)
# Those of them whose value is worth hearing; a check box has a state instead.
VALUED = frozenset({Role.ComboBox, Role.EditableText, Role.SpinBox})


@dataclass(frozen=True, slots=True)
class Heard:
    """One thing in the tree; `maker` is its class, for a failing test to name."""

    role: QAccessible.Role
    name: str
    value: str
    description: str
    focusable: bool
    maker: str


def heard(widget: QWidget) -> list[Heard]:
    """Everything in the widget that is not hidden, from the outside in."""
    root = QAccessible.queryAccessibleInterface(widget)
    assert root is not None
    return list(_within(root))


def _within(interface: QAccessibleInterface) -> Iterator[Heard]:
    state = interface.state()
    # A cell that is scrolled out of sight counts as invisible, and can be walked to all the same.
    if state.invisible and interface.role() is not Role.Cell:
        return
    made = interface.object()
    hands_on = isinstance(made, QWidget) and made.focusProxy() is not None
    yield Heard(
        interface.role(),
        _name(interface, made),
        interface.text(QAccessible.Text.Value),
        interface.text(QAccessible.Text.Description),
        bool(state.focusable) and not hands_on,
        type(made).__name__,
    )
    for place in range(interface.childCount()):
        child = interface.child(place)
        if child is not None and child.isValid():
            yield from _within(child)


def _name(interface: QAccessibleInterface, made: QObject | None) -> str:
    """The name; on Linux Qt tells a choice's value instead, and its name by the label beside it."""
    if isinstance(made, QComboBox):
        return made.accessibleName()
    return interface.text(QAccessible.Text.Name)
