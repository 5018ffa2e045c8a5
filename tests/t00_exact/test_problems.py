"""Problems as an author reads them."""

from __future__ import annotations

from evenseam.problems import Code, Label, Outcome, Place, Problem, Report, Severity, SourceText, show_problem

WIDE = Code(501, "piece-wider-than-fabric")
ODD = Code(402, "off-the-ruler", Severity.WARNING)
SOURCE = SourceText("patterns/sample/pattern.yaml", "title: Sample\nborders:\n  cut across: 44 1/2\n")


def place(line: int, column: int, end: int) -> Place:
    return Place(SOURCE.name, line, column, line, end)


def test_the_one_form_of_a_problem() -> None:
    problem = Problem(
        WIDE, "border strip needs 44 1/2 in, usable width is 42 in", place(3, 15, 21), "cut it along the length",
        (Label(place(1, 1, 6), "this pattern"),),
    )  # fmt: skip
    assert show_problem(problem, {SOURCE.name: SOURCE}).splitlines() == [
        "patterns/sample/pattern.yaml:3:15: error[piece-wider-than-fabric]: border strip needs 44 1/2 in, usable width is 42 in",
        "    3 |   cut across: 44 1/2",
        "      |               ~~~~~~",
        "   patterns/sample/pattern.yaml:1:1: this pattern",
        "    1 | title: Sample",
        "      | ~~~~~",
        "   hint: cut it along the length",
    ]


def test_a_place_outside_the_text_is_shown_without_a_line() -> None:
    shown = show_problem(Problem(WIDE, "a fact", place(99, 1, 2)), {SOURCE.name: SOURCE})
    assert shown == "patterns/sample/pattern.yaml:99:1: error[piece-wider-than-fabric]: a fact"


def test_control_characters_never_reach_the_terminal() -> None:
    source = SourceText("x", "title: \x1b[31mred\x07")
    shown = show_problem(Problem(WIDE, "a fact", Place("x", 1, 8, 1, 12)), {"x": source})
    assert "\x1b" not in shown and "\x07" not in shown


def test_a_report_keeps_each_problem_once_in_the_order_of_places() -> None:
    report = Report()
    report.add(WIDE, place(3, 1, 2), "second")
    report.add(ODD, place(1, 1, 2), "first")
    report.add(WIDE, place(3, 1, 2), "second")
    assert [problem.message for problem in report.as_tuple()] == ["first", "second"]
    assert report.has_errors()


def test_warnings_do_not_stop_publishing() -> None:
    warning = Problem(ODD, "a fact", None)
    assert Outcome(1, (warning,)).is_valid
    assert not Outcome(1, (Problem(WIDE, "a fact", None),)).is_valid
    assert not Outcome(None, ()).is_valid
    assert Outcome(1, (warning, Problem(WIDE, "a fact", None))).errors == (Problem(WIDE, "a fact", None),)
