"""Single road events in closed form, cut into smooth pieces so that a solver never steps over a corner.

A profile is a list of pieces (x_start, x_end, height(x), slope(x)); outside the pieces the road is flat at zero.
x is the distance in metres from the event's start; the front wheel centres are at x = 0 when t = 0.
"""
import math

FLAT = (-math.inf, math.inf, lambda x: 0.0, lambda x: 0.0)


def _round_top(road):
    """Circular arc through both feet and the top."""
    h, w = road["height"], road["length"]
    radius = (w * w / 4 + h * h) / (2 * h)
    below = radius - h  # the circle's centre lies this far under the road
    return [(0.0, w,
             lambda x: math.sqrt(radius * radius - (x - w / 2) ** 2) - below,
             lambda x: -(x - w / 2) / math.sqrt(radius * radius - (x - w / 2) ** 2))]


def _versine(road):
    h, w = road["height"], road["length"]
    k = 2 * math.pi / w
    return [(0.0, w, lambda x: h / 2 * (1 - math.cos(k * x)), lambda x: h / 2 * k * math.sin(k * x))]


def _half_sine(road):
    h, w = road["height"], road["length"]
    k = math.pi / w
    return [(0.0, w, lambda x: h * math.sin(k * x), lambda x: h * k * math.cos(k * x))]


def _plank(road):
    """Flat top with a linear ramp of length 'edge' inside each end of 'length'."""
    h, w, e = road["height"], road["length"], road["edge"]
    return [(0.0, e, lambda x: h * x / e, lambda x: h / e),
            (e, w - e, lambda x: h, lambda x: 0.0),
            (w - e, w, lambda x: h * (w - x) / e, lambda x: -h / e)]


SHAPES = {"round-top": _round_top, "versine": _versine, "half-sine": _half_sine, "plank": _plank}
TRACKS = {"both": (1.0, 1.0), "left": (1.0, 0.0), "right": (0.0, 1.0)}


class Road:
    """The road of one case under the front and the rear wheels at constant speed."""

    def __init__(self, road, speed, wheelbase):
        self.pieces = SHAPES[road["shape"]](road)
        self.left, self.right = TRACKS[road["tracks"]]
        self.speed, self.wheelbase = speed, wheelbase

    def corner_times(self):
        """Every time at which the front or the rear wheels pass from one piece to the next."""
        xs = sorted({p[0] for p in self.pieces} | {p[1] for p in self.pieces})
        return sorted({x / self.speed for x in xs} | {(x + self.wheelbase) / self.speed for x in xs})

    def _piece(self, x):
        return next((p for p in self.pieces if p[0] <= x < p[1]), FLAT)

    def pieces_at(self, t):
        """The piece under the front and the one under the rear wheels; at a corner the one that begins there."""
        return self._piece(self.speed * t), self._piece(self.speed * t - self.wheelbase)

    def under(self, t, pieces):
        """(height front, rate front, height rear, rate rear) of the raised track, held on the given pieces."""
        xf = self.speed * t
        xr = xf - self.wheelbase
        f, r = pieces
        return f[2](xf), self.speed * f[3](xf), r[2](xr), self.speed * r[3](xr)
