"""What the system says of a file that cannot be read or written, in the language spoken. No Qt."""

from __future__ import annotations

import errno
from typing import Final

from core.language import marked, told

# The C library's words for what befalls files; the rest is said as the system says it.
_SAID: Final = {
    errno.ENOENT: marked("No such file or directory"),
    errno.EACCES: marked("Permission denied"),
    errno.EPERM: marked("Operation not permitted"),
    errno.EISDIR: marked("Is a directory"),
    errno.ENOTDIR: marked("Not a directory"),
    errno.ENOSPC: marked("No space left on device"),
    errno.EROFS: marked("Read-only file system"),
    errno.EIO: marked("Input/output error"),
    errno.ENAMETOOLONG: marked("File name too long"),
}

# This program says more of these itself, and what to do instead (`core.whole_file`).
_OURS: Final = (errno.EISDIR, errno.ENOTDIR)


def said_of(error: OSError) -> str:
    """Why it failed, in words; what this program has said of it itself stays as it is.

    >>> said_of(OSError(errno.ENOSPC, "No space left on device"))
    'No space left on device'
    """
    known = _SAID.get(error.errno) if error.errno is not None else None
    if known is None or (error.errno in _OURS and error.strerror != known):
        return error.strerror or str(error)
    return told(known)
