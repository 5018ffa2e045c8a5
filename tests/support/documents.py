"""An invented document with every kind of block in it, and a painter for its pictures."""

from __future__ import annotations

from evenseam.wording.document import (
    Caution,
    Checkpoint,
    Code,
    Document,
    Emphasis,
    Heading,
    LineBreak,
    Link,
    ListBlock,
    Measured,
    Paragraph,
    Picture,
    StepBlock,
    Strong,
    Swatches,
    Table,
    Text,
)


def words(text: str) -> tuple[Text, ...]:
    """Return plain words as inlines."""
    return (Text(text),)


def paint(picture: Picture) -> str:
    """Return a plain square for any picture."""
    return '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 80"><rect width="120" height="80" fill="#23465f"/></svg>'


def sample_document(title: str = "Harbour Lanterns", words_of_author: str = "Lanterns for a quiet quay.") -> Document:
    """Return a small document with every kind of block; the title and one paragraph can be put in."""
    seven = Measured("7 3/8 in", "lantern_cut_width")
    return Document(
        title,
        "Wall hanging, inch edition",
        (
            Paragraph((Text(words_of_author), LineBreak(), Link("https://example.org/saltmarsh", words("The workshop")))),
            Picture("finished", f"Finished {title}", "Three lanterns side by side."),
            Heading(2, "materials", words("Materials")),
            Swatches((("sea", "A", "Deep Sea", "#23465f", (Measured("1 1/4 yd", "buy_sea"),)),)),
            Heading(2, "cutting", words("Cutting")),
            Table(
                "Cut from Deep Sea",
                (words("Piece"), words("Cut"), words("Size")),
                (
                    (words("Border sides"), words("2"), (Measured("2 1/2 in", "strip"), Text(" × "), seven)),
                    (words("Backing"), words("1"), (Measured("20 in", "backing"),)),
                ),
            ),
            Heading(2, "sewing", words("Sewing")),
            StepBlock(
                "outer-border-sides",
                1,
                "Sew the side borders",
                (
                    Picture("step-outer-border-sides", "Side borders", "Two strips beside the centre."),
                    Paragraph((Strong(words("Pin")), Text(" and sew with a "), Measured("1/4 in", "seam_allowance"), Text(" seam."))),
                    ListBlock(True, ((Paragraph(words("Press toward the border.")),), (Paragraph((Emphasis(words("Slowly")), Code("no steam"))),))),
                    Checkpoint((Text("Your piece now measures "), Measured("12 1/2 in", "w"), Text(" by "), seven, Text("."))),
                ),
            ),
            StepBlock("bind", 2, "Bind", (Paragraph(words("Fold it over.")), Caution("Hot iron", (Paragraph(words("Let it cool.")),)))),
        ),
    )  # fmt: skip
