"""Room and survey: what the plan takes the room to be, so that it can be checked with a tape."""

from fractions import Fraction

from planlang.geometry.model import PlacedFeature, Surface
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Column, Figure, Heading, Paragraph, Table, facts
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawings import ceiling_plan
from planlang.plan.kinds import WALLS
from planlang.plan.room import Air, Corner, Feature, Members, Room
from planlang.plan.stated import Difference
from planlang.plan.tape import TapeStyle, size_on_tape


def room(compiled: CompiledPlan) -> Blocks:
    """Size, volume, reflected ceiling plan, surfaces with datum and directions, members, features."""
    plan, tape = compiled.plan, compiled.plan.job.tape
    blocks: list[Block] = [
        Heading(2, "Room and survey"),
        Paragraph("Measure these on site before you cut or drill. A figure that differs goes into the plan first."),
        facts(
            f"Room: {plan.room.name}",
            (
                *_floor(plan.room, tape),
                ("Volume", words.volume(compiled.room.volume_m3, tape)),
                ("Room datum", _datum(plan.room)),
                (
                    "Air",
                    _air(plan.room.air),
                ),
                ("People", words.listed(f"{group.count} {group.seating.words}" for group in plan.room.occupants)),
            ),
        ),
        Figure(ceiling_plan(compiled)),
        _surfaces(compiled.room.surfaces, tape),
        _datums(compiled.room.surfaces),
    ]
    framed = [surface for surface in compiled.room.surfaces if surface.members]
    if framed:
        blocks.append(_members(framed, tape))
    if compiled.room.features:
        blocks += [_features(compiled.room.features, tape), _clearances(compiled.room.features, tape)]
    if plan.differences:
        blocks.append(_differences(plan.differences, tape))
    return tuple(blocks)


def _floor(room: Room, tape: TapeStyle) -> list[tuple[str, str]]:
    """Its size; of a floor that was walked also its walls, and how well the walk closed."""
    size = size_on_tape((room.width, room.depth), tape)
    if len(room.floor.walls) == len(WALLS):
        return [("Floor, east x north", size)]
    lines = [("Floor, in a rectangle of, east x north", size), ("Walls, as the floor is walked", _walk(room, tape))]
    if max(abs(part) for part in room.floor.missed) * 2 >= tape.step:
        lines.append(("The walk missed its start by", f"{_way(room.floor.missed, tape)}, shared out over its legs"))
    return lines


def _datum(room: Room) -> str:
    if (Fraction(0), Fraction(0)) in room.floor.corners:
        return "south-west corner of the floor"
    return "where the lines of the westernmost and the southernmost wall cross: no corner of the floor"


def _walk(room: Room, tape: TapeStyle) -> str:
    corners = room.floor.corners
    ends = zip(room.floor.walls, corners, [*corners[1:], corners[0]], strict=True)
    return "; ".join(f"{wall} {_way((x2 - x1, y2 - y1), tape)}" for wall, (x1, y1), (x2, y2) in ends)


def _way(step: Corner, tape: TapeStyle) -> str:
    """'1200 mm east and 400 mm north'."""
    parts = ((step[0], "east", "west"), (step[1], "north", "south"))
    said = (
        f"{words.length(abs(way), tape)} {up if way > 0 else down}"
        for way, up, down in parts
        if 2 * abs(way) >= tape.step
    )
    return " and ".join(said) or "nothing"


def _differences(differences: tuple[Difference, ...], tape: TapeStyle) -> Table:
    columns = (
        Column("Reading"),
        Column("Drawn", "right"),
        Column("Found", "right"),
        Column("Difference", "right"),
        Column("Survey"),
    )
    rows = tuple(
        (
            each.subject,
            _reading(each, each.drawn, tape),
            _reading(each, each.found, tape),
            _reading(each, each.found - each.drawn, tape),
            each.survey,
        )
        for each in differences
    )
    return Table("Found on site, and taken in place of what is drawn", columns, rows)


def _reading(difference: Difference, figure: Fraction, tape: TapeStyle) -> str:
    """A reading to the finest step that a tape shows, finer than the plan's own where the difference asks for it."""
    if difference.angle:
        return f"{float(figure):.1f}°"
    finer = TapeStyle(tape.units, tape.step / 16 if tape.is_imperial else tape.step / 10)
    return words.length(figure, finer)


