"""A simulated heating system: a fault changes a component, and every reading follows from that.

Physics only. Nothing here knows a tree, a step or a finding; the files of resources/faults name those.
"""

import os

# Networks of a hundred nodes: several threads for one solution cost more than they bring.
for _threads in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_threads, "1")
