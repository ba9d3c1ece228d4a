"""The blower: what the board sends it, how it turns and warms up, what a person sees of it."""
