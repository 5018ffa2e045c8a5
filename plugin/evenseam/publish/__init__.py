"""From sheets to pages, handouts, templates and the files of a whole site."""
