"""What all visits together say: search, counts, what was usually found, and a changed tree tried on the past.

Everything here is worked out from the trails and may be deleted at any time; the trails stay the only truth.
Practice is never counted.
"""
