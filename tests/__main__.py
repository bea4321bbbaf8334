"""`python3 -m tests`: every check there is. What is written after it goes to pytest."""

import sys

from app.first_run import ready


def main() -> int:
    """Run the checks and return 0 if all of them passed."""
    argv = sys.argv[1:]
    ready("tests", argv)
    from tests.checks import run_all

    return run_all(argv)


if __name__ == "__main__":
    sys.exit(main())
