"""What tests and benches share: made pieces, random programs, spoilt documents, a slow twin, an oracle."""
