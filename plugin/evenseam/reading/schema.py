"""The format as a JSON Schema, for editors that complete and check while one writes."""

from __future__ import annotations

from typing import Any, TypeAlias

from evenseam.reading.drawn_values import MOST_CORNERS
from evenseam.reading.format import PATTERN, SIZE
from evenseam.reading.kinds import (
    BlockName,
    BlockOrSpacer,
    BlockPlacement,
    Choice,
    Colour,
    Corners,
    Count,
    Date,
    Editions,
    FabricName,
    Field,
    FinishedSize,
    FormatNumber,
    GridSize,
    Items,
    Kind,
    Length,
    Markdown,
    NamedUnit,
    Piece,
    Record,
    ShortOrLong,
    Stated,
    Table,
    TargetSize,
    Variants,
    Words,
    YesNo,
)
from evenseam.reading.leaves import FORMAT_NUMBER
from evenseam.reading.part_keys import PIECE

Schema: TypeAlias = dict[str, Any]

_NUMBER = r"(\d{1,9}[ -]+)?\d{1,9}/\d{1,9}|\d{1,9}(\.\d{1,9})?|(\d{1,9} ?)?[½¼¾⅛⅜⅝⅞⅓⅔]"
_UNIT = r"( *(in|inch|inches|cm|centimetres?|centimeters|[\"″]|yd|yards?|m|metres?))?"
_LENGTH = rf"({_NUMBER}){_UNIT}"
_GRID_NUMBER = r"\d{1,4}-\d{1,4}/\d{1,3}|\d{1,4}/\d{1,3}|\d{1,4}(\.\d{1,3})?"
_CORNER = rf"-?({_GRID_NUMBER}),-?({_GRID_NUMBER})"


def schema() -> Schema:
    """Return the JSON Schema (2020-12) of a pattern file, made from the same table of keys the reader goes by.

    Where an editor would take a value for a number (`width: 2`), number and text are both allowed. What only the
    whole file tells, such as whether a fabric is defined or a key is supplied by every size, is left to the reader.
    """
    maker = _Maker()
    top = maker.record(PATTERN, is_over=False)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Evenseam pattern file, format 1",
        **top,
        "required": [field.key for field in PATTERN.fields if field.is_required and field.of_the_whole],
        "$defs": dict(sorted(maker.definitions.items())),
    }


