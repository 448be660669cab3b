using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Heaveline.Elements;
using Heaveline.Numerics;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives;

/// <summary>The way from a log to a drive: clocks, grid, up, moves of the phone, forward, signals.</summary>
internal sealed class DriveMaking(Log log, CancellationToken stop)
{
    // A gyro of the other hand must explain this much more before it is turned round.
    private const double HandShare = 0.05;
    private const double Standing = 0.3;

    private readonly List<StoryLine> story = [];

    public Drive Made()
    {
        foreach (var kind in new[]
            { SensorKind.Acceleration, SensorKind.AccelerationWithoutGravity, SensorKind.Gravity, SensorKind.TurnRate, SensorKind.Speed })
        {
            SensorBound.Check(log.Of(kind));
        }

        TimedTrack[] forces = [];
        TimedTrack? turn = null, speed = null;
        Action[] parts = [() => forces = Forces(), () => turn = Timed(SensorKind.TurnRate), () => speed = Timed(SensorKind.Speed)];
        ParallelLoop.Each(parts.Length, -1, k => parts[k](), stop);
        stop.ThrowIfCancellationRequested();
        if (LongPause.LongestBeside(forces[0], story) is { } part)
        {
            forces = [.. forces.Select(f => f.Within(part) ?? throw TooFew(f.Track))];
            (turn, speed) = (turn?.Within(part), speed?.Within(part));
        }

        if (LogAgain.Before(forces[0], story) is { } once)
        {
            forces = [.. forces.Select(f => f.Within(once) ?? throw TooFew(f.Track))];
            (turn, speed) = (turn?.Within(once), speed?.Within(once));
        }

        speed = Moving(speed is null ? null : SpeedByPlace.Of(log, speed, story));
        var grid = EvenGrid.Over([.. forces, .. turn is null ? [] : new[] { turn }]);
        RefuseShort(grid);
        var force = grid.Read(forces, stop);
        var turns = turn is null ? null : grid.Read(turn, stop);
        stop.ThrowIfCancellationRequested();
        var found = Found(grid, force, turns, ref speed);
        var driven = Driven(grid, found, turns, speed);
        stop.ThrowIfCancellationRequested();
        var moves = log.Overrulings.Word("moved") == "no" ? [] : PhoneMoves.Of(
            grid, force, turns, driven, Ramp(grid, force, found, speed), found.IsTurned);
        if (moves.Count > 0)
        {
            grid = Longest(grid, moves);
            RefuseShort(grid);
            found = Found(grid, force, turns, ref speed);
            driven = Driven(grid, found, turns, speed);
        }

        if (log.Overrulings.Word("moved") != "no" && found.Fit?.Turn is { IsSure: true } slide)
        {
            var at = PhoneSlide.Instant(grid, found.Level.Up, turns!, found.IsTurned, slide);
            var (longest, told) = PhoneSlide.Beside(grid, slide, at);
            story.Add(told);
            grid = grid.Within(longest);
            RefuseShort(grid);
            found = Found(grid, force, turns, ref speed);
            driven = Driven(grid, found, turns, speed);
            moves = [.. moves, at ?? (0.5 * (slide.From + slide.To))];
        }

        stop.ThrowIfCancellationRequested();
        var judged = ForwardJudgement.Of(grid, force, turns, found, log.Overrulings, speed is not null);
        story.AddRange(judged.Told);
        var (level, fit) = (found.Level, found.Fit);
        var isTurned = judged.IsTurned;
        if (judged.IsSpeedForeign)
        {
            (speed, driven) = (null, null);
        }

        stop.ThrowIfCancellationRequested();
        var wander = Wander(grid, force, level.Up, driven);
        var forward = wander <= Mount.Handling ? judged.Forward : null;
        var largest = Math.Max(Math.Max(Math.Abs(level.Up.X), Math.Abs(level.Up.Y)), Math.Abs(level.Up.Z));
        var mount = new Mount
        {
            Up = level.Up,
            Gain = level.Gain,
            Wander = wander,
            Tilt = Math.Acos(Math.Min(largest, 1.0)),
            Forward = forward is null ? null : found.Along(forward.Angle),
            HalfWidth = judged.HalfWidth,
            ForwardAngle = forward is null ? null : Math.IEEERemainder(forward.Angle, 2.0 * Math.PI),
            ForwardFrom = AxisOf(level.Up),
            BumpsAside = forward is null ? null : judged.BumpsAside,
            SpeedLag = !judged.IsSpeedForeign && fit is { IsLagFound: true } ? fit.Lag : null,
            Explained = fit?.Explained,
            Braking = fit?.Braking,
            Turning = fit?.Turning,
            IsHandTurned = isTurned,
            UpHalfWidth = level.HalfWidth(force, grid.Rows()),
            Moves = [.. moves],
            NoForward = forward is not null ? ""
                : wander > Mount.Handling ? Text($"The phone was in a hand: gravity wanders along its axes by {Degrees(wander):F0}°.")
                : judged.NoForward,
        };
        if (forward is not null)
        {
            story.Add(new StoryLine(
                "forward",
                Text($"Forward lies {Degrees(mount.ForwardAngle!.Value):F0}° from the phone's {mount.ForwardFrom} axis, ")
                + "counter-clockwise seen from above"
                + (judged.IsSaid ? ", as you say." : Text($", ± {Degrees(forward.HalfWidth):F0}°, {forward.By}."))));
        }

        if (mount.SpeedLag is { } late)
        {
            story.Add(new StoryLine("lag", Text($"The speed comes late by {late:F1} s")
                + (log.Overrulings.Amount("lag") is not null ? ", as you say." : ": so braking and turning explain most.")));
        }

        var hand = isTurned ? -1.0 : 1.0;
        var lag = mount.SpeedLag ?? 0.0;
        var speeds = speed is null ? [] : Speeds(grid, speed, lag);
        Direction? left = mount.Forward is { } ahead ? level.Up.Cross(ahead) : null;
        ImmutableArray<double> Turning(Direction? axis) => turns is null || axis is not { } about
            ? []
            : Kept(LessBias(grid, Along(grid, about, turns, hand), speeds));
        return new Drive
        {
            Log = log,
            Force = forces[0],
            Clock = forces[0].Clock,
            TurnClock = turn?.Clock,
            Mount = mount,
            Rate = grid.Rate,
            Start = grid.Start,
            Covered = grid.Covered,
            Vertical = Kept(Less(Along(grid, level.Up, force, level.Gain), Gravity.Standard)),
            Forward = mount.Forward is { } axis ? Kept(Along(grid, axis, force, level.Gain)) : [],
            Left = left is { } sideways ? Kept(Along(grid, sideways, force, level.Gain)) : [],
            PitchRate = Turning(left),
            RollRate = Turning(mount.Forward),
            YawRate = Turning(level.Up),
            Speed = Kept(speeds),
            Path = DrivePath.Of(log, grid, lag, story),
            Story = [.. story],
        };
    }

