"""The electric side: a linear AC network solved by nodal analysis, and the meter that is a part of it."""
