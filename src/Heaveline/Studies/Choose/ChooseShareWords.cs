using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Search;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What numbers of a choice are shares of, in words that hold in print.</summary>
internal static class ChooseShareWords
{
    /// <summary>What each changed place takes off; null where that is not told.</summary>
    /// <param name="findings">What was found.</param>
    /// <param name="less">A ratio in words.</param>
    public static Sentence? Of(ChooseFindings findings, Func<double, string> less) => findings.Shares.IsEmpty ? null : new("shares",
        $"Of A's settling, {less(findings.List[0].Entry.Tried.Stated.Wishes[0])}, fair shares are: "
        + string.Join(", ", findings.Shares.Zip(Printed(findings), (share, printed) =>
            $"{findings.Parts.Space.Places[share.Place].Name} {Numeral.Change(printed, 1)} %"))
        + "; they add up.");

    /// <summary>How the setup of <see cref="ChooseFindings.Least"/> is led up to: another may have a little less, in print too.</summary>
    /// <param name="findings">What was found.</param>
    /// <param name="least">That setup.</param>
    /// <param name="less">A ratio in words.</param>
    public static string Least(ChooseFindings findings, DrivenSetup least, Func<double, string> less) =>
        less(findings.Found.Front.Where(one => one.Setup != 0L).Min(one => one.Wishes[0])) == less(least.Wishes[0])
            ? "The least settling as stated has"
            : "Of those whose settling as stated nobody can tell from the least, the first by price and parts changed is";

    /// <summary>In how many drawn cars nothing can be compared, a sentence behind the finding; blank where it can in all.</summary>
    /// <param name="findings">What was found.</param>
    public static string Uncrossed(ChooseFindings findings) => findings.Trial.Undriven == 0 ? ""
        : Text($" In {findings.Trial.Undriven} of {findings.Trial.Undriven + findings.Trial.Draws} drawn cars the car as it is does not get across ")
            + "these roads: what is told in comparison with it is told of the others.";

    // Rounded each for itself they would not add up in print: the greatest takes what is left over.
    private static double[] Printed(ChooseFindings findings)
    {
        double[] printed = [.. findings.Shares.Select(share => Math.Round(In.Percent.Of(share.Part), 1))];
        var whole = Math.Round(In.Percent.Of(findings.List[0].Entry.Tried.Stated.Wishes[0] - 1.0), 1);
        printed[Array.IndexOf(printed, printed.MaxBy(Math.Abs))] += whole - printed.Sum();
        return printed;
    }
}
