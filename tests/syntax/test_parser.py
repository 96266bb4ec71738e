import pytest

from planlang.syntax.nodes import Compound
from planlang.syntax.parser import normalise, parse_file


def statements(text):
    parsed = parse_file("a.plan", text)
    assert parsed.diagnostics == ()
    return parsed.value.statements


def kinds(text):
    return [item.type for item in statements(text)[0].items]


def test_a_statement_is_words_values_and_commas():
    assert kinds('window w1 on east wall at 1900, 1600 x 1100, sill 900, "new"') == [
        "NAME", "NAME", "NAME", "NAME", "NAME", "NAME", "NUMBER", "COMMA", "SIZE", "COMMA", "NAME", "NUMBER", "COMMA",
        "STRING",
    ]  # fmt: skip


def test_blocks_nest_and_blank_lines_and_comments_count_for_nothing():
    room, job = statements(
        "# top\nroom loft { # here\n\n  ceiling {\n    flat a at 3000\n  }\n\n  # note\n}\njob {\n}\n"
    )
    assert [part.word for part in room.body] == ["ceiling"]
    assert [part.word for part in room.body[0].body] == ["flat"]
    assert job.body == []


def test_a_comma_at_the_end_of_a_line_continues_the_statement():
    assert len(statements("keep 150 clear of rooflights,   # and\n\n   200 clear of luminaires\n")) == 1


def test_a_bracket_may_hold_a_line_end():
    assert kinds("figure a (\n 3 mm + 4 mm\n)") == ["NAME", "NAME", "SUM"]


def test_a_sign_glued_to_its_number_is_a_sign_and_one_with_spaces_takes_away():
    assert kinds("x 600 -3") == ["NAME", "NUMBER", "NUMBER"]
    assert kinds("x 600 - 3") == ["NAME", "SUM"]
    assert kinds("x 600-3") == ["NAME", "SUM"]


def test_a_size_needs_no_spaces_and_takes_either_sign():
    for text in ("x 600 x 1500", "x 600x1500", "x 600 × 1500", 'x 24" x 72"', 'x 24"x72"'):
        size = statements(text)[0].items[1]
        assert isinstance(size, Compound)
        assert len(size.parts) == 2


def test_line_ends_of_every_kind_and_a_byte_order_mark_are_taken():
    assert normalise("\ufeffa\r\nb\rc") == "a\nb\nc\n"


def found(text):
    return [(f.code, f.span.line, f.span.column) for f in parse_file("a.plan", text).diagnostics]


def test_each_broken_line_is_one_finding_and_the_others_are_kept():
    text = 'plan "x"\nfigure a 3 mm +\nfigure b ; 4\nfigure c "abc\nfigure d (4 mm\nfigure e 5 mm\n'
    parsed = parse_file("a.plan", text)
    assert [(f.code, f.span.line) for f in parsed.diagnostics] == [
        ("stray-character", 3), ("open-quote", 4), ("broken-line", 2), ("broken-line", 5),
    ]  # fmt: skip
    assert [s.word for s in parsed.value.statements if not s.faulty] == ["plan", "figure"]


def test_a_missing_brace_is_found_by_the_look_of_the_lines():
    text = "room a {\n  ceiling {\n    flat b at 3\n  floor rectangle 1 x 2\n}\njob {\n}\n"
    parsed = parse_file("a.plan", text)
    assert [(f.code, f.span.line) for f in parsed.diagnostics] == [("open-block", 4)]
    room = parsed.value.statements[0]
    assert [part.word for part in room.body] == ["ceiling", "floor"]
    assert parsed.value.statements[1].word == "job"


def test_a_block_open_at_the_end_is_named():
    assert found("room a {\n  floor rectangle 1 x 2\n") == [("open-block", 1, 1)]


def test_a_brace_too_many_and_one_with_company_are_found():
    assert found("job {\n}\n}\n") == [("stray-brace", 3, 1)]
    assert found("job {\n} x\n") == [("stray-brace", 2, 3)]
    assert found("{\n}\n")[0] == ("stray-brace", 1, 1)


