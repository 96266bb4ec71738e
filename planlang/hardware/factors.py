"""The fixed figures of the load engine, each with where it is from.

'project policy' is a conservative choice of this project, not a rule of any code.
"""

STANDARD_GRAVITY = 9.80665  # m/s2, exact by definition (CGPM 1901)
MM_IN_INCH = 25.4
N_IN_POUND_FORCE = 4.4482216152605
N_PER_MM2_IN_PSI = N_IN_POUND_FORCE / MM_IN_INCH**2

# Density of sheet and timber spreads by 10 %; EN 13162-like product standards let mineral wool weigh 15 % more.
WEIGHT_TOLERANCE = 1.15
WEIGHT_SOURCE = "project policy: 15 % on every mass, which covers 10 % on timber and sheet and 15 % on mineral wool"

DYNAMIC = 1.0
DYNAMIC_SOURCE = "project policy: dead hang, nothing swings, strikes or is lowered while it carries"

OVER_PEOPLE = 0.5
OVER_PEOPLE_SOURCE = (
    "project policy: half the marked working load where people are beneath, which makes 10 to 1 of the usual 5 to 1 "
    "(design factor of at least 5 on rigging hardware: ASME B30.26, from memory)"
)
HEAD_HEIGHT_MM = 1500.0  # project policy: a wall panel whose lower edge is higher than this hangs over people

SECOND_SUPPORT_KG = 10.0  # project policy
SECOND_SUPPORT_HEIGHT_MM = 3000.0  # project policy
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
ROOT_OF_SHANK = (
    0.75  # project policy: root over shank; inch wood screws have 0.79 to 0.82 (NDS appendix L, from memory)
)
CLEAT_STANDOFF_MM = 15.0  # project policy: what a pair of cleats holds the back of the panel off the wall
INLINE_PITCH_DEG = 5.0  # an eye is pulled in line up to here (generic table of eye-bolt angles)
