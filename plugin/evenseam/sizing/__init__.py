"""From a project size to finished sizes, cut list and assembly program, and the simulator that proves them."""

from evenseam.sizing.sized import Measurement, Placed, SewingLog, SizedProject

__all__ = ["Measurement", "Placed", "SewingLog", "SizedProject"]
