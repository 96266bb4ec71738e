"""The pages of requirements."""

from planlang.syntax.pages import Page

PLACE = "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600"
GAP = ("", "require {\n  gap in clouds at least 300\n}")

PAGES = {
    "requirement-fails": Page(
        "Something that the plan requires does not hold",
        "The plan itself says what must hold; here it does not. The message gives what was found and by how much it "
        "fails. The job book is written all the same, with this on its first pages, and the exit status is 1.",
        wrong=(("", "require {\n  headroom at least 2700\n}"),),
        right=(("", "require {\n  headroom at least 2200\n}"),),
    ),
    "requirement-open": Page(
        "Something required that can't be checked",
        "There is nothing to hold the requirement against: a gap is required of an array of one panel, say, or a price "
        "of a job without all its prices. It counts as not held.",
        given=(GAP,),
        wrong=((PLACE, "place grid 1 across by 1 up, centred across, lowest edge at 1600"),),
    ),
}
