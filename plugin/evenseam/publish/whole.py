"""Files that appear whole or not at all."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path


def write_whole(path: Path, content: bytes, *, is_lasting: bool = True) -> None:
    """Write a file beside its place and let it take the name in one step.

    Whoever reads sees the old content or the new, also when two write at once. With `is_lasting` that holds even
    for a power cut; what is checked when it is read again, as in a cache, can do without the wait. Raises OSError.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, beside = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}-")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            if is_lasting:
                file.flush()
                os.fsync(file.fileno())
        # mkstemp makes files only their owner can read; a published file is for everybody.
        Path(beside).chmod(0o644)
        Path(beside).replace(path)
    except BaseException:
        Path(beside).unlink(missing_ok=True)
        raise
