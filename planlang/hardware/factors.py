"""The fixed figures of the load engine, each with where it is from.

'project policy' is a conservative choice of this project, not a rule of any code.
"""

STANDARD_GRAVITY = 9.80665  # m/s2, exact by definition (CGPM 1901)
MM_IN_INCH = 25.4
N_IN_POUND_FORCE = 4.4482216152605
N_PER_MM2_IN_PSI = N_IN_POUND_FORCE / MM_IN_INCH**2

WEIGHT_SOURCE = (
    "project policy: 15 % on every mass, which covers 10 % on timber and sheet and 15 % on mineral wool, and 5 % for "
    "what they take up from damp air (a softwood gains about 5 % of its mass from 12 % to 19 % moisture)"
)
DYNAMIC_SOURCE = "project policy: dead hang, nothing swings, strikes or is lowered while it carries"

MARKED_FACTOR = 5.0  # what a marked working load is of the breaking load, at the least
OVER_PEOPLE_SOURCE = (
    "project policy: a design factor of at least 10 where people are beneath, of which a marked working load holds 5 "
    "(design factor of at least 5 on rigging hardware: ASME B30.26-2010, 26-2.2)"
)
HEAD_HEIGHT_MM = 1500.0  # project policy: a wall panel whose lower edge is higher than this hangs over people

SECOND_SUPPORT_SLACK_MM = 25  # project policy

ENGINEER_PANEL_KG = 50.0  # project policy
ENGINEER_POINT_N = 500.0  # project policy
ENGINEER_KN_PER_M2 = 0.1  # project policy

LIFT_ONE_KG = 10.0  # project policy
LIFT_ONE_MM = 1200.0  # project policy
LIFT_TWO_KG = 20.0  # project policy
LIFT_TWO_MM = 2400.0  # project policy

PERMANENT = 0.9  # load duration factor C_D of the NDS for a load that stays (NDS 2018 table 2.3.2, from memory)
LOWEST_GRAVITY = 0.36  # project policy: the specific gravity to take where nobody has seen the stamp
ROOT_OF_SHANK = 2 / 3  # root over shank of most wood screws: Wood Handbook (FPL-GTR-190), chapter 8
ROOT_OF_BOLT = 0.75  # project policy; metric bolts from M4 have more (ISO 965, from memory)
CLEAT_STANDOFF_MM = 15.0  # project policy: what a pair of cleats holds the back of the panel off the wall
INLINE_PITCH_DEG = 5.0  # an eye is pulled in line up to here (generic table of eye-bolt angles)

THINNEST_FRAME_MM = 11.3  # project policy: 12 mm sheet as mills make it, up to 0.7 mm thinner (mill tolerance table)
THINNEST_SHEET_MM = 12.0  # project policy: the least sheet that a screw may hold in
BOLT_YIELD_PSI = 45_000.0  # bending yield strength of bolts (NDS 2018 table 12A notes, from memory)
SHEET_GRAVITY = 0.42  # plywood of other than structural grades (NDS 2018 table 12.3.3B, from memory)
STEEP_LEAN_DEG = 15.0  # project policy: a link that leans more is worth a warning
LIFT_OFF_SPARE_MM = 5.0  # common practice, no source: 3 to 6 mm beyond what the cleat engages
CLEAT_ENGAGES_MM = 25.0  # project policy: what a cleat engages whose plan doesn't say
RAIL_BENDING = 4.78  # N/mm2, bending strength of the lowest class under a permanent load, divided by the load factor
RAIL_BENDING_SOURCE = (
    "strength class C14 of EN 338 (14 N/mm2), x 0.6 for a permanent load / 1.3 / 1.35 by EN 1995-1-1, from memory; the "
    "lowest class is taken whatever the timber"
)
EC5_LOWEST_DENSITY = 290.0  # kg/m3, characteristic, class C14 of EN 338, the lowest (from memory)
EC5_LOAD_FACTOR = 1.35  # on a permanent load (EN 1990, from memory)