def test_what_stands_in_a_broken_head_still_has_its_block_read():
    parsed = parse_file("a.plan", "room a + {\n  floor rectangle 1 x 2\n}\n")
    assert [f.code for f in parsed.diagnostics] == ["broken-line"]
    assert [part.word for part in parsed.value.statements[0].body] == ["floor"]


def test_after_a_character_that_nobody_can_read_lines_and_columns_stay_right():
    text = "a 1,\n  2, # note\n  3\nb ;\nc (\n  1 + 2)\nd = 5 {\n  e 6\n}\nf 7 $\n\ng 8\n"
    outcome = parse_file("a.plan", text)
    assert [(f.code, f.span.line, f.span.column) for f in outcome.diagnostics] == [
        ("stray-character", 4, 3), ("stray-character", 7, 3), ("stray-character", 10, 5),
    ]  # fmt: skip
    read = [(str(s.items[0]), s.items[0].line, s.items[0].column, s.faulty) for s in outcome.value.statements]
    assert read == [
        ("a", 1, 1, False), ("b", 4, 1, True), ("c", 5, 1, False), ("d", 7, 1, True), ("f", 10, 1, True),
        ("g", 12, 1, False),
    ]  # fmt: skip
    assert [item.line for item in outcome.value.statements[0].items if item.type == "NUMBER"] == [1, 2, 3]
    assert [(str(s.items[0]), s.items[0].line) for s in outcome.value.statements[3].body or ()] == [("e", 8)]


def texts(text):
    items = statements(text)[0].items
    return [str(item) if isinstance(item, str) else [str(part) for part in item.parts] for item in items]


def test_a_blank_parts_thousands_only_where_nothing_else_can_be_meant():
    assert texts("up 500 550 x 780") == ["up", "500", ["550", "780"]]
    assert texts("at 1 797 mm") == ["at", "1 797 mm"]
    assert texts("at 1 797") == ["at", "1", "797"]
    assert texts("at 1\u00a0797") == ["at", "1\u00a0797"]
    assert texts("at 12 50 mm") == ["at", "12", "50 mm"]
    assert texts("up 500 550 mm x 780 mm") == ["up", "500", ["550 mm", "780 mm"]]
    assert texts("face 600 mm x 1 797 mm") == ["face", ["600 mm", "1"], "797 mm"]


def test_blanks_between_a_number_and_its_unit_do_not_matter():
    for text in ("600mm", "600 mm", "600   mm", "600\tmm", "10  3/4  in", "5' \t6\"", "5  ft  6  in"):
        assert len(statements(f"a {text}")[0].items) == 2, text


def test_a_text_may_follow_a_number_and_an_inch_mark_stands_straight_after_it():
    assert kinds('specific-gravity 0.42 "stamp"') == ["NAME", "NUMBER", "STRING"]
    assert kinds('specific-gravity 0.42, "stamp"') == ["NAME", "NUMBER", "COMMA", "STRING"]
    assert kinds('face 24" x 72"') == ["NAME", "SIZE"]


def test_signs_that_a_word_processor_makes_are_read_where_they_are_plain():
    assert kinds("density 45 kg/m³") == kinds("pitch 40°") == kinds("air 20 °C") == ["NAME", "QUANTITY"]
    assert kinds("at 5′ 10 3/4″") == ["NAME", "TAPE"]
    assert kinds("face 600 X 1500") == ["NAME", "SIZE"]
    assert kinds("array a, mark X") == ["NAME", "NAME", "COMMA", "NAME", "NAME"]


def test_a_line_goes_on_while_a_bracket_is_open():
    wanted = ["NAME", "NAME", "SUM"]
    for text in (
        "(\n  3 mm + 4 mm\n)", "(3 mm +\n  4 mm)", "(3 mm\n  + 4 mm)", "(3 mm + # one\n  # two\n\n  4 mm)",
        "((3 mm\n) +\n(4 mm -\n 1 mm))",
    ):  # fmt: skip
        assert kinds(f"figure a {text}\n") == wanted, text
        assert len(statements(f"figure a {text}\nfigure b 3 mm\n")) == 2, text
    assert kinds("figure a least of (3 mm\n, 4 mm,\n 5 mm\n)\n") == ["NAME", "NAME", "CALL"]


