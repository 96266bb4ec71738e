"""The pages of what is wrong with a plan's statements, values and names."""

from planlang.plan.floor_pages import FLOOR_PAGES
from planlang.syntax.pages import Page

PAGES = {
    **FLOOR_PAGES,
    # --- values ---------------------------------------------------------------------------------------------
    "value-too-deep": Page(
        "Too many brackets within brackets",
        "A value may have brackets within brackets, but not forty of them. Name parts of it as figures.",
        wrong=(("depth 75", "depth " + "(1 + " * 41 + "34" + ")" * 41),),
        right=(("depth 75", "depth 60 + (10 + 5)"),),
    ),
    "number-too-long": Page(
        "A number with too many digits",
        "No rule reads more than a few digits. A number may be written with sixty of them, and what is reckoned from "
        "figures may not grow without bounds: often a figure is multiplied by itself where it should be added.",
        wrong=(("depth 75", "depth 75." + "0" * 60 + "1"),),
        right=(("depth 75", "depth 75.0"),),
    ),
    "value-too-long": Page(
        "A value put together from too many parts",
        "One sum, product or choice may have 250 values. Name parts of it as figures, and add those up.",
        wrong=(("depth 75", "depth 75" + " + 0" * 250),),
        right=(("depth 75", "depth 60 + 10 + 5"),),
    ),
    "list-too-long": Page(
        "A list with too many entries",
        "A list after one word may have 500 entries; a statement can be written several times with a part of the list "
        "each.",
        wrong=(("lining walls, floor plaster", "lining walls" + ", walls" * 500 + ", floor plaster"),),
    ),
    "division-by-zero": Page(
        "A division by zero",
        "Nothing can be divided by zero. Look at what stands after the `/`, also inside the figures it refers to.",
        wrong=(("depth 75", "depth 150 mm / 0"),),
        right=(("depth 75", "depth 150 mm / 2"),),
    ),
    "unknown-figure": Page(
        "A figure that nobody stated",
        "A name in a value stands for a figure, which is stated with `figure` in this file above, or in a file that it "
        "uses.",
        given=(("units mm", "units mm\nfigure batt-depth 50 mm"),),
        wrong=(("depth 75", "depth bat-depth + 25 mm"),),
        right=(("depth 75", "depth batt-depth + 25 mm"),),
    ),
    "kinds-differ": Page(
        "Things that can't be reckoned together",
        "A length and a mass do not add up, nor does money in two currencies. Lengths may be added, multiplied into an "
        "area, or multiplied and divided by plain numbers and shares.",
        wrong=(("depth 75", "depth 60 mm + 15 kg"),),
        right=(("depth 75", "depth 60 mm + 15 mm"),),
    ),
    "unit-not-stated": Page(
        "A length whose unit nobody knows",
        "A bare number is a length in the unit that its own file states at the top. Where the file states none, the "
        "number could be millimetres or inches. It is said once for each file.",
        wrong=(("units mm\n", ""),),
    ),
    "unknown-unit": Page(
        "A unit that is misspelt",
        "The units are listed in the chapter on values. A space may stand between number and unit, none inside the "
        "unit.",
        wrong=(("density 680 kg/m3", "density 680 kgm3"),),
    ),
    "numbers-run-together": Page(
        "Two numbers with nothing between them",
        "A comma parts the values of a list, and a foot mark the feet from the inches. A blank between digits parts "
        "thousands only where the unit follows, as in `1 797 mm`, and not in a size; anywhere else it may be one "
        "number or two, and a plan may not be guessed at.",
        wrong=(("gap 500, centred across", "gap 1 500, centred across"),),
    ),
    "decimal-comma": Page(
        "A comma inside a number",
        "The decimal sign is a point: `75.5`. A comma parts the values of a list, so `75,5` is 75 and 5; and the "
        "thousands of `1,200` are written without a sign.",
        wrong=(("depth 75", "depth 75,5"),),
    ),
    "size-sign": Page(
        "A size without its sign",
        "The sides of a size have an `x` between them: `600 x 1200`.",
        wrong=(("face 600 x 1200", "face 600 by 1200"),),
    ),
    "size-unit": Page(
        "A size with one unit for all sides",
        "Each side of a size has its own unit, or none, which is the file's. In `7.2 x 5.4 m` the first side would be "
        "in the unit of the file; nobody means that.",
        wrong=(("face 600 x 1200", "face 0.6 x 1.2 m"),),
    ),
    "loose-inch-mark": Page(
        "An inch mark that stands apart from its number",
        "A double quote straight after a digit is an inch mark. After a blank it begins a text.",
        wrong=(("face 600 x 1200", 'face 24 " x 48 "'),),
        right=(("face 600 x 1200", "face 600 mm x 1200 mm"),),
    ),
    "wrong-kind": Page(
        "A value of the wrong kind",
        "The statement wants a length, say, and a mass stands there. Often the unit is a slip of the pen, or it is "
        "missing where it can't be guessed: only lengths may go without.",
        wrong=(("mass 50 g", "mass 50 mm"),),
    ),
    "out-of-range": Page(
        "A value outside what makes sense",
        "Every value has bounds that no real thing passes: a length can't be less than nothing, an absorption "
        "coefficient can't be more than 1.3. Most often a decimal point or a unit has slipped.",
        wrong=(("absorbs 0.10, 0.08", "absorbs 10, 0.08"),),
    ),
    # --- statements -----------------------------------------------------------------------------------------
    "unknown-statement": Page(
        "A word that this block does not take",
        "Each block takes its own statements. The word is misspelt, or it belongs in another block; the message says "
        "which when it can be known.",
        wrong=(("depth 75", "dept 75"),),
    ),
    "wrong-form": Page(
        "A statement whose words do not follow its form",
        "The manual gives the form of every statement. The mark stands where the line leaves the form, and the message "
        "says what was expected there.",
        wrong=(("flat ceiling at 2800", "flat ceiling 2800"),),
    ),
    "unknown-clause": Page(
        "Words that the statement does not take",
        "After its main part a statement takes clauses, set off by commas. These words begin none of them.",
        wrong=(("front serge, wrapped 50", "front serge, wraped 50"),),
    ),
    "stated-twice": Page(
        "The same thing stated twice",
        "A statement that may stand once in its block stands there twice, or a clause comes twice on one line. Which "
        "one counts can't be guessed.",
        wrong=(("depth 75", "depth 75\n  depth 80"),),
    ),
    "comma-goes-on": Page(
        "A comma that takes the next statement with it",
        "A line that ends with a comma goes on in the next one. Here the next line begins with the word of another "
        "statement, so the comma is one too many.",
        wrong=(("hang from eyes on eye, drop 100", "hang from eyes on eye, drop 100,"),),
    ),
    "clause-missing": Page(
        "A part of the line is missing",
        "Some clauses can't be left out, because nothing sensible could be assumed for them.",
        wrong=(("eyes 4 of eye, inset 100 from the ends", "eyes 4 of eye"),),
    ),
    "statement-of-another-kind": Page(
        "A statement that this kind of panel doesn't take",
        "Each kind of panel is made of its own things: a board absorber has no frame, a diffuser no batts. The message "
        "says what the kind takes.",
        wrong=(
            ("absorber framed", "absorber board"),
            ("depth 75\n", ""),
            ("frame ply, ends full, sides between\n", ""),
            ("braces at mid-length, 60 wide, set back 6 from the front\n", "back-board ply\n"),
        ),
    ),
    "statement-missing": Page(
        "A statement is missing in a block",
        "Some statements can't be left out of their block. The manual marks them as needed; the message names the one "
        "that is missing and shows how it may look.",
        wrong=(("core wool\n", ""),),
    ),
    "block-missing": Page(
        "A statement without its block",
        "This statement carries a block: its line ends with `{`, then come the lines of the block, then `}`.",
        wrong=(("lining plaster {", "timber oak\n\nlining plaster {"),),
        right=(("lining plaster {", "timber oak {\n}\n\nlining plaster {"),),
    ),
    "block-unwanted": Page(
        "A block where none belongs",
        "This statement is a single line. Perhaps a `{` slipped in, or a block is nested where it does not belong.",
        wrong=(("depth 75", "depth 75 {\n  }"),),
    ),
    # --- names ----------------------------------------------------------------------------------------------
    "unknown-name": Page(
        "A name that stands for nothing",
        "The plan refers to something that neither it nor the files that it uses define. It is misspelt, or a `use` is "
        "missing.",
        wrong=(("front serge, wrapped 50", "front serg, wrapped 50"),),
    ),
    "wrong-thing": Page(
        "A name that stands for something else",
        "The name is known, but what it stands for is of another sort: a sheet where a batt is wanted, say.",
        wrong=(("core wool", "core ply"),),
    ),
    "name-twice": Page(
        "A name that is taken",
        "A name stands for one thing in the whole project, so that every reference is clear. In one room also doors, "
        "lights and ceiling planes each need a name of their own.",
        wrong=(("timber spruce {", "timber ply {\n}\n\ntimber spruce {"),),
        right=(("timber spruce {", "timber oak {\n}\n\ntimber spruce {"),),
    ),
    "like-too-much": Page(
        "A definition that starts from too much",
        "A definition may start from another one, which starts from a third, and so on, twenty times; and it may take "
        "over 500 statements. Beyond that nobody can tell what it says: state what it needs itself.",
        given=(("", "timber t1 {\n  like spruce\n}\n"),),
        wrong=(("", "".join(f"timber t{number + 1} {{\n  like t{number}\n}}\n" for number in range(1, 21))),),
        right=(("", "timber t2 {\n  like t1\n}\n"),),
    ),
    "like-loop": Page(
        "Definitions that start from one another in a ring",
        "`like` starts from another definition. Here the chain of them comes back to where it began, so that nothing "
        "is ever stated.",
        wrong=(('rated 1000 N, "maker\'s sheet E-1"', "like lag-eye"),),
    ),
    "mark-twice": Page(
        "A mark that is taken",
        "Marks are written on parts and panels, so two arrays or two types of panel must not share one.",
        given=(
            (
                "",
                "array wall-clouds, mark W {\n  panel cloud\n  on ceiling\n"
                "  place grid 1 across by 1 up, centred across, lowest edge at 200\n  turned long side up\n"
                "  hang from eyes on eye, drop 100\n  fix lag-eye into joists\n}",
            ),
        ),
        wrong=(("array wall-clouds, mark W {", "array wall-clouds, mark K {"),),
    ),
    "clauses-disagree": Page(
        "Statements that contradict one another",
        "Two things that the plan says can't both be true. Both may be right by themselves; the message says what does "
        "not go together.",
        wrong=(("frame ply, ends full, sides between", "frame ply, ends full, ends between"),),
    ),
    "count-differs": Page(
        "Lists that should be equally long",
        "So many names want so many positions; six octaves want six figures; a range runs from a lower number to a "
        "higher one.",
        wrong=(("absorbs 0.10, 0.08, 0.05, 0.03, 0.03, 0.03", "absorbs 0.10, 0.08, 0.05, 0.03, 0.03"),),
    ),
    "one-only": Page(
        "A second one of what a plan has once",
        "A plan is about one room and one job. A second room gets a plan of its own; both may use the same shop files.",
        wrong=(("", "room hall {\n  floor rectangle 6000 x 2000\n  ceiling {\n    flat hall-ceiling at 2400\n  }\n}"),),
    ),
    "no-effect": Page(
        "Something stated that changes nothing",
        "The plan states something that has no effect on the job, so perhaps it was meant otherwise. The title and "
        "the note of a job book are those of the plan's own file, for instance; in a file that it uses they are "
        "passed over. This is a warning.",
        given=(("units mm", 'units mm\nuse "stock.plan"'),),
        files=(("stock.plan", 'note "Prices of last spring."\n'),),
        right=(('use "stock.plan"', 'note "Prices of last spring."'),),
    ),
    "bay-too-small": Page(
        "A bay that is too small to cut a panel to",
        "`bay less 12` cuts each panel to its own bay, less so much. Here that leaves nothing.",
        given=(
            ("absorber framed", "takes width 600 mm\n  absorber framed"),
            ("face 600 x 1200", "face width x 1200"),
            ("door d1", "socket P1, P2 on ceiling centred at 1650, 2350, up 2000, 100 across, keep 5 clear\n  door d1"),
            (
                "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600",
                "place one in each bay between P1, P2, lowest edge at 1600",
            ),
        ),
        wrong=(("panel cloud\n on", "panel cloud, with width bay less 600\n  on"),),
        right=(("panel cloud\n on", "panel cloud, with width bay less 12\n  on"),),
    ),
    # --- how much -------------------------------------------------------------------------------------------
    "too-many-panels": Page(
        "More panels than a plan may have",
        "A plan may ask for 500 panels. Mostly a count has slipped; a building with more has several rooms, and each "
        "room its own plan.",
        wrong=(("grid 2 across by 1 up", "grid 50 across by 11 up"),),
    ),
    "too-many": Page(
        "More of something than a plan may have",
        "A plan may have 100 arrays, 100 doors, windows and lights, 12 planes of its ceiling, and 500 each of "
        "requirements, zones, readings and the like. The more corners the room has (those of columns, soffits and "
        "beams too), the more things on its surfaces, listeners and sheets in several sizes, the fewer panels: 500 in "
        "a plain room, and 40 in any. What the panels do not depend on can be left out.",
        wrong=(
            (
                "",
                "require {\n" + "  gap in clouds at least 1\n" * 501 + "}\n",
            ),
        ),
    ),
    "too-many-members": Page(
        "Members closer together than the room has space for",
        "A room may have 500 rafters, purlins, joists or studs in a row. The centres are too small, or in the wrong "
        "unit, or the room is too large.",
        wrong=(("at 200 centres", "at 2 centres"), ("joists 45 x 145", "joists 1 x 145")),
    ),
    "too-many-hang-points": Page(
        "A panel that hangs from too many points",
        "How the weight may be shared out is reckoned for every three points that could carry it. One panel may hang "
        "from twelve.",
        wrong=(("4 of eye", "14 of eye"),),
    ),
    "too-many-parts": Page(
        "More pieces than a plan may have",
        "All panels together may come to 8000 pieces and hang points. Mostly a batt is stated too small, or in a wrong "
        "unit, so that a panel would be filled with thousands of them.",
        wrong=(("size 1200 x 600 x 50", "size 12 x 6 x 50"),),
    ),
    "too-many-options": Page(
        "More options than are compared",
        "A plan may have 20 options, fewer where the plan is very long or has hundreds of panels: each is compiled at "
        "every build. Keep those that are still asked about.",
        wrong=(("", "".join(f"option o{n} {{\n  array clouds {{\n  }}\n}}\n" for n in range(21))),),
        right=(("", "option bare {\n  array clouds {\n  }\n}\n"),),
    ),
    "too-many-errors": Page(
        "More errors than are worth reading",
        "After a thousand findings nothing more is said. Mostly one mistake is behind them all, such as a file that is "
        "no plan.",
        guard="its example would give a thousand other findings first",
    ),
}
