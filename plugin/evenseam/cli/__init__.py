"""The command line: gathers text, calls one function, hands on what comes back."""