    private static ImmutableArray<double> Kept(double[] values) => ImmutableCollectionsMarshal.AsImmutableArray(values);

    private static double Degrees(double angle) => In.Degrees.Of(angle);

    private static void RefuseShort(EvenGrid grid)
    {
        var length = grid.Covered.Sum(c => (c.Last - c.First) / grid.Rate);
        if (length < Drive.Shortest)
        {
            throw new RefusedValueException(
                "length of the log", Text($"{length:F1} s"), Text($"{Drive.Shortest:F0} s or more without a gap"), "Give a longer log.");
        }
    }

    private TimedTrack? Timed(SensorKind kind) => log.Of(kind) is { } track ? TimedTrack.Of(track) : null;

    // Gravity is in it, or beside it.
    private TimedTrack[] Forces()
    {
        if (log.Of(SensorKind.Acceleration) is { } whole)
        {
            return [TimedTrack.Of(whole) ?? throw TooFew(whole)];
        }

        var track = log.Of(SensorKind.AccelerationWithoutGravity)!;
        var gravity = Timed(SensorKind.Gravity) ?? throw new RefusedValueException(
            "acceleration", "without gravity", "with gravity in it or beside it",
            "Without gravity nothing tells which way is up: log the accelerometer itself, or gravity too.");
        story.Add(new StoryLine("gravity", "Acceleration is logged without gravity; the phone's own gravity was added."));
        return [TimedTrack.Of(track) ?? throw TooFew(track), gravity];
    }

    private static RefusedValueException TooFew(SensorTrack track) =>
        new("samples of " + track.File, Text($"{track.Times.Length}"), "three with rising instants", "Give a longer log.");

