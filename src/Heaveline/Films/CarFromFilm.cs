using System.Collections.Immutable;
using Heaveline.Drives.Identification;

namespace Heaveline.Films;

/// <summary>
/// The car as films of it tell it: the half car between its wheels that moves most like its body. It holds for the motion of the films, not for the
/// springs and dampers of a drawing.
/// </summary>
public sealed record CarFromFilm
{
    // Standard deviations of the ratio's logarithm beyond which an end is called the slower one: 19 cases of 20.
    private const double Called = 1.96;

    /// <summary>Its numbers: both frequencies on rigid tyres, their ratio, both dampings with friction, the dynamic index.</summary>
    public required ImmutableArray<CarEstimate> Estimates { get; init; }

    /// <summary>By which rules it is not believed, or not all of it.</summary>
    public required ImmutableArray<CarRefusal> Refusals { get; init; }

    /// <summary>Whether the numbers that are said may be believed.</summary>
    public required bool IsBelieved { get; init; }

    /// <summary>Standard deviation of the logarithm of the ratio.</summary>
    public required double RatioDeviation { get; init; }

    /// <summary>Correlation of the errors of both frequencies.</summary>
    public required double Correlation { get; init; }

    /// <summary>Standard deviation of what is left between body and fit, m.</summary>
    public required double Misfit { get; init; }

    /// <summary>Root mean square rate of the wheels' travel in the films, m/s.</summary>
    public required double TravelSpeed { get; init; }

    /// <summary>Each film's levels and slow slopes as fitted: front and rear level, m, front and rear slope, m/s.</summary>
    public required ImmutableArray<ImmutableArray<double>> Levels { get; init; }

    /// <summary>The fitted car's body in each film.</summary>
    public required ImmutableArray<FittedPass> Fitted { get; init; }

    /// <summary>How much the films speak for a split and for friction; null where the fit is not believed, or one law alone was
    /// fitted.</summary>
    public LawOdds? Odds { get; init; }

    /// <summary>What would tell more; null where all is said, or nothing would.</summary>
    public FilmMore? Advice { get; init; }

    /// <summary>The estimate of a number; null where there is none.</summary>
    public CarEstimate? Of(CarNumber number) => Estimates.FirstOrDefault(e => e.Number == number);

    /// <summary>−1: the rear is called slower than the front; +1: the front is called slower; 0: neither may be.</summary>
    public int SlowerEnd => Of(CarNumber.FrequencyRatio) is { IsSaid: true } ratio && Math.Abs(Math.Log(ratio.Value)) > Called * RatioDeviation
        ? Math.Sign(Math.Log(ratio.Value))
        : 0;

    /// <summary>Finds it.</summary>
    /// <param name="passes">One or several films of one car under one load.</param>
    /// <param name="given">What is known besides.</param>
    /// <param name="stop">Stops it.</param>
    public static CarFromFilm Of(IReadOnlyList<SeenPass> passes, FilmGiven given, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(passes);
        ArgumentNullException.ThrowIfNull(given);
        return new FilmIdentification([.. passes], given, stop).Found();
    }
}
