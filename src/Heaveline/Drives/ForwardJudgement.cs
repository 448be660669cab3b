using System.Collections.Immutable;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives;

/// <summary>
/// What is taken for forward: the user's word, braking and turning, or, without a speed that goes with the drive, bends and bumps. Also whether speed
/// and turn rate are this drive's at all.
/// </summary>
internal sealed class ForwardJudgement
{
    // A car turns slowly about up; about a line across up it only nods and leans, rad/s (RMS). A proposal of this program.
    private const double LeastTurning = 0.03;
    private const double MostAside = 2.0;

    // A direction that is said without a doubt: what an eye lays along a car's tunnel (common practice, no source).
    private static readonly double ByHand = 5.0 / In.Degrees.Factor;
    private readonly List<StoryLine> told = [];

    private ForwardJudgement()
    {
    }

    /// <summary>Forward; null where it is not known well enough.</summary>
    public ForwardWitness? Forward { get; private set; }

    /// <summary>Half-width of the best that there is, rad; null where nothing tells.</summary>
    public double? HalfWidth { get; private set; }

    /// <summary>Why there is no forward, a sentence; blank where there is.</summary>
    public string NoForward { get; private set; } = "";

    /// <summary>Whether the user said it.</summary>
    public bool IsSaid { get; private set; }

    /// <summary>Whether the speed is not this drive's.</summary>
    public bool IsSpeedForeign { get; private set; }

    /// <summary>Whether the gyro turns by the other hand.</summary>
    public bool IsTurned { get; private set; }

    /// <summary>How far from left the line lies about which bumps turn the body, rad; null where it is no farther than chance.</summary>
    public double? BumpsAside { get; private set; }

    /// <summary>What is said of it.</summary>
    public ImmutableArray<StoryLine> Told => [.. told];

    /// <summary>Judges.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="force">Specific force, three columns, m/s².</param>
    /// <param name="turns">Turn rate, three columns, rad/s; null without a gyro.</param>
    /// <param name="found">What was found so far.</param>
    /// <param name="overrulings">What the user takes otherwise.</param>
    /// <param name="hasSpeed">Whether there is a speed.</param>
    public static ForwardJudgement Of(
        EvenGrid grid, double[][] force, double[][]? turns, FoundAxes found, ImmutableArray<Overruling> overrulings, bool hasSpeed)
    {
        var result = new ForwardJudgement();
        var said = overrulings.Amount("forward");
        if (turns is not null)
        {
            result.Judge(grid, force, turns, found, overrulings, isSaid: said is not null, hasSpeed);
        }
        else
        {
            result.NoForward = "There is no turn rate, and braking alone does not tell forward.";
        }

        if (said is { } word)
        {
            var half = word.HalfWidth > 0.0 ? word.HalfWidth : ByHand;
            (result.Forward, result.HalfWidth, result.IsSaid) = (new ForwardWitness(word.Value, half, "as you say"), half, true);
        }

        return result;
    }

