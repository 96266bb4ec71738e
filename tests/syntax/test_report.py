from planlang.syntax.diagnostics import Diagnostic, Severity, in_order
from planlang.syntax.nodes import PlanFile
from planlang.syntax.project import Project
from planlang.syntax.report import finding_as_text, summary
from planlang.syntax.span import Span

PROJECT = Project((PlanFile("a.plan", ["\tfloor\u202e 漢字 7200"]),))


def test_a_finding_has_place_code_message_line_mark_and_mend():
    text = finding_as_text(Diagnostic("some-code", "it is off", Span("a.plan", 1, 12, 4), "mend it"), PROJECT)
    assert text.splitlines() == [
        "a.plan:1:12: error some-code",
        "  it is off",
        "     floor. 漢字 7200",
        "                 ^^^^",
        "  mend: mend it",
    ]


def test_findings_are_sorted_and_said_once():
    one, two = Diagnostic("b", "m", Span("a.plan", 2, 1)), Diagnostic("a", "m", Span("a.plan", 1, 9))
    assert in_order([one, two, one]) == (two, one)


def test_the_summary_counts():
    warning = Diagnostic("a", "m", Span("a.plan", 1, 1), severity=Severity.WARNING)
    assert summary([warning, warning]) == "no errors, 2 warnings"
    assert summary([Diagnostic("a", "m", Span("a.plan", 1, 1))]) == "1 error, no warnings"