    // From a car that stands all the time nothing tells forward.
    private TimedTrack? Moving(TimedTrack? speed)
    {
        if (speed is null || speed.Values[0].Any(v => Math.Abs(v) >= Standing))
        {
            return speed;
        }

        story.Add(new StoryLine("speed", "The car never moves by the log's speed: it is left out, and tells no forward.", IsDoubtful: true));
        return null;
    }

    private EvenGrid Longest(EvenGrid grid, IReadOnlyList<double> moves)
    {
        double[] cuts = [grid.Start, .. moves, grid.Time(grid.Count - 1)];
        var parts = Enumerable.Range(1, cuts.Length - 1).Select(k => new Stretch(
            k == 1 ? cuts[0] : cuts[k - 1] + 2.0, k == cuts.Length - 1 ? cuts[k] : cuts[k] - 2.0));
        var longest = parts.MaxBy(p => p.Length);
        story.Add(new StoryLine(
            "moved",
            Text($"At {string.Join(", ", moves.Select(m => Text($"{m:F0} s")))} gravity turned along the phone's axes and stayed so: ")
            + "the phone moved in its place; "
            + Text($"the longest part between, {longest.From:F0} to {longest.To:F0} s, is read, the rest is not."),
            IsDoubtful: true));
        return grid.Within(longest);
    }

    // The phone's axis that lies flattest.
    private static string AxisOf(Direction up)
    {
        var (x, y, z) = (Math.Abs(up.X), Math.Abs(up.Y), Math.Abs(up.Z));
        return x <= y && x <= z ? "x" : y <= z ? "y" : "z";
    }

    // Two directions across up, the second to the left of the first.
    private static (Direction First, Direction Second) Across(Direction up)
    {
        var axis = AxisOf(up) switch { "x" => new Direction(1, 0, 0), "y" => new Direction(0, 1, 0), _ => new Direction(0, 0, 1) };
        var first = (axis - (up * axis.Dot(up))).Unit;
        return (first, up.Cross(first));
    }

    private FoundAxes Found(EvenGrid grid, double[][] force, double[][]? turns, ref TimedTrack? speed)
    {
        var level = Levelling.Of(force, grid.Rows());
        var (first, second) = Across(level.Up);
        if (speed is null || turns is null)
        {
            return new FoundAxes(level, first, second, null, false);
        }

        var (h1, h2) = (Along(grid, first, force, level.Gain), Along(grid, second, force, level.Gain));
        var yaw = Along(grid, level.Up, turns, 1.0);
        var lag = log.Overrulings.Amount("lag")?.Value;
        if (ForwardFit.Of(grid, h1, h2, yaw, speed, stop, lag) is not { } fit)
        {
            return new FoundAxes(level, first, second, null, false);
        }

        if (SpeedScale(speed, fit) is { } scaled)
        {
            speed = scaled;
            fit = ForwardFit.Of(grid, h1, h2, yaw, speed, stop, lag)!;
        }

        var other = fit.OtherHand!;
        var isTurned = log.Overrulings.Word("hand") is { } hand ? hand == "turned" : other.Explained > fit.Explained + HandShare;
        return new FoundAxes(level, first, second, isTurned ? other : fit, isTurned);
    }

    internal static double[] Along(EvenGrid grid, Direction axis, double[][] columns, double gain)
    {
        var result = new double[grid.Count];
        for (var i = 0; i < result.Length; i++)
        {
            result[i] = gain * axis.Dot(Levelling.At(columns, i));
        }

        return result;
    }

    // What braking and turning account for, so that a drive through a town does not hide a phone that slips.
    private static Func<int, int, Direction>? Driven(EvenGrid grid, FoundAxes found, double[][]? turns, TimedTrack? speed)
    {
        if (turns is null || speed is null || found.Fit is not { } fit || fit.HalfWidth > Mount.Refused)
        {
            return null;
        }

        var (forward, v) = (found.Along(fit.Angle), Speeds(grid, speed, fit.IsLagFound ? fit.Lag : 0.0));
        var (left, hand) = (found.Level.Up.Cross(forward), found.IsTurned ? -1.0 : 1.0);
        return (from, to) =>
        {
            var yaw = 0.0;
            for (var i = from; i <= to; i++)
            {
                yaw += found.Level.Up.Dot(Levelling.At(turns, i)) * hand / (to - from + 1);
            }

            var growth = (v[to] - v[from]) * grid.Rate / Math.Max(to - from, 1);
            return (forward * (fit.Braking * growth)) + (left * (fit.Turning * yaw * 0.5 * (v[from] + v[to])));
        };
    }

