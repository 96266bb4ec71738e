"""Room, panels, hang points, laser lines and rails as data."""

from typing import Literal

from pydantic import AliasPath, Field

from planlang.jobbook.data.values import Data, Length, Real

Spot = tuple[Real, Real, Real]


class BoxData(Data):
    """A rectangle on a surface: edges from the surface's datum."""

    left: Length
    lower: Length
    right: Length
    upper: Length


class SurfaceData(Data):
    """A plane face of the room. `origin_mm` is its datum in the room: east, north, height.

    Where a face has holes or several parts, `outline_mm` is one line that goes to each and back on the same way. `of`
    names the column, platform, soffit or beam whose face it is, and is empty for others.
    """

    name: str
    kind: Literal["floor", "wall", "ceiling"]
    of: str
    origin_mm: Spot = Field(validation_alias="origin")
    across_dir: Spot
    up_dir: Spot
    inward: Spot
    outline_mm: tuple[tuple[Real, Real], ...] = Field(validation_alias="outline")
    width: Length
    height: Length
    area_mm2: Real
    pitch_deg: Real
    datum_words: str
    across_words: str
    up_words: str


class FeatureData(Data):
    """A door, window, lamp, vent, beam or another thing on a surface; `depth` is how far it stands out.

    Panels keep `keep_clear` from it where their array says nothing else; `keep_source` is why, empty where the plan
    says so. `opens` and `hinge` are for doors, empty where the plan does not say.
    """

    name: str = Field(validation_alias=AliasPath("feature", "name"))
    kind: str = Field(validation_alias=AliasPath("feature", "kind"))
    surface: str = Field(validation_alias=AliasPath("feature", "surface"))
    box: BoxData
    depth: Length = Field(validation_alias=AliasPath("feature", "depth"))
    keep_clear: Length = Field(validation_alias=AliasPath("feature", "keep_clear"))
    keep_source: str = Field(validation_alias=AliasPath("feature", "keep_source"))
    opens: str = Field(validation_alias=AliasPath("feature", "opens"))
    hinge: str = Field(validation_alias=AliasPath("feature", "hinge"))


class RoomData(Data):
    """The room; panels' and points' room positions are mm east, north, up from the south-west floor corner."""

    surfaces: tuple[SurfaceData, ...]
    features: tuple[FeatureData, ...]
    volume_m3: Real


class HangPointData(Data):
    """One hang point."""

    name: str
    across: Length
    up: Length
    room_mm: Spot = Field(validation_alias="room")
    lands_on: str
    off_centre: Length | None
    drop: Length


class PanelData(Data):
    """One placed panel: `box` is the rectangle round it, `outline_mm` its corners on the surface.

    It is turned by `turned_deg` from lying upright or not, anticlockwise as the surface is drawn. `drop` is that of its
    higher row of eyes, which is that of all but for panels that hang tilted.
    """

    mark: str
    array: str = Field(validation_alias=AliasPath("array", "name"))
    type: str = Field(validation_alias=AliasPath("array", "panel", "name"))
    surface: str
    upright: bool = Field(validation_alias=AliasPath("array", "upright"))
    drop: Length = Field(validation_alias=AliasPath("array", "hang", "drop"))
    turned_deg: Real = Field(validation_alias=AliasPath("array", "turn"))
    box: BoxData
    outline_mm: tuple[tuple[Real, Real], ...] = Field(validation_alias="outline")
    corners_room_mm: tuple[Spot, ...] = Field(validation_alias="corners_room")
    points: tuple[HangPointData, ...]
    how: str


class LaserLineData(Data):
    """A line that serves several points."""

    surface: str
    fixed: Literal["up", "across"]
    position: Length
    points: tuple[str, ...]
    measured: str


class CheckData(Data):
    """A distance by which the marks of a panel's hang points are checked, between points and edges of the surface."""

    panel: str
    kind: Literal["diagonal", "across", "up"]
    between: str
    distance: Length


class RailData(Data):
    """A rail across members."""

    name: str
    surface: str
    position: Length
    start: Length
    end: Length
    crossings: tuple[Length, ...]
    points: tuple[str, ...]
