"""Walking a tree: events in, the next question out. Pure: no clock, no file, no window, no chance."""
