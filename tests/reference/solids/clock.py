"""How long one case takes on one mesh, and how far its figures then are from the best estimates in solids.json.

    venv/bin/python clock.py flange-far 2

The last line it prints is JSON: processor time in seconds, unknowns, and the largest distance of a peak to valley
from its best estimate under even pressure and under rigid jaws, as a share of the largest of its load.
"""

import json
import sys
import time

from cases import CASES
from solve import OUT, on_level


def main(name, level):
    case = next(c for c in CASES if c.name == name)
    best = next(c for c in json.loads(OUT.read_text())["cases"] if c["name"] == name)
    start = time.process_time()
    loads, size = on_level(case, level)
    seconds = time.process_time() - start
    off = dict(uniform=0.0, rigid=0.0)
    for entry in best["results"]:
        kind = entry["load"]
        if kind not in off:
            continue
        found = loads["rigid", entry["mismatch"], entry.get("taper", 0.0)] if kind == "rigid" else loads[kind]
        lines = [(line, line["peak_to_valley"]["value"]) for line in entry["lines"]]
        scale = max(value for _, value in lines)
        for line, value in lines:
            at = next(k for k in found if k[0] == line["surface"] and abs(k[1] - line["z"]) < 1e-9 and k[2] == "peak_to_valley")
            off[kind] = max(off[kind], abs(found[at] - value) / scale)
    print(json.dumps(dict(seconds=seconds, unknowns=size["unknowns"], off=[off["uniform"], off["rigid"]])))


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]))
