using System.Text.RegularExpressions;
using Heaveline.Quantities;

namespace Heaveline.Files.Yaml;

/// <summary>
/// What the values of a key usually are on road vehicles, beside the limit that its record refuses by: what lies outside is told, not refused, since
/// someone may drive it. Ranges: common practice, no source.
/// </summary>
/// <param name="Low">The lower end, SI units.</param>
/// <param name="High">The upper end, SI units.</param>
/// <param name="Words">The range as written ("0.9 to 2.3 m").</param>
internal sealed partial record UsualRange(double Low, double High, string Words)
{
    // Past so many times the range nothing on wheels lies, and numbers begin to run out of digits.
    private const double Impossible = 1e4;

    // More than half of a value as its doubt is no measurement.
    private const double MostDoubt = 0.5;

    // What a unit was taken for, and the factor that makes it right again.
    private static readonly (string Unit, double Factor, string Slip)[] Slips =
    [
        ("in", 1.0 / 2.54, "in written for cm"),
        ("in", 1.0 / 25.4, "in written for mm"),
        ("m", 1e-3, "m written for mm"),
        ("m", 1e-2, "m written for cm"),
        ("mm", 1e3, "mm written for m"),
        ("mm", 10.0, "mm written for cm"),
        ("kg", 1.0 / 9.80665, "a weight in newtons written as a mass in kilograms"),
        ("N/mm", 1e-3, "N/m written as N/mm"),
        ("N/m", 1e3, "N/mm written as N/m"),
        ("", 0.1, "a digit too many"),
        ("", 10.0, "a digit too few"),
    ];

    /// <summary>Tells a value that lies outside, or whose doubt is as large as itself.</summary>
    /// <param name="node">Where it stands.</param>
    /// <param name="si">The value, SI units.</param>
    /// <param name="doubt">Half-width of its doubt, SI units.</param>
    /// <param name="reader">Receives it.</param>
    public void Check(Node node, double si, double doubt, Reader reader)
    {
        if (doubt > Impossible * Math.Max(Math.Abs(Low), Math.Abs(High)))
        {
            reader.WarnUnusual(
                node.Place,
                $"{node.Subject} is {node.Text}: its doubt is far beyond any value; {Words} is usual.",
                "Check the doubt and its unit.",
                true);
            return;
        }

        // Where a value may be nothing or below, its doubt is held against what such values span.
        if (!(Low > 0.0) && doubt > High - Low)
        {
            reader.WarnUnusual(
                node.Place,
                $"{node.Subject} is {node.Text}: its doubt is wider than all that is usual, {Words}.",
                "Half the width of the interval that holds the true value 19 times out of 20 is meant. Likely slip: a digit too many, or the unit.",
                false);
            return;
        }

        // Nothing of something is no slip: where there must be some, its record refuses it.
        if (si == 0.0)
        {
            return;
        }

        if (si < Low || si > High)
        {
            var isImpossible = Math.Abs(si) > Impossible * Math.Max(Math.Abs(Low), Math.Abs(High)) || (Low > 0.0 && si < Low / Impossible);
            reader.WarnUnusual(node.Place, $"{node.Subject} is {node.Text}; {Words} is usual.", Advice(node.Text, si), isImpossible);
        }
        else if (Low > 0.0 && doubt > MostDoubt * si)
        {
            reader.WarnUnusual(
                node.Place,
                FormattableString.Invariant($"{node.Subject} is {node.Text}: its doubt is {In.Percent.Of(doubt / si):0} % of it."),
                "Half the width of the interval that holds the true value 19 times out of 20 is meant. Likely slip: a digit too many, or the unit.",
                false);
        }
    }

    private string Advice(string text, double si)
    {
        var unit = Number().Replace(text.Split('±', '+')[0], "").Trim();
        foreach (var slip in Slips)
        {
            if ((slip.Unit.Length == 0 || slip.Unit == unit) && si * slip.Factor >= Low && si * slip.Factor <= High)
            {
                return $"Likely slip: {slip.Slip}.";
            }
        }

        return "Check the number and its unit.";
    }

    [GeneratedRegex(@"^[\s0-9.,eE+\-−]+")]
    private static partial Regex Number();
}
