"""From a sheet to pictures: drawn once, written in two themes (web and print)."""
