"""What the loads are checked by, and the papers that go with the materials."""

from planlang.plan.vocabulary.declare import Clause
from planlang.plan.vocabulary.declare import StatementKind as S

REASON = Clause("{reason:text}", "Why it is stricter.", required=True)

SAFETY = S(
    "safety",
    "",
    "What the loads are checked by. Figures can be made stricter than the defaults, for a reason; never looser.",
    "safety {",
    block=(
        S(
            "timber-rules",
            "{rules:nds|ec5}",
            "The rules for fixings in wood: the National Design Specification, or Eurocode 5.",
            "timber-rules ec5",
            default="timber-rules nds",
            reason="the plan names no rules for fixings in wood",
        ),
        S(
            "factor",
            "{factor:number} on {where:hardware}",
            "Design factor against breaking: 5 on hardware, 10 over people, or more.",
            'factor 12 over people, "a school hall"',
            other_forms=("{factor:number} over {where:people}",),
            clauses=(REASON,),
            many=True,
        ),
        S("masses", "{share:share} more", "Tolerance on every mass: 15 %, or more.", 'masses 20 % more, "old batts"',
          clauses=(REASON,)),
        S("damp", "{share:share} more", "For what the materials take up from the air: 5 %, or more.",
          'damp 10 % more, "a swimming bath"', clauses=(REASON,)),
        S("blows", "{factor:number} times the load", "For balls, slamming doors, fans: 1, or more.",
          'blows 1.2 times the load, "ball games"', clauses=(REASON,)),
        S(
            "second-support",
            "for panels over {mass:mass}",
            "From which mass (10 kg) or height (3 m) on a panel overhead needs a second support, or less.",
            'second-support for panels over 8 kg, "the client asks"',
            other_forms=("for points over {height:length}",),
            clauses=(REASON,),
            many=True,
        ),
        S("inspect", "every {months:count} months", "How often every point is looked at: 12 months, or oftener.",
          'inspect every 6 months, "damp room"', clauses=(REASON,)),
    ),
)  # fmt: skip

EVIDENCE = S(
    "evidence",
    "{name:new}",
    "A paper that an authority may ask for: a fire test, a class, a declaration.",
    "evidence serge-fire {",
    many=True,
    block=(
        S("covers", "{of:ref+}", "The stock or the panel types it speaks of.", "covers wool-serge", required=True),
        S("paper", "{text:text}", "Its number and who issued it.", 'paper "invented test house, report 12"',
          required=True),
        S("tested", "{text:text}", "What exactly was tested, and how it was mounted.", 'tested "the cloth alone"',
          required=True),
        S("says", "{text:text}", "Its result, in its own words.", 'says "class named in the report"', required=True),
        S("until", "{date:date}", "The day to which it holds.", "until 2028-03-31"),
    ),
)  # fmt: skip
