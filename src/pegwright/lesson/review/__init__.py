"""What an editor would say about a lesson."""
