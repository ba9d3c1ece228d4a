"""The zone survey's own widgets: the grid, the plan of who blows where, and what it says so far."""
