# Reads a list of {"sides", "sum", "solve"} and prints for each whether the sides
# are equal wherever the sum is zero: the sum is solved for one letter, which is
# put into the sides.
import json
import re
import sys

from sympy import Rational, Symbol, acos, asin, atan, cos, pi, simplify, sin, solve, sqrt, tan

FUNCTIONS = {"Rational": Rational, "acos": acos, "asin": asin, "atan": atan,
             "cos": cos, "pi": pi, "sin": sin, "sqrt": sqrt, "tan": tan}


def holds(question):
    texts = question["sides"] + [question["sum"]]
    names = set(re.findall(r"v_\w+", " ".join(texts))) | {question["solve"]}
    letters = {name: Symbol(name, positive=True) for name in names}
    # The letter that is solved for may come out of either sign.
    letters[question["solve"]] = Symbol(question["solve"])
    known = {**FUNCTIONS, **letters}
    first, *rest = [eval(side, {"__builtins__": {}}, known) for side in question["sides"]]
    total = eval(question["sum"], {"__builtins__": {}}, known)
    letter = letters[question["solve"]]
    (value,) = solve(total, letter)
    return all(simplify((first - side).subs(letter, value)) == 0 for side in rest)


print(json.dumps([bool(holds(q)) for q in json.load(sys.stdin)]))
