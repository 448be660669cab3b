using System.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Modes;

/// <summary>What moves in a body mode, and about which point, in words.</summary>
public static class BodySwings
{
    /// <summary>How many times as far as the other an end moves at least that swings by itself.</summary>
    public const double Times = 4.0;

    /// <summary>The rule in a sentence, with how modes are followed.</summary>
    public static string Rule { get; } =
        $"In a body mode an end swings where it moves at least {Numeral.Of(Times, 0)} times as far as the other; where both move more alike the body "
        + "bounces (the same way, about a point outside the wheelbase) or pitches (against each other, about a point inside it). "
        + "The first is the slower one with nothing aboard; each is followed as the load comes aboard little by little, and two that come "
        + $"nearer than {Numeral.Of(100.0 * BodyPencil.Meeting, 0)} % pass through one another, each with its shape.";

    /// <summary>What moves.</summary>
    /// <param name="front">Motion over the front axle, up positive, in any measure.</param>
    /// <param name="rear">Motion over the rear axle in the same measure.</param>
    public static BodySwing Of(Complex front, Complex rear)
    {
        if (front.Magnitude >= Times * rear.Magnitude)
        {
            return BodySwing.FrontEnd;
        }

        if (rear.Magnitude >= Times * front.Magnitude)
        {
            return BodySwing.RearEnd;
        }

        return (front * Complex.Conjugate(rear)).Real >= 0.0 ? BodySwing.Bounce : BodySwing.Pitch;
    }

    /// <summary>As a name: "front end swings".</summary>
    public static string Name(BodySwing swing) => swing switch
    {
        BodySwing.Bounce => "bounce",
        BodySwing.Pitch => "pitch",
        BodySwing.FrontEnd => "front end swings",
        _ => "rear end swings",
    };

    /// <summary>A mode in a clause: "the front end swings at 1.18 Hz about a point 0.10 m ahead of the rear axle".</summary>
    public static string Clause(BodyMode mode)
    {
        ArgumentNullException.ThrowIfNull(mode);
        var does = mode.Swing switch
        {
            BodySwing.Bounce => "the body bounces",
            BodySwing.Pitch => "the body pitches",
            BodySwing.FrontEnd => "the front end swings",
            _ => "the rear end swings",
        };
        return $"{does} at {Numeral.Of(mode.Frequency, 2)} Hz {Place(mode)}";
    }

    /// <summary>Where the body turns, told from the nearer axle: "about a point 0.10 m ahead of the rear axle".</summary>
    public static string Place(BodyMode mode)
    {
        ArgumentNullException.ThrowIfNull(mode);
        if (!double.IsFinite(mode.NodeBehindFrontAxle))
        {
            return "straight up and down";
        }

        var isFront = mode.NodeBehindFrontAxle < 0.5 * mode.Wheelbase;
        var behind = mode.NodeBehindFrontAxle - (isFront ? 0.0 : mode.Wheelbase);
        var axle = isFront ? "the front axle" : "the rear axle";
        return Numeral.Of(Math.Abs(behind), 2) is var far && far == Numeral.Of(0.0, 2)
            ? $"about {axle}"
            : $"about a point {far} m {(behind > 0.0 ? "behind" : "ahead of")} {axle}";
    }
}
