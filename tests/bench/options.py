"""How much is measured."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Options:
    """What the command line asks for; times are CPU seconds, except where it says workers."""

    quilts: int = 300
    seed: int = 1
    perfect: int = 135
    seconds: float = 10.0  # for each published set; half of it for each perfect cut
    names: frozenset[str] | None = None  # of published sets; None: all
    doublings: int = 12
    tiny: int = 2000
    cpsat_seconds: float = 12.0  # for each worker
    cpsat_workers: int = 2
    cpsat_all: bool = False
    cpsat_sample: int = 20  # of the quilts proved least
    edits: int = 100  # in the window
    jobs: int = 1


QUICK = Options(
    quilts=40,
    perfect=27,
    seconds=1.0,
    names=frozenset(
        (
            *("SCP1", "SCP3", "SCP12", "C1P1", "C1P2", "C2P3", "N1", "N2"),
            *("ngcut1", "ngcut3", "gcut1", "KR01", "C4P1", "cs_ampl_book"),
        )
    ),
    doublings=2,
    tiny=100,
    edits=20,
    cpsat_seconds=1.0,
    cpsat_sample=5,
)
