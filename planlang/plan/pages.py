"""The pages of what is wrong with a plan's statements, values and names."""

from planlang.syntax.pages import Page

PAGES = {
    # --- values ---------------------------------------------------------------------------------------------
    "value-too-deep": Page(
        "Too many brackets within brackets",
        "A value may have brackets within brackets, but not forty of them. Name parts of it as figures.",
        wrong=(("depth 75", "depth " + "(1 + " * 41 + "34" + ")" * 41),),
        right=(("depth 75", "depth 60 + (10 + 5)"),),
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
    "clause-missing": Page(
        "A part of the line is missing",
        "Some clauses can't be left out, because nothing sensible could be assumed for them.",
        wrong=(("eyes 4 of eye, inset 100 from the ends", "eyes 4 of eye"),),
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
}
