"""The trail: what happened in a visit, one line on disk for each event, synced before the next step shows."""
