"""Problems of a change to a pattern that was published before."""

from __future__ import annotations

from evenseam.problems import Code, Severity

FIGURES_CHANGED_SAME_VERSION = Code(920, "figures-changed-same-version")
CHANGE_NOT_TOLD = Code(921, "change-not-told")
OLD_NOTE_ALTERED = Code(922, "old-note-altered", Severity.WARNING)
VERSION_GOES_BACK = Code(923, "version-goes-back")
PUBLISHED_NOT_COMPUTED = Code(924, "published-not-computed")

CODES = (FIGURES_CHANGED_SAME_VERSION, CHANGE_NOT_TOLD, OLD_NOTE_ALTERED, VERSION_GOES_BACK, PUBLISHED_NOT_COMPUTED)
