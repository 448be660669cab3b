using Heaveline.Films;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Tests.Films;

/// <summary>
/// The track of a film that was never taken: the points of a car that passes as computed, through a pinhole camera, with noise in pixels.
/// </summary>
internal sealed record PlantedFilm
{
    private const double HubHeight = 0.30;

    /// <summary>The pass.</summary>
    public required Pass Pass { get; init; }

    public ulong Seed { get; init; } = 1;

    /// <summary>Distance from the camera to the car's side, m.</summary>
    public double Distance { get; init; } = 20.0;

    /// <summary>Focal length, px.</summary>
    public double Focal { get; init; } = 1450.0;

    public int Width { get; init; } = 1920;

    public int Height { get; init; } = 1080;

    public double FrameRate { get; init; } = 60.0;

    /// <summary>Each frame's instant is off by so much of a frame, as phones' are.</summary>
    public double Jitter { get; init; }

    /// <summary>Times are stretched by this: slow motion.</summary>
    public double Slowness { get; init; } = 1.0;

    /// <summary>The camera looks so far aside of square to the road, rad.</summary>
    public double Yaw { get; init; }

    /// <summary>The camera hangs so far to one side, rad.</summary>
    public double Roll { get; init; }

    /// <summary>The camera turns after the car by so much of what would keep it in the middle.</summary>
    public double Pan { get; init; }

    /// <summary>Standard deviation of the hand's shake, px.</summary>
    public double Shake { get; init; }

    /// <summary>From one row to the next, s.</summary>
    public double RowTime { get; init; }

    /// <summary>Standard deviation of a hub, px.</summary>
    public double HubNoise { get; init; } = 0.05;

    /// <summary>Standard deviation of the body's shift, px.</summary>
    public double ShiftNoise { get; init; } = 0.04;

    /// <summary>Standard deviation of the body's turn, rad.</summary>
    public double TurnNoise { get; init; } = 4e-4;

    /// <summary>The camera looks at the place so far beyond the middle of the bump, m.</summary>
    public double LooksAt { get; init; } = 3.0;

    public bool GoesRight { get; init; } = true;

    /// <summary>The film ends so long after the rear wheels have left, s, where the car is still seen.</summary>
    public double Reach { get; init; } = 10.0;

    /// <summary>Time of the pass at the first frame, s; once it is followed.</summary>
    public double FirstSeen { get; private set; }

    /// <summary>Follows it.</summary>
    public FilmTrack Track()
    {
        var (front, rear) = (Pass.WheelHeight(0), Pass.WheelHeight(2));
        var (frontBody, rearBody) = (Pass.FrontHeight, Pass.RearHeight);
        var length = Pass.Model.Car.Wheelbase.Si;
        var bump = 0.5 * ((Pass.Road.EventStart ?? 0.0) + (Pass.Road.EventEnd ?? 1.0));
        var looks = bump + LooksAt;
        var draw = 0UL;
        double Normal() => SplitMix.Normals(Seed, 2UL * draw++).First;
        var scenes = new List<(double Time, Scene Scene)>();
        Scene? marked = null;
        var last = Math.Min(Pass.RearLeaves + Reach, Pass.Time[^1]);
        var times = new List<double>();
        for (var i = 0; Pass.Time[0] + (i / FrameRate) < last - 0.02; i++)
        {
            times.Add(Pass.Time[0] + ((i + (Jitter * (SplitMix.Uniform(Seed + 77, (ulong)i) - 0.5))) / FrameRate));
        }

        var (shakeX, shakeY, shakeTurn) = (0.0, 0.0, 0.0);
        foreach (var t in times)
        {
            var pan = Pan * Math.Atan((At(Pass, t) - (0.5 * length) - looks) / Distance);
            shakeX = (0.9 * shakeX) + (0.44 * Shake * Normal());
            shakeY = (0.9 * shakeY) + (0.44 * Shake * Normal());
            shakeTurn = (0.9 * shakeTurn) + (0.44 * Shake * 2e-4 * Normal());
            // A row further down is read later: told by the height at which the hubs and the body stand in the picture.
            var scene = Scene.Of(this, pan, (shakeX, shakeY, shakeTurn), looks, instant => new Car(
                At(Pass, instant), length, HubHeight + Value(Pass, front, instant), HubHeight + Value(Pass, rear, instant),
                Value(Pass, frontBody, instant), Value(Pass, rearBody, instant)), t);
            if (!scene.IsWhole)
            {
                continue;
            }

            // The frame nearest to the picture's middle is marked.
            marked = marked is null || Math.Abs(scene.Middle) < Math.Abs(marked.Middle) ? scene : marked;
            scenes.Add((t, scene));
        }

        var middle = new PicturePoint((Width - 1) / 2.0, (Height - 1) / 2.0);
        var pivot = Scene.Centre(marked!.Body);
        var start = scenes[0].Time;
        FirstSeen = start;
        FilmFrame[] all = [.. scenes.Select(s => new FilmFrame
        {
            Time = Slowness * (s.Time - start),
            Front = new SeenHub(s.Scene.Front.X + (HubNoise * Normal()), s.Scene.Front.Y + (HubNoise * Normal()), HubNoise),
            Rear = new SeenHub(s.Scene.Rear.X + (HubNoise * Normal()), s.Scene.Rear.Y + (HubNoise * Normal()), HubNoise),
            Body = Noisy(Scene.Pose(marked.Body, s.Scene.Body, pivot), Normal),
            Camera = Pan == 0.0 && Shake == 0.0 ? null : Scene.Pose(marked.Far, s.Scene.Far, middle) with { ShiftDoubt = 0.02, Kept = 300 },
        })];
        return new FilmTrack
        {
            Width = Width, Height = Height, RowTime = Slowness * RowTime, GoesRight = GoesRight, BodyPivot = pivot, Frames = [.. all],
        };
    }

