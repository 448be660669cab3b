using System.Collections.Immutable;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A side effect of the shortlist: what it is now, and by how much each setup changes it in the drawn cars.</summary>
/// <param name="Measure">What it is of.</param>
/// <param name="Key">Its key, with the speed where it is of the random road.</param>
/// <param name="Label">Its label, the same way.</param>
/// <param name="Present">The car as it is, as stated, SI.</param>
/// <param name="Changes">The change with each setup.</param>
internal sealed record ChooseSide(Measure Measure, string Key, string Label, double Present, ImmutableArray<ChooseChange> Changes)
{
    /// <summary>Whether a setup makes it better, worse or neither within the doubt; 0 where nobody can tell, or what is better.</summary>
    public int Turn(int setup) => !IsTold(setup) || Measure.Better == Better.Neither ? 0
        : (Changes[setup].Mean > 0.0) == (Measure.Better == Better.More) ? 1 : -1;

    /// <summary>Whether a setup's change is told from none: beyond what scatters, by both of its ends as they are printed.</summary>
    public bool IsTold(int setup) => Changes[setup].IsTold && Printed(Changes[setup].Low) != 0.0 && Printed(Changes[setup].High) != 0.0;

    /// <summary>
    /// Of each setup the load under which its change is worst in the car as stated, and that change, SI; null where neither way is better.
    /// </summary>
    public ImmutableArray<(double Change, string Load)?> Worst { get; init; } = [];

    /// <summary>The load under which the changes are told.</summary>
    public string Load { get; init; } = "";

    /// <summary>
    /// The load under which a setup's change, as stated, is worse than under the one that is told, a clause; null where it is printed alike or better
    /// under every other.
    /// </summary>
    public string? WorseWords(int setup)
    {
        if (Worst.IsEmpty || Worst[setup] is not { } worst || worst.Load == Load
            || Print(worst.Change) == Print(Changes[setup].Stated))
        {
            return null;
        }

        var isWorse = Printed(worst.Change) != 0.0 && (worst.Change > 0.0) != (Measure.Better == Better.More);
        return $"{(isWorse && Turn(setup) >= 0 ? "but " : "")}{Print(worst.Change)} under the load '{worst.Load}' as stated";
    }

    /// <summary>Whether it stands in the table alone: the ride of seats beyond the first.</summary>
    public bool IsFurther { get; init; }

    /// <summary>A setup's change in words, the signs in front: at least and at most, or one number where both are printed alike.</summary>
    public string Words(int setup) => (Print(Changes[setup].Low), Print(Changes[setup].High)) is var (low, high) && low == high
        ? $"{low} in all"
        : $"{low} to {high}";

    private string Print(double change) => Numeral.Change(Measure.Unit.Of(change), Measure.Digits) + Measure.Unit.Suffix;

    private double Printed(double change) => Math.Round(Measure.Unit.Of(change), Measure.Digits);
}
