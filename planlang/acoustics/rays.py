"""Sound as rays in a room of plane faces: energy over time, per band, in the whole room and at listeners.

Rays start evenly in all directions, lose energy at each face, and leave it as from a mirror or, by chance, in a
direction by Lambert's law. Chance is a hash of the seed, the ray and the bounce; paths use only sums, products,
quotients and square roots, so that they are the same on every machine. Lengths in m, times in s.
Source: Kuttruff, Room Acoustics, ch. 9; Vorlaender, Auralization, ch. 11.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from planlang.acoustics.arrays import Floats
from planlang.acoustics.draws import even
from planlang.acoustics.faces import Face, Outlines, along, dot, on_face, outer_faces, within
from planlang.acoustics.pieces import piece_map
from planlang.syntax.record import record

STEP = 0.002  # s
WINDOW = 40  # steps between looks at what is left
EAR = 0.5  # m, radius of the sphere that stands for a listener
ENOUGH = 10**-3.4  # share of the energy that may be left when tracing ends
LONGEST = 12.0  # s
CLEAR = 1e-9  # m: how far before a face a ray is set down
MOST_FLIGHTS = 100  # of a ray between two looks; in any room but a slit there are far fewer
TOGETHER = 100_000  # faces times rays: so few are held against each other in one step
SPENT = 0.01  # share of its energy below which a ray in a slit is let go
TURNS = 4096  # directions to scatter into
EARS = 4  # listeners that every ray is held against; of more, each is held against a part of the rays
GOLDEN = (np.sqrt(5.0) - 1) / 2
Indices = NDArray[np.intp]


@record
class Rays:
    """How many rays start, and after how many s one of each `keep` goes on alone, standing for the others."""

    count: int
    until: float = LONGEST
    keep: int = 1


@record
class Traced:
    """Energy in the room (steps, bands), starting at 1, and at each listener (listeners, steps, bands).

    `lost` rays met no face; `followed` were followed to the end.
    """

    room: Floats
    listeners: Floats
    lost: int
    followed: int


def trace(
    faces: Sequence[Face],
    source: Floats,
    listeners: Sequence[Floats],
    speed: float,
    volume_loss: Floats,
    seed: int,
    rays: Rays,
) -> Traced:
    """Trace until 34 dB are lost in every band.

    `volume_loss` is what air and loose things take, 1/m, a value a band. Rays carry all bands together that scatter
    alike on every piece; other bands take ways of their own.
    """
    groups = bands_alike(faces, len(volume_loss))
    tracers = [_Tracer(faces, source, listeners, speed, seed, rays.count, bands) for bands in groups]
    order = np.argsort(np.concatenate(groups))
    steps, left = 0, np.ones(len(volume_loss))
    while left.max() >= ENOUGH and steps * STEP < LONGEST:
        steps += WINDOW
        for tracer in tracers:
            tracer.advance(steps * STEP)
            if steps * STEP >= rays.until:
                tracer.thin_to(-(-rays.count // rays.keep))
        left = np.concatenate([tracer.left() for tracer in tracers])[order]
        left = left * np.exp(-volume_loss * speed * steps * STEP)
    fading = np.exp(-np.multiply.outer((np.arange(steps) + 0.5) * STEP * speed, volume_loss))
    room = np.concatenate([tracer.remaining(steps) for tracer in tracers], axis=1)[:, order]
    heard = np.concatenate([tracer.heard[:, :steps] for tracer in tracers], axis=2)[:, :, order]
    lost, followed = max(tracer.lost for tracer in tracers), min(len(tracer.time) for tracer in tracers)
    return Traced(room * fading, heard * fading, lost, followed)


def bands_alike(faces: Sequence[Face], count: int) -> list[Indices]:
    """The bands in groups that scatter alike on every piece."""
    shares = np.stack([np.broadcast_to(piece.scatter, count) for face in faces for piece in face.pieces])
    found: dict[bytes, list[int]] = {}
    for band in range(count):
        found.setdefault(shares[:, band].tobytes(), []).append(band)
    return [np.array(bands, dtype=np.intp) for bands in found.values()]


class _Tracer:
    """The state of all rays, for bands that scatter alike."""

    def __init__(
        self,
        faces: Sequence[Face],
        source: Floats,
        listeners: Sequence[Floats],
        speed: float,
        seed: int,
        rays: int,
        bands: Indices,
    ) -> None:
        self.faces, self.listeners, self.speed = faces, listeners, speed
        self.maps = [
            piece_map([(piece.box, piece.round, piece.outline) for piece in face.pieces[:-1]]) for face in faces
        ]
        self.first_piece = np.cumsum([0, *(len(face.pieces) for face in faces)])
        every = [piece for face in faces for piece in face.pieces]
        self.kept = np.stack([piece.kept[bands] for piece in every], axis=1)
        self.scatter = np.array([np.broadcast_to(piece.scatter, piece.kept.shape)[bands[0]] for piece in every])
        self.normals = np.stack([face.inward for face in faces], axis=1)
        self.offsets = [float(face.inward @ face.origin) for face in faces]
        self.shares = max(-(-len(listeners) // EARS), 1)
        self.outer = outer_faces(faces)
        self.order = np.argsort(~self.outer, kind="stable")
        self.outlines = None if self.outer.all() else Outlines([faces[number] for number in self.order])
        self.place = np.repeat(source[:, np.newaxis], rays, axis=1)
        self.way = sphere(rays).T.copy()
        self.energy = np.full((len(bands), rays), 1.0 / rays)
        self.time = np.zeros(rays)
        self.bounce = np.zeros(rays, dtype=np.uint64)
        self.salt = (np.arange(rays, dtype=np.uint64) << np.uint64(24)) ^ np.uint64(seed)
        steps = round(LONGEST / STEP) + 2
        self.absorbed = np.zeros((steps, len(bands)))
        self.heard = np.zeros((len(listeners), steps, len(bands)))
        self.turns = sphere(TURNS).T.copy()
        self.lost = 0

    def advance(self, until: float) -> None:
        """Send every ray on until it has passed a time."""
        going = np.flatnonzero(self.time < until)
        for _ in range(MOST_FLIGHTS):
            if not going.size:
                return
            self._fly(going)
            going = going[self.time[going] < until]
        self._end(going[self.energy[:, going].max(axis=0) < SPENT / len(self.time)])

    def thin_to(self, count: int) -> None:
        """Let so many rays, evenly chosen, go on for all, with all their energy."""
        step = -(-len(self.time) // count)
        if step == 1:
            return
        before = self.left()
        chosen = slice(None, None, step)
        self.place, self.way, self.energy = self.place[:, chosen], self.way[:, chosen], self.energy[:, chosen]
        self.time, self.bounce, self.salt = self.time[chosen], self.bounce[chosen], self.salt[chosen]
        kept = self.left()
        self.energy = self.energy * np.divide(before, kept, out=np.ones_like(kept), where=kept > 0)[:, np.newaxis]

    def left(self) -> Floats:
        """Energy that the rays still have, per band."""
        return np.asarray(self.energy.sum(axis=1), dtype=np.float64)

    def remaining(self, steps: int) -> Floats:
        """Energy in the room over time: all of it, less what has been absorbed."""
        return np.asarray(np.maximum(1 - np.cumsum(self.absorbed[:steps], axis=0), 0.0), dtype=np.float64)

    def _fly(self, going: Indices) -> None:
        place, way = self.place[:, going], self.way[:, going]
        face, length = self._next_faces(place, way)
        away = ~np.isfinite(length)
        if away.any():
            self._lose(going[away])
            stays = ~away
            going, face, length = going[stays], face[stays], length[stays]
            place, way = place[:, stays], way[:, stays]
        self._listen(going, place, way, length)
        landed = place + length * way
        self.time[going] += length / self.speed
        piece, normals = self._struck(face, landed), self.normals[:, face]
        self._absorb(going, self.kept[:, piece])
        self.place[:, going] = landed + CLEAR * normals
        self.way[:, going] = self._turned(going, way, normals, self.scatter[piece])
        self.bounce[going] += np.uint64(1)

    def _next_faces(self, place: Floats, way: Floats) -> tuple[Indices, Floats]:
        """The face that each ray meets next, and how far away; infinitely far where there is none.

        Of outer faces the nearest plane is met, wherever its outline lies; of others only what is nearer still.
        """
        nearest, face = np.full(place.shape[1], np.inf), np.zeros(place.shape[1], dtype=np.intp)
        few = len(self.faces) * place.shape[1] <= TOGETHER
        lengths = self._reaches(place, way) if few else None
        if lengths is not None and self.outlines is not None:
            return self._next_at_once(place, way, lengths[self.order], self.outlines)
        for number in map(int, self.order):
            length = self._reach(number, place, way) if lengths is None else lengths[number]
            if self.outer[number]:
                near = length < nearest
                nearest, face = np.where(near, length, nearest), np.where(near, number, face)
            else:
                here = np.flatnonzero(length < nearest)
                if not here.size:
                    continue
                here = here[within(self.faces[number], place[:, here] + length[here] * way[:, here])]
                nearest[here], face[here] = length[here], number
        for number in map(int, np.flatnonzero(self.outer)) if not self.outer.all() else ():
            here = np.flatnonzero((face == number) & np.isfinite(nearest))
            missed = ~within(self.faces[number], place[:, here] + nearest[here] * way[:, here])
            nearest[here[missed]] = np.inf
        return face, nearest

    def _next_at_once(self, place: Floats, way: Floats, lengths: Floats, outlines: Outlines) -> tuple[Indices, Floats]:
        """The same for few rays, all faces in one step; `lengths` has a row a face, in the order of asking."""
        inside = outlines.within(place, way, lengths)
        outer = self.outer[self.order]
        met = np.where(outer[:, np.newaxis] | inside, lengths, np.inf)
        first, rays = np.argmin(met, axis=0), np.arange(place.shape[1])
        nearest = met[first, rays]
        nearest[~inside[first, rays]] = np.inf
        return self.order[first], nearest

    def _reach(self, number: int, place: Floats, way: Floats) -> Floats:
        """How far each ray is from the plane of a face, from its inner side; infinity where it doesn't go there."""
        normal = self.normals[:, number]
        towards, height = along(normal, way), along(normal, place) - self.offsets[number]
        with np.errstate(divide="ignore", invalid="ignore"):
            return np.where((towards < 0) & (height > 0), -height / towards, np.inf)

    def _reaches(self, place: Floats, way: Floats) -> Floats:
        """The same of every face, (faces, rays): for few rays much faster than face by face."""
        across, north, up = self.normals[:, :, np.newaxis]
        towards = across * way[0] + north * way[1] + up * way[2]
        height = across * place[0] + north * place[1] + up * place[2] - np.array(self.offsets)[:, np.newaxis]
        with np.errstate(divide="ignore", invalid="ignore"):
            return np.where((towards < 0) & (height > 0), -height / towards, np.inf)

    def _struck(self, face: Indices, landed: Floats) -> Indices:
        """The numbers of the pieces, of all faces together, on which the rays land."""
        piece = self.first_piece[face]
        for number, (plane, pieces) in enumerate(zip(self.faces, self.maps, strict=True)):
            if len(plane.pieces) > 1:
                here = np.flatnonzero(face == number)
                piece[here] += pieces.at(*on_face(plane, landed[:, here]))
        return piece

    def _absorb(self, going: Indices, kept: Floats) -> None:
        before = self.energy[:, going]
        after = before * kept
        steps = np.minimum((self.time[going] / STEP).astype(np.intp), len(self.absorbed) - 1)
        for band in range(len(before)):
            taken = np.bincount(steps, before[band] - after[band], len(self.absorbed))
            self.absorbed[:, band] += taken
        self.energy[:, going] = after

    def _turned(self, going: Indices, way: Floats, normals: Floats, scatter: Floats) -> Floats:
        """The way on: mirrored, or by Lambert's law (the normal and an even direction, added)."""
        mirrored = way - 2 * dot(normals, way) * normals
        counter = self.salt[going] + (self.bounce[going] << np.uint64(1))
        by_chance = even(counter) < scatter
        chosen = (even(counter + np.uint64(1)) * TURNS).astype(np.intp)
        spread = normals + (1 - 1e-9) * self.turns[:, chosen]
        new = np.where(by_chance, spread, mirrored)
        return np.asarray(new / np.sqrt(dot(new, new)), dtype=np.float64)

    def _listen(self, going: Indices, place: Floats, way: Floats, length: Floats) -> None:
        """Add the energy of rays that pass a listener's sphere, by the length of the way inside it.

        Of many listeners each is held against its share of the rays, which then stand for all.
        """
        for share in range(min(self.shares, len(self.listeners))):
            part = (going, place, way, length)
            if self.shares > 1:
                here = np.flatnonzero(going % self.shares == share)
                part = (going[here], place[:, here], way[:, here], length[here])
            for number in range(share, len(self.listeners), self.shares):
                self._hear(number, *part)

    def _hear(self, number: int, going: Indices, place: Floats, way: Floats, length: Floats) -> None:
        to_ear = self.listeners[number][:, np.newaxis] - place
        along = dot(to_ear, way)
        short = EAR**2 - (dot(to_ear, to_ear) - along * along)
        passed = np.flatnonzero((short > 0) & (along > 0) & (along < length))
        if passed.size:
            rays = going[passed]
            moments = self.time[rays] + along[passed] / self.speed
            steps = np.minimum((moments / STEP).astype(np.intp), self.heard.shape[1] - 1)
            chord = self.shares * 2 * np.sqrt(short[passed])
            for band, energy in enumerate(self.energy[:, rays]):
                self.heard[number, :, band] += np.bincount(steps, energy * chord, self.heard.shape[1])

    def _lose(self, gone: Indices) -> None:
        """Rays that meet no face, through a gap between faces: their energy counts as absorbed."""
        self.lost += len(gone)
        self._end(gone)

    def _end(self, gone: Indices) -> None:
        """Let rays go no further; what energy they have is absorbed.

        Those too that go to and fro in a slit that a survey leaves between two faces, once they have little left.
        """
        steps = np.minimum((self.time[gone] / STEP).astype(np.intp), len(self.absorbed) - 1)
        for band in range(len(self.energy)):
            self.absorbed[:, band] += np.bincount(steps, self.energy[band, gone], len(self.absorbed))
        self.energy[:, gone] = 0.0
        self.time[gone] = np.inf


def sphere(count: int) -> Floats:
    """Even directions, (count, 3): equal steps in height, a golden turn between; rounded, to be equal anywhere."""
    place = np.arange(count)
    height = 1 - (2 * place + 1) / count
    turn = 2 * np.pi * np.mod(place * GOLDEN, 1.0)
    flat = np.sqrt(1 - height * height)
    return np.asarray(np.round(np.stack([flat * np.cos(turn), flat * np.sin(turn), height], axis=1), 12))
