"""A simulated heating system: a fault changes a component, and every reading follows from that.

Physics only. Nothing here knows a tree, a step or a finding; the files of resources/faults name those.
"""
