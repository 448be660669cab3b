using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Films;

/// <summary>From a track to heights: scale by the wheelbase, level by the wheels on level road, the bump where both wheels meet it.</summary>
internal sealed class SeenPassMaking(FilmTrack track, FilmGiven given)
{
    // A wheel is on the bump where it stands above this share of its greatest height; what it rises by before is told by the slope there.
    private const double OnBump = 0.08;

    // The least lift that is told from a rough road, m.
    private const double LeastLift = 0.008;

    // What is seen smaller than by this share of the largest is left out: a camera that turns far after the car.
    private const double LeastSize = 0.65;

    // Weight of what is seen after the bump for the level: the wheels still swing there, the tyres are still pressed.
    private const double After = 0.3;

    // A speed that was said may be off by so much, of the logarithm, from what a slow motion explains.
    private const double NearSlowness = 0.1;

    // And by so much from the speed that a slow motion that was said makes of the film.
    private const double Contradicts = 0.15;

    // What passes a bump, m/s: slow motion that nobody told of makes a walk of a car.
    private const double SlowestPass = 0.1;
    private const double FastestPass = 120.0;

    // Below so many times a camera only took more or fewer frames than it wrote, each with its own time: the film's time is the car's.
    private const double NoSlowness = 1.5;

    // Slow motion is a whole number of times slower, within so much of it: frames are dropped, and 29.97 a second count as 30.
    private const double NearWhole = 0.03;

    private readonly double wheelbase = given.Wheelbase.Si;
    private readonly List<string> remarks = [.. track.Remarks];

    public SeenPass Made()
    {
        var points = Levelled(StillPoints.Of(track).Near(LeastSize));
        var distance = points.Front.Zip(points.Rear, (f, r) => Math.Sqrt(((f.X - r.X) * (f.X - r.X)) + ((f.Y - r.Y) * (f.Y - r.Y)))).ToArray();
        var middle = points.Front.Zip(points.Rear, (f, r) => 0.5 * (f.X + r.X)).ToArray();
        if (middle[^1] - middle[0] < 0.5 * distance.Average())
        {
            throw new RefusedValueException(
                "the way that the car goes in the picture",
                $"{Numeral.Of((middle[^1] - middle[0]) / distance.Average() * wheelbase, 1)} m, nose first",
                "half its wheelbase at least, nose first",
                "Mark front and rear hub as the car goes, and film the pass from the side.");
        }

        // ln of the distance of the hubs over place: a parabola where there are frames enough, more for a camera that turns far.
        var order = points.Count < 40 ? 1 : distance.Min() < 0.8 * distance.Max() ? 4 : 2;
        var size = RobustLine.Of([[.. middle.Select((x, i) => (x, Math.Log(distance[i] / wheelbase), 1.0))]], order, isRobust: true);
        var centre = track.GoesRight ? track.Middle.X : -track.Middle.X;
        var focal = PictureScale.FocalWidths * track.Width;
        var turned = Math.Atan(-0.5 * focal * size.Slope(centre));
        var tall = 1.0 / Math.Cos(Math.Clamp(turned, -0.6, 0.6));
        // Along the road the scale goes with 1/Z², upright with 1/Z: the square root of the first.
        double Upright(double x) => tall * Math.Exp(0.5 * (size.At(centre) + size.At(x)));
        // What the camera part has taken off already is doubted as much as what is taken off here.
        var slant = (tall / Math.Cos(track.Slant)) - 1.0;

        var isTurning = StillPoints.IsTurning(track);
        var (level, rearLevel, bump) = LevelOf(points, Upright, isTurning);
        double[] Heights(PicturePoint[] of, Func<double, double> from) => [.. of.Select(p => (p.Y - from(p.X)) / Upright(p.X))];
        var (front, rear) = (Heights(points.Front, level), Heights(points.Rear, rearLevel));
        var clock = new WheelClock(points, front, rear, bump, OnBump);
        if (!clock.IsFound || Math.Abs(clock.Lift) < LeastLift)
        {
            throw new RefusedValueException(
                "the bump",
                clock.IsFound ? $"a lift of {Numeral.Of(In.Millimetres.Of(clock.Lift), 0)} mm" : "not met by both wheels in the film",
                $"a lift of {Numeral.Of(In.Millimetres.Of(LeastLift), 0)} mm at least of both wheels at one place",
                "Aim so that the car is seen whole from before the bump until well after it, level road on both sides.");
        }

        // Along the road: metres by place.
        var way = new double[points.Count];
        for (var i = 1; i < way.Length; i++)
        {
            var x = 0.5 * (points.Front[i].X + points.Front[i - 1].X);
            way[i] = way[i - 1] + ((points.Front[i].X - points.Front[i - 1].X) / Math.Exp(size.At(x)));
        }

        var (from, to) = (clock.Near(clock.FirstTouch), clock.Near(clock.RearLeaves));
        var played = (way[to] - way[from]) / Math.Max((to - from) * points.Step, 1e-9);
        var slowness = SlownessOf(played);
        if (played * slowness is < SlowestPass or > FastestPass)
        {
            throw new RefusedValueException(
                "the speed of the car in the film",
                Speed(played * slowness),
                $"{Speed(SlowestPass)} to {Speed(FastestPass)}",
                "Look at the frames' times, the wheelbase, and how many times slower the film is said to be played.");
        }

        var byDelay = wheelbase / clock.Delay;
        if (Math.Abs(Math.Log(byDelay / played)) > 0.06)
        {
            remarks.Add($"By the way of its hubs the car goes {Speed(played * slowness)}, by the delay between its axles "
                + $"{Speed(byDelay * slowness)}: marks, wheelbase or the line that it takes may be off.");
        }

        return Pass(points, clock, (level, rearLevel), Upright, (front, rear), (played, byDelay, slowness), slant, distance);
    }

