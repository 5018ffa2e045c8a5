"""What several tests share: sample projects, strategies, published tables."""
