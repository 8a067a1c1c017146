"""Hold the books of the samples against the schemas in lib/schema, with python3-jsonschema.

    schema_test.py

- every document of samples/ and tests/transcripts/plain holds, read as YAML 1.2 and as YAML 1.1;
- every file of samples/ names in its first line, for editors, the schema that it is held against;
- every key of every document, misspelt one at a time, is refused, save where keys are names (counted).

Ends with a line of counts; the exit code is 1 if anything failed, and 77 (skipped) without python3-jsonschema or PyYAML.
"""

import copy
import json
import pathlib
import re
import sys

try:
    import yaml
    from jsonschema import Draft202012Validator
except ImportError:
    print("python3-jsonschema or PyYAML is not there: skipped")
    sys.exit(77)

SOURCE = pathlib.Path(__file__).resolve().parents[2]
FOLDERS = [*sorted((SOURCE / "samples").iterdir()), SOURCE / "tests" / "transcripts" / "plain"]


class Core(yaml.SafeLoader):
    """YAML 1.2 core, as editors read it: yes, no and dates are text."""


Core.yaml_implicit_resolvers = {}
for tag, pattern, first in [
        ("bool", r"true|false", "tf"), ("null", r"~|null|", "~n\0"),
        ("int", r"[-+]?(0|[1-9][0-9]*)", "-+0123456789"),
        ("float", r"[-+]?([0-9]+\.[0-9]*|\.[0-9]+)", "-+0123456789.")]:
    for letter in first:
        Core.add_implicit_resolver(f"tag:yaml.org,2002:{tag}", re.compile(f"^(?:{pattern})$"), letter)
Core.add_implicit_resolver("tag:yaml.org,2002:null", re.compile("^$"), "")


class Plain(yaml.SafeLoader):
    """YAML 1.1, as older tools read it, with dates as text."""


Plain.yaml_implicit_resolvers = {
    letter: [(tag, pattern) for tag, pattern in all_of if not tag.endswith("timestamp")]
    for letter, all_of in yaml.SafeLoader.yaml_implicit_resolvers.items()}


def kind_of(path, folder):
    name = path.relative_to(folder)
    return name.parts[0] if len(name.parts) > 1 else name.stem


def named_schema(path):
    """The schema that the first line of a file names, where it does."""
    line = re.match(r"# yaml-language-server: \$schema=(\S+)\n", path.read_text(encoding="utf-8"))
    return (path.parent / line.group(1)).resolve() if line else None


def misspelt(word):
    for i in range(len(word) // 2, 0, -1):
        if word[i] != word[i - 1] and " " not in (word[i], word[i - 1]):
            return word[:i - 1] + word[i] + word[i - 1] + word[i + 1:]
    return word + word


def mappings(value, path=()):
    """Where mappings stand in a document, and their keys."""
    if isinstance(value, dict):
        yield path, list(value)
    steps = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, below in steps:
        yield from mappings(below, path + (step,))


def with_slip(document, path, key):
    changed = copy.deepcopy(document)
    at = changed
    for step in path:
        at = at[step]
    items = [(misspelt(each) if each == key else each, value) for each, value in at.items()]
    at.clear()
    at.update(items)
    return changed


def is_name(schema, path, root):
    """Whether the keys of the mapping at a path are names there: by walking the schema along it."""
    def resolve(part):
        found = [part]
        if "$ref" in part:
            found = resolve(root["$defs"][part["$ref"].rsplit("/", 1)[1]])
        for choice in part.get("anyOf", ()):
            if "required" not in choice:
                found += resolve(choice)
        return found

    parts = resolve(schema)
    for step in path:
        below = []
        for part in parts:
            if isinstance(step, int):
                below += resolve(part["items"]) if "items" in part else []
            elif step in part.get("properties", ()):
                below += resolve(part["properties"][step])
            elif isinstance(part.get("additionalProperties"), dict):
                below += resolve(part["additionalProperties"])
        parts = below
    return any(isinstance(part.get("additionalProperties"), dict) and "propertyNames" not in part
               for part in parts)


def main():
    documents = refused = names = others = failed = 0
    for folder in FOLDERS:
        for path in sorted(folder.rglob("*.yaml")):
            place = SOURCE / "lib/schema" / f"{kind_of(path, folder)}.schema.json"
            schema = json.loads(place.read_text())
            if folder.parent.name == "samples" and named_schema(path) != place:
                failed += 1
                print(f"{path}: its first line is not '# yaml-language-server: $schema=' with the way to {place.name}")
            Draft202012Validator.check_schema(schema)
            validator = Draft202012Validator(schema)
            for loader in (Core, Plain):
                for document in yaml.load_all(path.read_text(), loader):
                    documents += 1
                    for error in validator.iter_errors(document):
                        failed += 1
                        print(f"{path}: {list(error.path)}: {error.message[:300]}")
                    if loader is Plain:
                        continue
                    for where, keys in mappings(document):
                        for key in keys:
                            if not isinstance(key, str):
                                names += 1
                            elif not validator.is_valid(with_slip(document, where, key)):
                                refused += 1
                            elif is_name(schema, where, schema):
                                names += 1
                            else:
                                others += 1
                                print(f"{path}: {list(where)}: '{misspelt(key)}' is taken for '{key}'")
    print(f"{documents} documents, {refused} slips refused, {names} names free, {others} slips taken, {failed} failed")
    return 1 if failed or others else 0


sys.exit(main())