    private SeenPass Pass(
        StillPoints points,
        WheelClock clock,
        (Func<double, double> Front, Func<double, double> Rear) level,
        Func<double, double> upright,
        (double[] Front, double[] Rear) wheels,
        (double Played, double ByDelay, double Slowness) speed,
        double slant,
        double[] distance)
    {
        double[] Body(PicturePoint[] of, Func<double, double> from) => [.. of.Select(p => (p.Y - from(p.X)) / upright(p.X))];
        var (front, rear) = (Body(points.FrontBody, level.Front), Body(points.RearBody, level.Rear));
        // Both ends ride level until the front wheels touch.
        var before = Math.Max(2, clock.Near(clock.FirstTouch));
        var (levelFront, levelRear) = (front[..before].Average(), rear[..before].Average());
        front = [.. front.Select(h => h - levelFront)];
        rear = [.. rear.Select(h => h - levelRear)];
        double[] pitch = [.. rear.Zip(front, (r, f) => (r - f) / wheelbase)];
        var scale = upright(points.Front[clock.Near(clock.FirstTouch)].X);
        var hub = Median(track.Frames.SelectMany(f => new[] { f.Front?.Doubt, f.Rear?.Doubt }));
        var shift = Median(track.Frames.Select(f => f.Body?.ShiftDoubt));
        var turn = Median(track.Frames.Select(f => f.Body?.TurnDoubt));
        var camera = Median(track.Frames.Select(f => f.Camera?.ShiftDoubt));
        var wheelNoise = Math.Max(Noise(wheels.Front[..before], wheels.Rear[..before]), Root(hub, camera) / scale);
        var pitchNoise = Math.Max(Noise(pitch[..before]), turn);
        var bodyNoise = Math.Max(Noise(front[..before], rear[..before]), Root(Root(shift, camera) / scale, 0.5 * wheelbase * turn));
        // The mean of so many frames, half of whose noise moves slowly.
        var levelDoubt = Gaussian.Ninety * bodyNoise * Math.Sqrt(0.5 + (0.5 / before));
        var marks = given.MarkDoubt * Math.Sqrt(2.0) / distance.Average();
        // The slant goes with the focal length, and what it adds to heights with its square.
        var aslant = 2.0 * PictureScale.FocalDoubt * slant;
        var doubt = Root(given.WheelbaseDoubt, marks);
        var slow = speed.Slowness;
        if (before * points.Step / slow < 0.15)
        {
            remarks.Add("The car is seen on level road for less than 0.15 s before the bump: where its body rides level is hardly known. "
                + "Aim farther ahead of the bump.");
        }

        if (StillPoints.IsTurning(track))
        {
            remarks.Add("The camera turns after the car: its turn is taken off by the background, on a stand that stays still heights are surer.");
        }

        if (track.Frames.All(f => f.Camera is null))
        {
            remarks.Add("The camera is taken to stand still: no background was followed.");
        }

        return new SeenPass
        {
            Start = points.Start / slow,
            Step = points.Step / slow,
            FrontWheel = [.. wheels.Front],
            RearWheel = [.. wheels.Rear],
            FrontBody = [.. front],
            RearBody = [.. rear],
            Wheelbase = wheelbase,
            Speed = speed.Played * slow,
            SpeedDoubt = speed.Played * slow * Root(doubt, Math.Abs(Math.Log(speed.ByDelay / speed.Played))),
            SpeedByDelay = speed.ByDelay * slow,
            FirstTouch = clock.FirstTouch / slow,
            RearLeaves = clock.RearLeaves / slow,
            InstantDoubt = Root(clock.InstantDoubt / slow, WheelClock.ContactDoubt(speed.Played * slow)),
            Lift = clock.Lift,
            PixelsPerMetre = scale,
            WheelbaseDoubt = given.WheelbaseDoubt,
            MarksDoubt = marks,
            SlantDoubt = aslant,
            Slant = slant,
            WheelNoise = wheelNoise,
            BodyNoise = bodyNoise,
            PitchNoise = pitchNoise,
            LevelDoubt = levelDoubt,
            Slowness = slow,
            IsTimeSaid = given.Slowness is not null || given.Speed is not null || Written is not null,
            FrameRate = slow / points.Step,
            CameraFollowed = track.Frames.Any(f => f.Camera is not null),
            Points = (int)Median(track.Frames.Select(f => (double?)f.Body?.Kept)),
            Remarks = [.. remarks],
        };
    }

