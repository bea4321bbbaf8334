"""`python3 -m app.solver`: started by the window."""

from app.solver.work import main

if __name__ == "__main__":
    main()
