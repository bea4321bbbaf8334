"""`python3 -m tests.regold`: write the golden drawings anew; review the change as a diff."""

from tests.core.drawing.dump import GOLDEN, regold

if __name__ == "__main__":
    for name in regold():
        print(GOLDEN.name, name, sep="/")
