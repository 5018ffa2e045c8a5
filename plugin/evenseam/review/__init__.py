"""From two sheets to the changes between them."""
