"""`python3 -m app.solver`: started by the window, with the language to speak."""

import sys

from app.solver.work import main

if __name__ == "__main__":
    main(*sys.argv[1:])
