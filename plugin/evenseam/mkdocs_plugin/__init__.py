"""The MkDocs plugin: a thin door between a site and the publisher."""
