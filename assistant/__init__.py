"""Fault Trail: walks a technician through a heating call, one measurement at a time."""

__version__ = "0.1.0"
