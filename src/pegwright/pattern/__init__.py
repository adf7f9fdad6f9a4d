"""The document: frozen nouns, reading, writing, migrating, motifs and repeats."""
