"""What a learner watches: frames, the encoded film, its voice, captions and chapters."""