class _Maker:
    """Collects a definition for every record, once as it stands and once as a size may override it."""

    def __init__(self) -> None:
        self.definitions: dict[str, Schema] = {}

    def record(self, record: Record, is_over: bool) -> Schema:
        properties = {field.key: self.field(field, is_over) for field in record.fields}
        made: Schema = {"type": "object", "properties": properties, "additionalProperties": False}
        return made

    def field(self, field: Field, is_over: bool) -> Schema:
        made = self.kind(field.kind, is_over)
        if is_over or not field.is_required:
            made = {"anyOf": [made, {"const": "none"}, {"type": "null"}]}
        said = field.meaning + (f" Default: {field.default}." if field.default else "")
        made = {"description": said, **made}
        if field.example and not isinstance(field.kind, (Record, Variants, Table, Items, Editions)):
            made["examples"] = [field.example.strip('"')]
        return made

    def named(self, name: str, is_over: bool, made_of: Record | Variants) -> Schema:
        key = f"{name} in a size" if is_over else name
        if key not in self.definitions:
            self.definitions[key] = {}
            made = self.record(made_of, is_over) if isinstance(made_of, Record) else self.variants(made_of, is_over)
            self.definitions[key] = made
        return {"$ref": f"#/$defs/{key.replace(' ', '%20')}"}

    def variants(self, kind: Variants, is_over: bool) -> Schema:
        properties: dict[str, Schema] = {kind.key: {"enum": list(kind.options), "description": kind.meaning}}
        rules: list[Schema] = []
        for word, record in kind.records:
            # A key of two variants takes the fuller of its two forms.
            properties |= {field.key: self.field(field, is_over) for field in record.fields}
            allowed = [kind.key, *(field.key for field in record.fields)]
            chosen = {"properties": {kind.key: {"const": word}}, "required": [kind.key]}
            rules.append({"if": chosen, "then": {"propertyNames": {"enum": allowed}}})
        return {"type": "object", "properties": properties, "additionalProperties": False, "allOf": rules}

    def table(self, kind: Table, is_over: bool) -> Schema:
        inner = self.kind(kind.item, is_over or kind.item is SIZE)
        if is_over or kind.item is SIZE:
            inner = {"anyOf": [inner, {"const": "none"}, {"type": "null"}]}
        names = {"minLength": 1, "maxLength": kind.longest_key}
        return {"type": "object", "additionalProperties": inner, "maxProperties": kind.most, "propertyNames": names}

    def piece(self, kind: Piece) -> Schema:
        long = {**self.record(kind.long, is_over=False), "required": [f.key for f in kind.long.fields if f.is_required]}
        names = {"not": {"enum": [field.key for field in PIECE.fields]}}
        corners = self.kind(Corners(), is_over=False)
        short = {
            "type": "object",
            "additionalProperties": corners,
            "propertyNames": names,
            "minProperties": 1,
            "maxProperties": 1,
        }
        return {"anyOf": [short, long]}

    def editions(self, kind: Editions) -> Schema:
        over = {"anyOf": [self.named(kind.over.name, True, kind.over), {"type": "null"}, {"const": "none"}]}
        by_unit = {"type": "object", "properties": {unit: over for unit in kind.units}, "additionalProperties": False}
        listed = {"type": "array", "items": {"enum": list(kind.units)}}
        return {"anyOf": [listed, by_unit, {"enum": list(kind.units)}]}

    def kind(self, kind: Kind, is_over: bool) -> Schema:
        match kind:
            case Record():
                if any(not field.is_required for field in kind.fields) or len(kind.fields) > 3:
                    return self.named(kind.name, is_over, kind)
                return {**self.record(kind, is_over), "required": [field.key for field in kind.fields]}
            case Variants():
                return self.named(kind.name, is_over, kind)
            case Table():
                return self.table(kind, is_over)
            case Items():
                return {"type": "array", "items": self.kind(kind.item, is_over), "minItems": 1, "maxItems": kind.most}
            case Piece():
                return self.piece(kind)
            case Editions():
                return self.editions(kind)
            case ShortOrLong():
                return {"anyOf": [self.kind(kind.short, is_over), self.named(kind.long.name, is_over, kind.long)]}
            case _:
                return _leaf(kind)


def _leaf(kind: Kind) -> Schema:
    match kind:
        case Words() | Markdown():
            return {"type": ["string", "number"], "minLength": 1}
        case FabricName() | BlockName() | BlockPlacement() | BlockOrSpacer() | NamedUnit() | TargetSize():
            return {"type": ["string", "number"], "minLength": 1}
        case Length():
            number = {} if kind.may_be_negative else {"minimum": 0} if kind.may_be_zero else {"exclusiveMinimum": 0}
            minus = "[-−]?" if kind.may_be_negative else ""
            return {"anyOf": [{"type": "number", **number}, _text(minus + _LENGTH)]}
        case Stated():
            return {"anyOf": [{"type": "number"}, _text("[-−]?" + _LENGTH)]}
        case Count():
            return {"anyOf": [{"type": "integer", "minimum": 1, "maximum": kind.most}, _text(r"0*[1-9]\d{0,8}")]}
        case Choice():
            return {"enum": list(kind.options)}
        case YesNo():
            return {"enum": ["yes", "no", True, False]}
        case Colour():
            return _text("#[0-9a-fA-F]{6}")
        case Date():
            return {**_text(r"\d{4}-\d{2}-\d{2}"), "format": "date"}
        case FinishedSize():
            size = rf"({_LENGTH})( *[x×] *({_LENGTH}))?"
            return {"anyOf": [{"type": "number", "exclusiveMinimum": 0}, _text(size)]}
        case GridSize():
            size = rf"({_GRID_NUMBER})( *[x×] *({_GRID_NUMBER}))?"
            return {"anyOf": [{"type": "number", "exclusiveMinimum": 0}, _text(size)]}
        case Corners():
            return _text(rf"({_CORNER})(\s+({_CORNER})){{2,{MOST_CORNERS - 1}}}")
        case FormatNumber():
            return {"enum": [int(FORMAT_NUMBER), FORMAT_NUMBER]}
    raise AssertionError(f"{type(kind).__name__} is no single value")


def _text(pattern: str) -> Schema:
    return {"type": "string", "pattern": rf"^\s*({pattern})\s*$"}