def _air(air: Air) -> str:
    return f"{words.plain(air.temperature_c)} °C, {words.percent(air.humidity)} relative humidity"


def _surfaces(surfaces: tuple[Surface, ...], tape: TapeStyle) -> Table:
    columns = (
        Column("Surface"),
        Column(words.column_head("Size across", tape), "right"),
        Column(words.column_head("Size up", tape), "right"),
        Column("Area", "right"),
        Column("Pitch", "right"),
        Column("Lining"),
    )
    rows = tuple(
        (
            surface.name,
            words.in_column(surface.width, tape),
            words.in_column(surface.height, tape),
            words.area(surface.area_mm2, tape),
            f"{surface.pitch_deg:.1f}°" if surface.kind == "ceiling" else "",
            (surface.lining.words if surface.lining else "not stated") + (", members seen" if surface.exposed else ""),
        )
        for surface in surfaces
    )
    return Table("Surfaces", columns, rows)


def _datums(surfaces: tuple[Surface, ...]) -> Table:
    columns = (Column("Surface"), Column("Datum"), Column("Across"), Column("Up"))
    rows = tuple((s.name, s.datum_words, s.across_words, s.up_words) for s in surfaces)
    return Table("Where each surface is measured from", columns, rows)


def _members(surfaces: list[Surface], tape: TapeStyle) -> Table:
    columns = (
        Column("Surface"),
        Column("Members"),
        Column("Section"),
        Column("Centres"),
        Column("First at, or each at"),
        Column("Run"),
    )
    rows = tuple((surface.name, *_member_cells(surface.members, tape)) for surface in surfaces if surface.members)
    return Table("Members behind the surfaces, as the plan states them", columns, rows)


def _member_cells(members: Members, tape: TapeStyle) -> tuple[str, str, str, str, str]:
    timber = f", {members.timber.words}" if members.timber else ""
    return (
        members.word + timber,
        size_on_tape((members.width, members.depth), tape),
        "as found, one by one" if members.measured else words.length(members.centres, tape),
        words.running(members.measured, tape) if members.measured else words.length(members.first, tape),
        members.runs,
    )


def _features(features: tuple[PlacedFeature, ...], tape: TapeStyle) -> Table:
    columns = (
        Column("Feature"),
        Column("Kind"),
        Column("Surface"),
        Column(words.column_head("Left", tape), "right"),
        Column(words.column_head("Right", tape), "right"),
        Column(words.column_head("Lower", tape), "right"),
        Column(words.column_head("Upper", tape), "right"),
    )
    rows = tuple(
        (
            placed.feature.name,
            placed.feature.kind,
            placed.feature.surface,
            *(words.in_column(edge, tape) for edge in _edges(placed)),
        )
        for placed in features
    )
    return Table("Features: edges by running dimensions from the datum of their surface", columns, rows)


def _clearances(features: tuple[PlacedFeature, ...], tape: TapeStyle) -> Table:
    """How far panels keep from each feature where their array does not say another distance, and why."""
    columns = (
        Column("Feature"),
        Column(words.column_head("Keep clear", tape), "right"),
        Column(words.column_head("Stands out", tape), "right"),
        Column("Opens"),
        Column("Why"),
    )
    rows = tuple(
        (
            f"{feature.kind} {feature.name}",
            words.in_column(feature.keep_clear, tape),
            words.in_column(feature.depth, tape) if feature.depth else "",
            _opens(feature),
            feature.keep_source or "the plan says so",
        )
        for feature in (placed.feature for placed in features)
    )
    return Table("How far panels keep from features, where their array says nothing else", columns, rows)


def _opens(feature: Feature) -> str:
    if feature.kind != "door" or feature.opens == "outward":
        return feature.opens
    way = feature.opens or "taken as inward"
    return f"{way}, hinged {feature.hinge or 'on either side'}"


def _edges(placed: PlacedFeature) -> tuple[Fraction, ...]:
    box = placed.box
    return box.left, box.right, box.lower, box.upper
