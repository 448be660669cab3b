using System.Text.RegularExpressions;
using Heaveline.Drives.Recovery;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A change of springs and dampers in words: "rear springs +20 %, dampers −10 %".</summary>
internal static partial class ScaledWords
{
    /// <summary>Reads it; null where it was objected to.</summary>
    public static LinearChange? Of(AskedReader reader, Choice choice, string words)
    {
        var change = new LinearChange();
        foreach (var part in CommaList.Of(words))
        {
            var match = Part().Match(part);
            var factor = match.Success && QuantityText.Number(match.Groups["share"].Value.Replace('−', '-').TrimStart('+')) is { } percent
                ? 1.0 + (percent / 100.0)
                : double.NaN;
            if (factor is not (>= LinearChange.Least and <= LinearChange.Most))
            {
                reader.Object(
                    choice.Name,
                    $"{choice.Name}: '{part}' is no change; write it as rear springs +20 %, front dampers -10 %, from -50 % to +100 %.");
                return null;
            }

            var (isFront, isRear) = (match.Groups["end"].Value != "rear", match.Groups["end"].Value != "front");
            change = match.Groups["what"].Value == "springs"
                ? change with
                {
                    FrontSprings = isFront ? factor : change.FrontSprings,
                    RearSprings = isRear ? factor : change.RearSprings,
                }
                : change with
                {
                    FrontDampers = isFront ? factor : change.FrontDampers,
                    RearDampers = isRear ? factor : change.RearDampers,
                };
        }

        return change;
    }

    /// <summary>The change as it is said.</summary>
    public static string Said(LinearChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        (string What, double Factor)[] things =
        [
            ("front springs", change.FrontSprings), ("rear springs", change.RearSprings),
            ("front dampers", change.FrontDampers), ("rear dampers", change.RearDampers),
        ];
        string[] said = [.. things.Where(t => t.Factor != 1.0).Select(t => $"{t.What} {Share(t.Factor)} %")];
        return said.Length > 0 ? string.Join(", ", said) : "nothing changed";
    }

    // With as many digits as it was given with.
    private static string Share(double factor)
    {
        var percent = In.Percent.Of(factor - 1.0);
        return Numeral.Change(percent, Enumerable.Range(0, 6).FirstOrDefault(d => Math.Abs(Math.Round(percent, d) - percent) < 1e-9, 6));
    }

    [GeneratedRegex("^((?<end>front|rear) )?(?<what>springs|dampers) (?<share>[+−-][0-9.,]+) ?%$")]
    private static partial Regex Part();
}
