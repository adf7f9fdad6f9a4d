"""What is watched: frames, the encoded film, its voice, captions and chapters."""