    // The line that both hubs run along is level: everything is turned by its angle.
    private static StillPoints Levelled(StillPoints p)
    {
        var line = RobustLine.Of(
            [[.. p.Front.Select(q => (q.X, q.Y, 1.0))], [.. p.Rear.Select(q => (q.X, q.Y, 1.0))]], 1, isRobust: true);
        var (sin, cos) = Math.SinCos(-Math.Atan(line.Slope(0.0)));
        PicturePoint[] Turned(PicturePoint[] of) => [.. of.Select(q => new PicturePoint((cos * q.X) - (sin * q.Y), (sin * q.X) + (cos * q.Y)))];
        return new StillPoints
        {
            Start = p.Start,
            Step = p.Step,
            Front = Turned(p.Front),
            Rear = Turned(p.Rear),
            FrontBody = Turned(p.FrontBody),
            RearBody = Turned(p.RearBody),
        };
    }

    // First by what most of the frames say, then by those that lie outside the bump. A parabola needs level road on both sides of it. Of a camera
    // that turns each hub has a level of its own: at one place of the road they were seen from under two turns.
    private static (Func<double, double> Front, Func<double, double> Rear, (double From, double To) Bump) LevelOf(
        StillPoints p, Func<double, double> upright, bool isTurning)
    {
        var rough = RoughLevel(p);
        Func<double, double> front = rough.At;
        Func<double, double> rear = x => rough.At(x) + rough.Offset(1);
        var bump = (From: double.NaN, To: double.NaN);
        var order = rough.Order;
        for (var round = 0; round < 3; round++)
        {
            bump = WheelClock.BumpOf(p, front, rear, upright);
            double Weight(double x) => x < bump.From ? 1.0 : x > bump.To ? After : 0.0;
            var sets = new[] { p.Front, p.Rear }.Select(s => s.Select(q => (q.X, q.Y, Weight(q.X))).ToArray()).ToArray();
            if (sets.Any(s => s.Count(q => q.Item3 > 0.0) < 6))
            {
                break;
            }

            var places = p.Front.Concat(p.Rear).Select(q => q.X).ToArray();
            var (low, high) = (places.Min(), places.Max());
            var enough = 0.2 * (high - low);
            order = bump.From - low > enough && high - bump.To > enough ? Math.Max(2, order) : order;
            var both = RobustLine.Of(sets, order, isRobust: false);
            (front, rear) = (both.At, x => both.At(x) + both.Offset(1));
            if (isTurning)
            {
                var (one, other) = (RobustLine.Of([sets[0]], order, isRobust: false), RobustLine.Of([sets[1]], order, isRobust: false));
                (front, rear) = (one.At, other.At);
            }
        }

        return (front, rear, bump);
    }

