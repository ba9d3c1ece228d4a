"""The simulated house as the driver of a walk: proof of the trees, practice and debrief."""
