"""The MkDocs plugin: a thin door between a site and the publisher."""

from evenseam.mkdocs_plugin.plugin import EvenseamPlugin

__all__ = ["EvenseamPlugin"]