    // A straight line, unless half of the hubs lie much nearer to a bent one: the way of a camera that turned after the car.
    private static RobustLine RoughLevel(StillPoints p)
    {
        (double, double, double)[][] sets = [[.. p.Front.Select(q => (q.X, q.Y, 1.0))], [.. p.Rear.Select(q => (q.X, q.Y, 1.0))]];
        double Away(RobustLine line) => Middle.Of(
            [.. p.Front.Select(q => Math.Abs(q.Y - line.At(q.X))), .. p.Rear.Select(q => Math.Abs(q.Y - line.At(q.X) - line.Offset(1)))]);
        var lines = Enumerable.Range(1, 4).Select(order => RobustLine.Of(sets, order, isRobust: true)).ToArray();
        var best = lines[0];
        foreach (var line in lines)
        {
            best = Away(line) < 0.5 * Away(best) ? line : best;
        }

        return best;
    }

    // What the camera wrote, where it may be believed: phones that are short of light take fewer frames a second than they write.
    private double? Written => track.PlayedSlower switch
    {
        > 1.0 / NoSlowness and < NoSlowness => 1.0,
        > NoSlowness and var times when Math.Round(times) is var whole and >= 2.0 && Math.Abs(times - whole) <= NearWhole * whole => whole,
        _ => null,
    };

    private double SlownessOf(double played)
    {
        if (given.Slowness is { } said)
        {
            return given.Speed is not { } known || Math.Abs(Math.Log(known.Si / (played * said))) <= Contradicts
                ? said
                : throw new RefusedValueException(
                    "the speed of the pass",
                    $"{Speed(known.Si)}, where the film, played {Numeral.Of(said, said < 10.0 ? 1 : 0)} times slower, shows {Speed(played * said)}",
                    "the same by both",
                    "Leave out the speed or how many times slower it is played, whichever is not known for sure.");
        }

        if (given.Speed is not { } speed)
        {
            if (Written is { } written && written != 1.0)
            {
                remarks.Add($"By what the camera wrote into it the film is played {Numeral.Of(written, 0)} times slower than it was taken: the car "
                    + $"goes {Speed(played * written)}, not the {Speed(played)} that are seen.");
            }

            if (Written is null && track.PlayedSlower is { } doubtful)
            {
                remarks.Add($"By what the camera wrote into it the film is played {Numeral.Of(doubtful, 2)} times slower than it was taken, which "
                    + "is no whole number as slow motion has: it is read as it is played. Write speed: or played-slower: into its sheet.");
            }

            return Written ?? 1.0;
        }

        var ratio = speed.Si / played;
        var near = new[] { 1.0, 2.0, 4.0, 5.0, 8.0, 10.0, 16.0, 20.0, 32.0 }.MinBy(s => Math.Abs(Math.Log(ratio / s)));
        if (Math.Abs(Math.Log(ratio / near)) > NearSlowness)
        {
            remarks.Add($"The film shows {Speed(played)} where {Speed(speed.Si)} was said, and no slow motion explains it (the nearest, "
                + $"{Numeral.Of(near, 0)} times slower, would be {Speed(played * near)}): it is read as played as it was taken. Look at the speed, "
                + "the wheelbase and the marks.");
            return 1.0;
        }

        return near;
    }

    private static string Speed(double v) => $"{Numeral.Of(In.KilometresPerHour.Of(v), 1)} km/h";

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));

    private static double Median(IEnumerable<double?> values)
    {
        double[] all = [.. values.OfType<double>()];
        return all.Length == 0 ? 0.0 : Middle.Of(all);
    }

    // Of second differences, which a straight line leaves out: their median over what normal ones have, √6 of the noise.
    private static double Noise(params double[][] of)
    {
        double[] all =
        [
            .. of.SelectMany(s => Enumerable.Range(1, Math.Max(0, s.Length - 2)).Select(k => Math.Abs(s[k - 1] - (2.0 * s[k]) + s[k + 1]))),
        ];
        return all.Length < 3 ? 0.0 : Middle.Of(all) / 0.6745 / Math.Sqrt(6.0);
    }
}
