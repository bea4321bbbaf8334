"""`python3 -m app`: the window, or a command without one."""

import sys

from app.first_run import ready


def main() -> int:
    """Run the command line and return its exit status."""
    argv = sys.argv[1:]
    ready("app", argv)
    from app.command_line import main as run

    return run(argv)


if __name__ == "__main__":
    sys.exit(main())
