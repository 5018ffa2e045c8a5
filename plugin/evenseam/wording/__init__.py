"""From a sheet to sentences: a small document tree that pages and handouts are both written from."""