def test_a_bracket_that_nobody_closes_costs_its_own_line_alone():
    for broken in ("figure a (4 mm", "figure a (4 mm +", "figure a (", "figure a least of (3 mm,"):
        parsed = parse_file("a.plan", f"{broken}\nfigure b 5 mm\nfigure c 6 mm\n")
        assert [(f.code, f.span.line) for f in parsed.diagnostics] == [("broken-line", 1)], broken
        assert [str(s.items[1]) for s in parsed.value.statements if not s.faulty][-1] == "c"


def test_what_cannot_be_read_in_a_bracket_leaves_lines_and_columns_right():
    parsed = parse_file("a.plan", "a (\n 3 mm +\n ; 4\nb 4\nc (3 mm\n + $)\nd 5\n")
    assert [(f.code, f.span.line, f.span.column) for f in parsed.diagnostics] == [
        ("stray-character", 3, 2), ("stray-character", 6, 4),
    ]  # fmt: skip
    assert [(str(s.items[0]), s.items[0].line) for s in parsed.value.statements if not s.faulty] == [("b", 4), ("d", 7)]


def test_a_comma_before_nothing_is_found_where_it_stands():
    assert found("keep 3,\n") == [("stray-comma", 1, 7)]
    assert found("a {\n  keep 3,  # and?\n}\nb 4\n") == [("stray-comma", 2, 9)]


def test_braces_do_their_work_wherever_they_stand():
    assert found("room a\n{\n  ceiling\n\n  {\n    flat b at 3\n  }\n}\n") == [
        ("stray-brace", 2, 1), ("stray-brace", 5, 3),
    ]  # fmt: skip
    assert found("job {\n  money GBP }\nfigure a 3 mm\n") == [("broken-line", 2, 13)]
    assert found("job { money GBP }\nfigure a 3 mm\n") == [("broken-line", 1, 5)]
    assert found("job {\n} room a {\n  b 3\n}\n") == [("stray-brace", 2, 3)]
    assert found("{\n  a 3\n}\nb 4\n") == [("stray-brace", 1, 1)]
    parsed = parse_file("a.plan", "room a\n{\n  floor 3\n}\nb 4\n")
    assert [statement.word for statement in parsed.value.statements] == ["room", "b"]
    assert [statement.word for statement in parsed.value.statements[0].body] == ["floor"]


@pytest.mark.parametrize(
    ("line", "mend"),
    [
        ("plan “Small room”", 'write straight quotes: `"Small room"`'),
        ("price £46 per sheet", "write `46 GBP`"),
        ("price 46 € per sheet", "write `46 EUR`"),
        ("kerf 3; trim 4", "write a comma instead"),
        ("kerf 3;", "take it out: the end of the line ends a statement"),
        ("face 24” x 72”", 'write a straight inch mark: `24"`'),
        ("at 5’ 6", "write a straight foot mark"),
        ("drop 8''", 'write a double quote for inches: `8"`'),
        ("client 'A. Client'", "write text in double quotes"),
        ("depth 600 – 3", "write a plain `-`"),
        ('depth 10½"', "write `10 1/2`"),
    ],
)
def test_a_character_that_means_nothing_comes_with_what_to_write(line, mend):
    finding = parse_file("a.plan", f"{line}\n").diagnostics[0]
    assert finding.code == "stray-character"
    assert finding.mend.startswith(mend)


@pytest.mark.parametrize(
    ("line", "mend"),
    [
        ('drop 4 "', 'put an inch mark straight after its number: `4"`'),
        ('plan "Small room', 'end the text with a second "'),
    ],
)
def test_a_lone_double_quote_is_an_open_text_or_a_loose_inch_mark(line, mend):
    finding = parse_file("a.plan", f"{line}\n").diagnostics[0]
    assert (finding.code, finding.mend) == ("open-quote", mend)
