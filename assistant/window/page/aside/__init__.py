"""Pages that are opened from any step and lead back to it: nothing on the step is lost meanwhile."""
