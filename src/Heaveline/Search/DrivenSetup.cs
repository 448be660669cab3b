using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>A setup that was driven in the car as stated.</summary>
/// <param name="Setup">Its number.</param>
/// <param name="Row">What came of it.</param>
/// <param name="Wishes">Its wishes, in the order of the search; NaN for those that are driven for where it does not get across.</param>
/// <param name="Refusal">Why it is none to choose; <see cref="SetupRow.None"/> for no reason.</param>
internal sealed record DrivenSetup(long Setup, SetupRow Row, ImmutableArray<double> Wishes, int Refusal)
{
    /// <summary>From this number on a reason is a limit: the first limit's.</summary>
    public const int FirstLimit = 1000;

    /// <summary>Whether it may be chosen.</summary>
    public bool IsAllowed => Refusal == SetupRow.None;
}
