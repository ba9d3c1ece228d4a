"""The window: thin Qt widgets over a visit. Every page is made from what is asked and sends an event."""
