"""The solver: plans are made in a process of their own, so that the window never waits.

`python3 -m app.solver` reads asks and writes answers (`talk`) until its input ends.
It works on the newest ask alone (`work`), and imports no Qt.
"""
