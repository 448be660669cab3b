using System.Collections.Immutable;
using Heaveline.Drives.Identification;

namespace Heaveline.Drives.Planning;

/// <summary>What one hump would tell on a test day, driven at three speeds.</summary>
public sealed record TestDrive
{
    /// <summary>The passes that half-widths are promised for, a third at each speed.</summary>
    public const int Passes = 12;

    /// <summary>Most passes that are planned in one state.</summary>
    public const int MostPasses = 36;

    /// <summary>The hump.</summary>
    public required TestHump Hump { get; init; }

    /// <summary>The three speeds, rising, m/s.</summary>
    public required ImmutableArray<double> Speeds { get; init; }

    /// <summary>Half-width of the 90 % interval of the logarithm of each number after <see cref="Passes"/> passes, by number.</summary>
    public required ImmutableDictionary<CarNumber, double> HalfWidths { get; init; }

    /// <summary>The same after <see cref="MostPasses"/>; empty where nobody asked.</summary>
    internal ImmutableDictionary<CarNumber, double> HalfWidthsAtMost { get; init; } = ImmutableDictionary<CarNumber, double>.Empty;

    /// <summary>Least load of any tyre at these speeds over what it bears at rest (–).</summary>
    public required double LeastLoad { get; init; }

    /// <summary>Least distance of a wheel from a stop at these speeds, m.</summary>
    public required double TravelLeft { get; init; }

    /// <summary>Whether a reader of the log finds each pass by itself, on a smooth road; else its instants must be put in by hand.</summary>
    internal bool StandsOut { get; init; } = true;

    /// <summary>Headline of the car as it is, RMS pitch of the first second, root mean square over the speeds, rad.</summary>
    public required double Headline { get; init; }

    /// <summary>Standard deviation of the logarithm of one pass's headline.</summary>
    public required double Scatter { get; init; }

    /// <summary>Expected change of the logarithm of the headline by the variant, mean over the speeds; null where none is asked about.</summary>
    public double? Change { get; init; }

    /// <summary>
    /// Passes in each state that show the change four times of five, as many at each speed, <see cref="Passes"/> at least; null where more than
    /// <see cref="MostPasses"/> would be needed, or where nothing changes.
    /// </summary>
    public int? PassesForChange => Driven(FewestForChange);

    /// <summary>
    /// Passes after which the wanted number is known well enough, as many at each speed, <see cref="Passes"/> at least; null where more than
    /// <see cref="MostPasses"/> would be needed.
    /// </summary>
    public int? PassesForNumber => Driven(FewestForNumber);

    /// <summary>Whether the variant changes less than is ever shown: less than rounds to 0.1 %.</summary>
    public bool ChangesNothing => Change is { } change && Math.Abs(change) < 5e-4;

    /// <summary>Fewest passes that show the change, at whatever speeds, by which humps are ranked.</summary>
    internal int? FewestForChange => Change is { } change && !ChangesNothing ? PassScatter.PassesFor(change, Scatter, MostPasses) : null;

    /// <summary>Fewest passes that tell the number, by which humps are ranked.</summary>
    internal int? FewestForNumber { get; init; }

    private static int? Driven(int? fewest) => fewest is { } n ? Math.Max(Passes, (n + 2) / 3 * 3) : null;
}
