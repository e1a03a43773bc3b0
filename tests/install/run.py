"""A program run to its end, its words kept."""
import subprocess


def run(*words, **more):
    return subprocess.run([str(word) for word in words], capture_output=True, text=True, check=False, **more)
