"""From texts to a pattern: YAML, drawings, and every check on them."""
