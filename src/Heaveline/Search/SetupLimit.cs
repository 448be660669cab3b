namespace Heaveline.Search;

/// <summary>What must hold of a setup, in the car as stated and in a share of the drawn cars.</summary>
/// <param name="Wish">What it bounds: where nothing counts for that, the limit says nothing and is left out.</param>
/// <param name="Says">What it is, in words ("no road worse than now by more than 3 %").</param>
/// <param name="Share">In what share of the drawn cars it must hold (–).</param>
/// <param name="Excess">By how much a row is beyond it, compared with that of the car as it is in the same car; at most 0 where it holds.</param>
internal sealed record SetupLimit(WishKind Wish, string Says, double Share, Func<SetupRow, SetupRow, double> Excess)
{
    /// <summary>
    /// Whether the car as it is has no say in it: then it is asked in every drawn car, also in one in which the car as it is does not get across.
    /// </summary>
    public bool IsAlone { get; init; }

    /// <summary>Whether a row keeps it.</summary>
    public bool Holds(SetupRow row, SetupRow present) => Excess(row, present) <= 0.0;
}