    private SeenPose Noisy(SeenPose pose, Func<double> normal) => pose with
    {
        X = pose.X + (ShiftNoise * normal()),
        Y = pose.Y + (ShiftNoise * normal()),
        Turn = pose.Turn + (TurnNoise * normal()),
        ShiftDoubt = ShiftNoise,
        TurnDoubt = TurnNoise,
        Kept = 80,
        Dropped = 3,
    };

    private static double At(Pass pass, double t) => pass.Speed * t;

    public static double Value(Pass pass, IReadOnlyList<double> trace, double t)
    {
        var place = Math.Clamp((t - pass.Start) / pass.SampleStep, 0.0, trace.Count - 1.001);
        var k = (int)place;
        return trace[k] + ((place - k) * (trace[k + 1] - trace[k]));
    }

    private sealed record Car(double X, double Length, double Front, double Rear, double FrontBody, double RearBody);

    private sealed record Scene(PicturePoint Front, PicturePoint Rear, PicturePoint[] Body, PicturePoint[] Far, bool IsWhole, double Middle)
    {
        public static PicturePoint Centre(PicturePoint[] of) => new(of.Average(p => p.X), of.Average(p => p.Y));

        public static Scene Of(PlantedFilm film, double pan, (double X, double Y, double Turn) shake, double looks, Func<double, Car> car, double t)
        {
            var (sinYaw, cosYaw) = Math.SinCos(film.Yaw + pan);
            var (sinRoll, cosRoll) = Math.SinCos(film.Roll + shake.Turn);
            var (cx, cy) = ((film.Width - 1) / 2.0, (film.Height - 1) / 2.0);
            // The film's camera looks at the place it is aimed at, aslant or not.
            var stands = looks - (film.Distance * Math.Tan(film.Yaw));
            PicturePoint Seen(double along, double across, double up)
            {
                var (x, z) = (along - stands, film.Distance + across);
                var (px, pz) = ((cosYaw * x) - (sinYaw * z), (sinYaw * x) + (cosYaw * z));
                var (u, v) = (film.Focal * px / pz, film.Focal * (0.9 - up) / pz);
                u = film.GoesRight ? u : -u;
                return new PicturePoint(cx + (cosRoll * u) - (sinRoll * v) + shake.X, cy + (sinRoll * u) + (cosRoll * v) + shake.Y);
            }

            PicturePoint Row(Func<Car, PicturePoint> of)
            {
                var p = of(car(t));
                return film.RowTime == 0.0 ? p : of(car(t + (film.RowTime * p.Y)));
            }

            PicturePoint BodyPoint(Car c, double behind, double up)
            {
                // Small pitch: the point goes with the line through both ends, and forward where it stands above them.
                var pitch = (c.RearBody - c.FrontBody) / c.Length;
                var lift = c.FrontBody + (behind / c.Length * (c.RearBody - c.FrontBody));
                return Seen(c.X - behind + (pitch * (up - 0.3)), 0.0, up + lift);
            }

            var body = new List<PicturePoint>();
            for (var i = 0; i < 7; i++)
            {
                for (var j = 0; j < 3; j++)
                {
                    var (share, up) = (i / 6.0, 0.45 + (0.3 * j));
                    body.Add(Row(c => BodyPoint(c, share * c.Length, up)));
                }
            }

            var far = new List<PicturePoint>();
            for (var i = -4; i <= 4; i++)
            {
                for (var j = 0; j < 3; j++)
                {
                    far.Add(Seen(looks + (2.0 * i), 15.0, 0.5 + j));
                }
            }

            var (front, rear) = (Row(c => Seen(c.X, 0.0, c.Front)), Row(c => Seen(c.X - c.Length, 0.0, c.Rear)));
            var nose = Row(c => Seen(c.X + 0.8, 0.0, 0.6));
            var tail = Row(c => Seen(c.X - c.Length - 0.9, 0.0, 0.6));
            bool In(PicturePoint p) => p.X > 4 && p.X < film.Width - 4 && p.Y > 4 && p.Y < film.Height - 4;
            return new Scene(front, rear, [.. body], [.. far], In(nose) && In(tail), (0.5 * (front.X + rear.X)) - cx);
        }

        public static SeenPose Pose(PicturePoint[] from, PicturePoint[] to, PicturePoint pivot)
        {
            var (a, b) = (Centre(from), Centre(to));
            var (re, im, square) = (0.0, 0.0, 0.0);
            for (var i = 0; i < from.Length; i++)
            {
                var (x, y, u, v) = (from[i].X - a.X, from[i].Y - a.Y, to[i].X - b.X, to[i].Y - b.Y);
                re += (x * u) + (y * v);
                im += (x * v) - (y * u);
                square += (x * x) + (y * y);
            }

            var (scale, turn) = (Math.Sqrt((re * re) + (im * im)) / square, Math.Atan2(im, re));
            var still = new SeenPose { X = 0.0, Y = 0.0, Turn = turn, Scale = scale };
            var moved = still.Of(a, pivot);
            return still with { X = b.X - moved.X, Y = b.Y - moved.Y };
        }
    }
}
