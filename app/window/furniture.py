"""Small widgets that several views use, so that they look and sound alike."""

from __future__ import annotations

from PySide6.QtWidgets import QLabel, QToolButton, QWidget


def group_title(text: str) -> QLabel:
    """The title of a group of parts or of a table."""
    title = QLabel(text)
    title.setObjectName("group")
    return title


def problem_label() -> QLabel:
    """Room for a sentence about what is wrong; hidden while nothing is."""
    label = QLabel()
    label.setWordWrap(True)
    label.setObjectName("problem")
    label.hide()
    return label


def quiet_button(text: str, name: str = "") -> QToolButton:
    """A flat button; `name` is what it is called where `text` says too little."""
    button = QToolButton()
    button.setText(text)
    button.setAutoRaise(True)
    if name:
        button.setAccessibleName(name)
        button.setToolTip(name)
    return button


def leave(going: QWidget, near: QWidget) -> None:
    """Move the focus from what is about to go to something near it, not to wherever Qt would."""
    focused = going.window().focusWidget()
    if focused is not None and (focused is going or going.isAncestorOf(focused)):
        near.setFocus()
