using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>The travel that is left to bump and rebound stops of a car standing, as numbers of a row and as limits.</summary>
internal static class ChooseTravel
{
    /// <summary>How many numbers it is: bump front and rear, droop front and rear.</summary>
    public const int Numbers = 4;

    // Without a stop nothing ends the travel: farther than any has. What cannot stand has nothing left, by as much.
    private const double Most = 1.0;

    /// <summary>The least that is left under any of some loads, m.</summary>
    /// <param name="models">The car under each; null where it cannot stand.</param>
    public static double[] Of(IEnumerable<RideModel?> models)
    {
        var least = Enumerable.Repeat(Most, Numbers).ToArray();
        foreach (var model in models)
        {
            for (var k = 0; k < Numbers; k++)
            {
                least[k] = Math.Min(least[k], model is null ? -Most : Left(model, k));
            }
        }

        return least;
    }

    /// <summary>The limits on it.</summary>
    /// <param name="limits">The limits of a study.</param>
    /// <param name="first">Where the first number stands in a row.</param>
    public static IEnumerable<SetupLimit> Limits(ChooseLimits limits, int first) =>
        from one in Kinds(limits)
        select new SetupLimit(WishKind.Settling, ChooseLimitWords.Travel(one.Says, one.Limit), one.Limit.Share, (row, _) => Math.Max(
            one.Limit.Front is { } front ? front - row.Numbers[first + one.At] : -Most,
            one.Limit.Rear is { } rear ? rear - row.Numbers[first + one.At + 1] : -Most))
        {
            IsAlone = true,
        };

    /// <summary>
    /// Where a car keeps least of what one of these limits wants, in words ("31 mm at the front under 'driver'"); null where it keeps all of it, and
    /// for any other limit.
    /// </summary>
    /// <param name="limits">The limits of a study.</param>
    /// <param name="limit">The one.</param>
    /// <param name="models">The car under every load.</param>
    public static string? Broken(ChooseLimits limits, SetupLimit limit, IEnumerable<RideModel> models) => Kinds(limits)
        .Where(one => ChooseLimitWords.Travel(one.Says, one.Limit) == limit.Says)
        .Select(one => Words(one.Limit, one.At == 0, models)).FirstOrDefault();

    /// <summary>What the car as it is does not keep itself, a sentence behind the finding; blank where it keeps all.</summary>
    /// <param name="findings">What was found.</param>
    public static string AsItIs(ChooseFindings findings)
    {
        var limits = findings.Asked.Limits;
        string[] broken =
        [
            .. from one in Kinds(limits)
               let words = Words(one.Limit, one.At == 0, findings.Asked.Loads.Concat(findings.Stood.Others)
                   .Select(load => RideModel.Of(findings.Asked.Car, load)))
               where words is not null
               select $"'{ChooseLimitWords.Travel(one.Says, one.Limit)}' ({words})",
            .. findings.Stood.Standing.SwingsTooFar is { } swing ? new[] { swing } : [],
        ];
        return broken.Length == 0 ? "" : $" The car as it is does not keep {SpeedRanges.And(broken)} itself.";
    }

    private static IEnumerable<(string Says, ChooseTravelLimit Limit, int At)> Kinds(ChooseLimits limits)
    {
        if (limits.BumpLeft is { } bump)
        {
            yield return ("bump travel", bump, 0);
        }

        if (limits.DroopLeft is { } droop)
        {
            yield return ("droop", droop, 2);
        }
    }

    private static string? Words(ChooseTravelLimit limit, bool isBump, IEnumerable<RideModel> models)
    {
        var (most, words) = (0.0, (string?)null);
        foreach (var model in models)
        {
            foreach (var (k, least) in new[] { limit.Front, limit.Rear }.Index())
            {
                var left = Left(model, k + (isBump ? 0 : 2));
                if (least is { } wanted && wanted - left > most)
                {
                    var axle = k == 0 ? "front" : "rear";
                    (most, words) = (wanted - left, $"{Numeral.Of(In.Millimetres.Of(left), 1)} mm at the {axle} under '{model.Load.Name}'");
                }
            }
        }

        return words;
    }

    private static double Left(RideModel model, int k)
    {
        var (travel, wheel) = (k < 2 ? model.Trim.BumpLeft : model.Trim.ReboundLeft, 2 * (k % 2));
        // As it is printed, so that none of "30.0 mm" is said to miss 30 mm.
        return Math.Round(Math.Min(Most, Math.Min(travel[wheel], travel[wheel + 1])), 4);
    }
}
