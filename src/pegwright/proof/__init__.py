"""Is every band held? Certificates, and a small checker that trusts nothing."""
