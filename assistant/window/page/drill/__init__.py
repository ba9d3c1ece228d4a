"""The pages of a drill: choose one, work in the house or along the tree, end it, and hear how it went."""