    private void Judge(
        EvenGrid grid, double[][] force, double[][] turns, FoundAxes found, ImmutableArray<Overruling> overrulings, bool isSaid, bool hasSpeed)
    {
        var (level, fit) = (found.Level, found.Fit);
        (HalfWidth, IsTurned) = (fit?.HalfWidth, found.IsTurned);
        double[] Turn(Direction axis) => DriveMaking.Along(grid, axis, turns, 1.0);
        double[] Force(Direction axis) => DriveMaking.Along(grid, axis, force, level.Gain);
        var (first, second, yaw) = (Turn(found.First), Turn(found.Second), Turn(level.Up));
        var isOwn = !overrulings.Any(o => o.About == "turn-rate");
        IsSpeedForeign = fit is { IsSpeedForeign: true } && !overrulings.Any(o => o.About == "speed");
        if (isOwn && (fit is { IsTurnForeign: true } || IsTurningAside(grid, first, second, yaw)))
        {
            (IsTurned, HalfWidth) = (false, null);
            NoForward = "The turn rate does not go with the accelerometer's bends: the gyro's axes are exchanged, or it is another drive's. "
                + "Name its columns in the order of the accelerometer's (--take \"turn-rate: columns …\").";
            told.Add(new StoryLine("gyro-axes", NoForward, IsDoubtful: true));
            TellSpeed(fit, alone: false);
            return;
        }

        TellSpeed(fit, alone: true);
        // Without a speed nothing tells the gyro's hand but the user.
        IsTurned = overrulings.Word("hand") is { } word ? word == "turned" : IsTurned && !IsSpeedForeign;
        if (IsTurned)
        {
            told.Add(new StoryLine(
                "hand", "The gyro turns by the other hand than the accelerometer's axes: it was turned round.", IsDoubtful: true));
        }

        var hand = IsTurned ? -1.0 : 1.0;
        var bumps = BumpLine.Of(grid, Handed(first), Handed(second), Handed(yaw), Force(level.Up));
        if (fit is { Explained: > 0.0 } && !IsSpeedForeign && fit.HalfWidth <= Mount.Refused)
        {
            Forward = new ForwardWitness(fit.Angle, fit.HalfWidth, "from braking and turning");
        }
        else
        {
            var bends = ForwardFit.OfTurning(grid, Force(found.First), Force(found.Second), Handed(yaw));
            var witness = ForwardWitness.Without(bends, bumps, out var whyNot);
            Forward = witness?.HalfWidth <= Mount.Refused ? witness : null;
            HalfWidth = Forward?.HalfWidth ?? fit?.HalfWidth ?? witness?.HalfWidth;
            NoForward = Forward is not null ? ""
                : fit is null && hasSpeed ? Text($"Speed and motion overlap for less than {ForwardFit.Shortest:F0} s.")
                : fit is null || IsSpeedForeign ? whyNot.Length > 0 ? whyNot : Open(witness!.HalfWidth, "Bends and bumps")
                : Open(fit.HalfWidth, "Braking and turning");
        }

        BumpsAside = isSaid ? null : Forward?.Aside(bumps);
        if (BumpsAside is { } aside)
        {
            told.Add(new StoryLine(
                "bump-line",
                Text($"{bumps!.Bumps} bumps turn the body about a line {In.Degrees.Of(aside):F0}° from the car's left: the gyro's axes may be ")
                + "exchanged, forward may be another, or the bumps lay under one side.",
                IsDoubtful: true));
        }

        double[] Handed(double[] rates) => IsTurned ? [.. rates.Select(w => hand * w)] : rates;
    }

    private static string Open(double half, string witnesses) =>
        Text($"{witnesses} leave forward open by ± {In.Degrees.Of(half):F0}° (90 %). Brake firmly once and take two turns.");

    private void TellSpeed(ForwardFit? fit, bool alone)
    {
        if (!IsSpeedForeign)
        {
            return;
        }

        told.Add(new StoryLine(
            "speed-fits",
            Text($"The accelerometer feels {Math.Max(fit!.Braking, 0.0):F1} of the braking that the speed tells: the speed is another drive's, ")
            + (alone ? "in another unit, " : "")
            + Text($"or late by more than {SlowMotion.MostLag:F0} s. It is not used; --take \"speed: m/s\" (or its unit) uses it."),
            IsDoubtful: true));
    }

    // Slow turning about a line across up: nodding and leaning are quick, or small.
    private static bool IsTurningAside(EvenGrid grid, double[] first, double[] second, double[] yaw)
    {
        double across = 0.0, about = 0.0;
        var count = 0;
        foreach (var (from, to) in grid.Covered)
        {
            double[] Slow(double[] x) => ZeroPhase.Band(x.AsSpan(from, to - from + 1), grid.Rate, 0.03, 0.35);
            var (one, other, up) = (Slow(first), Slow(second), Slow(yaw));
            for (var i = 0; i < one.Length; i++)
            {
                across += (one[i] * one[i]) + (other[i] * other[i]);
                about += up[i] * up[i];
            }

            count += one.Length;
        }

        return count > 0 && Math.Sqrt(across / count) > LeastTurning && across > MostAside * MostAside * about;
    }
}
