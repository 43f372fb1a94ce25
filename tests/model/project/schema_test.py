"""Checks projects against the schema, and that the schema refuses what it should.

usage: schema_test.py SCHEMA PROJECT...
"""

import copy
import json
import sys

import jsonschema


def objects_in(value):
    if isinstance(value, dict):
        yield value
        for inner in value.values():
            yield from objects_in(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from objects_in(inner)


def count_refused(validator, project, spoil):
    """Spoils each object of the project in turn; the schema must refuse every one."""
    count = sum(1 for _ in objects_in(project))
    refused = 0
    for index in range(count):
        spoilt = copy.deepcopy(project)
        if spoil(list(objects_in(spoilt))[index]) is False:
            count -= 1
            continue
        refused += not validator.is_valid(spoilt)
    assert refused == count, f"{count - refused} of {count} spoilt projects were let through"
    return refused


def add_unknown_field(thing):
    thing["colour"] = "red"


def turn_first_text_into_number(thing):
    texts = [key for key, value in thing.items() if isinstance(value, str)]
    if not texts:
        return False
    thing[texts[0]] = 36


def check(validator, path):
    with open(path, encoding="utf-8") as file:
        project = json.load(file)
    validator.validate(project)
    unknown = count_refused(validator, project, add_unknown_field)
    numbers = count_refused(validator, project, turn_first_text_into_number)
    assert unknown > 0 and numbers > 0
    for version in (0, 2, "1"):
        assert not validator.is_valid({**project, "barwright": version})
    print(f"{path}: valid; refused with {unknown} unknown fields and {numbers} numbers for texts")


def main(schema_path, project_paths):
    with open(schema_path, encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    assert project_paths, "no project given"
    for path in project_paths:
        check(validator, path)


main(sys.argv[1], sys.argv[2:])
