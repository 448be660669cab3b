using System.Collections.Immutable;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Drives.Planning;

/// <summary>What planks are looked for: for which car, of which boards, how high and how fast at most.</summary>
public sealed record PlankWish
{
    /// <summary>No row is higher: a tyre takes the edge and the car its blow. Common practice, no source.</summary>
    public const double MostHeight = 0.05;

    /// <summary>Slowest, m/s.</summary>
    public static double Slowest { get; } = 15.0 / In.KilometresPerHour.Factor;

    /// <summary>Fastest, m/s.</summary>
    public static double Fastest { get; } = 30.0 / In.KilometresPerHour.Factor;

    /// <summary>A driver keeps a speed to so much of it (–). Common practice, no source.</summary>
    public const double SpeedError = 0.05;

    /// <summary>
    /// The end that moves farther must move at least so fast to be told from the road, root mean square, m/s. Common practice, no source.
    /// </summary>
    public const double LeastMotion = 0.02;

    /// <summary>Every tyre keeps at least so much of what it bears at rest (–). Common practice, no source.</summary>
    public const double LeastLoad = 0.2;

    /// <summary>The car under its load.</summary>
    public required RideModel Model { get; init; }

    /// <summary>The boards there are, at least one.</summary>
    public ImmutableArray<BoardSize> Boards
    {
        get;
        init => field = value is { IsDefaultOrEmpty: false }
            ? value
            : throw new RefusedValueException("boards", "none", "at least one", "Say which boards there are: \"45 x 195 mm\".");
    } = BoardSize.Usual;
}