    // Braking felt by the accelerometer against the change of speed: in the wrong unit they differ by the units' ratio.
    private TimedTrack? SpeedScale(TimedTrack speed, ForwardFit fit)
    {
        if (log.Overrulings.Word("speed") is not null)
        {
            return null;
        }

        var isSaid = speed.Track.UnitSaid.Length > 0;
        if (fit.Braking <= 0.0 || fit.Explained < (isSaid ? 0.6 : 0.3))
        {
            return null;
        }

        var taken = SpeedUnit.All.FirstOrDefault(u => u.Name == speed.Track.UnitTaken) ?? SpeedUnit.All[0];
        var nearest = SpeedUnit.All.Take(3).MinBy(u => Math.Abs(Math.Log(fit.Braking * taken.Factor / u.Factor)))!;
        var scale = nearest.Factor / taken.Factor;
        if (nearest.Name == taken.Name || Math.Abs(Math.Log(fit.Braking / scale)) > 0.3 || (isSaid && Math.Abs(Math.Log(scale)) < 0.7))
        {
            return null;
        }

        story.Add(new StoryLine(
            "speed-unit",
            Text($"Speed agrees with braking when it is read in {nearest.Name}, not in {taken.Name} ")
            + (isSaid ? "as the header says: it was read so." : "as was guessed: it was read so."),
            IsDoubtful: true));
        return TimedTrack.Of(speed.Track with
        {
            UnitTaken = nearest.Name,
            Values = [Kept([.. speed.Track.Values[0].Select(v => v * scale)])],
        });
    }

    private static RoadRamp? Ramp(EvenGrid grid, double[][] force, FoundAxes found, TimedTrack? speed) => speed is null ? null : new RoadRamp(
        grid, force, found.Level, found.Fit is { } fit && fit.HalfWidth <= Mount.Refused ? found.Along(fit.Angle) : null,
        Speeds(grid, speed, found.Fit is { IsLagFound: true, Lag: var late } ? late : 0.0));

    // Of means over a second, so that bumps do not count, without what braking and turning account for.
    private static double Wander(EvenGrid grid, double[][] force, Direction up, Func<int, int, Direction>? driven)
    {
        var size = Math.Max(1, (int)Math.Round(grid.Rate));
        var angles = new List<double>();
        foreach (var (first, last) in grid.Covered)
        {
            for (var from = first; from + size - 1 <= last; from += size)
            {
                var sum = default(Direction);
                for (var i = from; i < from + size; i++)
                {
                    sum += Levelling.At(force, i);
                }

                var mean = sum * (1.0 / size);
                angles.Add(up.AngleTo(driven is null ? mean : mean - driven(from, from + size - 1)));
            }
        }

        angles.Sort();
        return angles.Count == 0 ? 0.0 : angles[(int)(0.9 * (angles.Count - 1))];
    }

    private static double[] Speeds(EvenGrid grid, TimedTrack speed, double lag)
    {
        var result = new double[grid.Count];
        var k = 0;
        for (var i = 0; i < result.Length; i++)
        {
            var t = grid.Time(i) + lag;
            while (k + 2 < speed.Times.Length && speed.Times[k + 1] <= t)
            {
                k++;
            }

            var share = Math.Clamp((t - speed.Times[k]) / (speed.Times[k + 1] - speed.Times[k]), 0.0, 1.0);
            result[i] = speed.Values[0][k] + (share * (speed.Values[0][k + 1] - speed.Values[0][k]));
        }

        return result;
    }

    // What a gyro says at a standstill is its own; where the car never stands, what it says in the middle.
    private static double[] LessBias(EvenGrid grid, double[] turn, double[] speed)
    {
        var (sum, still) = (0.0, 0);
        foreach (var i in speed.Length == 0 ? [] : grid.Rows())
        {
            if (Math.Abs(speed[i]) < Standing)
            {
                (sum, still) = (sum + turn[i], still + 1);
            }
        }

        return Less(turn, still > 3.0 * grid.Rate ? sum / still : Middle.Of(grid.Covering(turn)));
    }

    private static double[] Less(double[] values, double by)
    {
        for (var i = 0; i < values.Length; i++)
        {
            values[i] -= by;
        }

        return values;
    }
}
