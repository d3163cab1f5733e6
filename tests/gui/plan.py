"""The best plan of the first scene's vine, as acts: what both jobs carry out."""
import json
import subprocess


def best_acts(spurwright, code, *options):
    answer = subprocess.run([spurwright, "best", code, "--json", *options], check=True, capture_output=True, text=True)
    return [edit.split() for edit in json.loads(answer.stdout)["plans"][0]["plan"].split("; ")]


def node_of(place):
    """a12.3 of a12.3+20.0."""
    return place.split("+")[0].split("-")[0]
