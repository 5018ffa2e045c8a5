"""One module for each kind of picture: what is shown, and where."""
