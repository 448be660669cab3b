using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>What came of one setup in one car.</summary>
/// <param name="Refusal">Why it is none to choose, as its doer numbers the reasons; <see cref="None"/> for no reason.</param>
/// <param name="Numbers">
/// Its numbers, SI, in the order of the study: of every use case. Empty where it could not be driven or was looked at alone; whoever is refused for
/// what it does on the road has them all the same.
/// </param>
internal sealed record SetupRow(int Refusal, double[] Numbers)
{
    /// <summary>No reason against it.</summary>
    public const int None = 0;

    /// <summary>Whether it was driven to the end everywhere.</summary>
    public bool IsDriven => Numbers.Length > 0;

    /// <summary>
    /// By how much it does farther each thing that no setup may do, in the doer's own order and measure: above 0 it does. As smooth in its parts as
    /// can
    /// be, so that those not driven can be guessed from. Empty where nothing is of the kind.
    /// </summary>
    public ImmutableArray<double> Excesses { get; init; } = [];
}
