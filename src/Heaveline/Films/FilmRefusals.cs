using System.Collections.Immutable;
using Heaveline.Drives.Identification;
using Heaveline.Quantities;

namespace Heaveline.Films;

/// <summary>Why films tell no car, or not all of it: by the condition of the fit.</summary>
internal sealed class FilmRefusals(SeenPass[] passes, FilmFit fit, ImmutableArray<CarEstimate> estimates, FilmFit? other)
{
    // Half-width of the ratio's interval above which both ends cannot be told apart.
    private const double Apart = 0.08;

    public List<CarRefusal> All()
    {
        var all = new List<CarRefusal>();
        // What the frames' own noise leaves over says nothing against the car.
        var noise = passes.Max(p => Math.Sqrt((p.BodyNoise * p.BodyNoise) + (p.WheelNoise * p.WheelNoise)));
        var (misfit, alike) = (Math.Sqrt(Math.Max(0.0, (fit.Misfit * fit.Misfit) - (noise * noise))), fit.Alike);
        if (misfit > FilmIdentification.MostMisfit || (alike > FilmIdentification.MostAlike && misfit > 0.5 * FilmIdentification.MostMisfit))
        {
            all.Add(new CarRefusal(
                RefusalKind.Misfit,
                $"The body does not move like one on springs and dampers under these wheels: {Left(misfit, alike)}. A car on its "
                    + "stops, a mark that slipped, a wheel that was lost or a car that braked does so.",
                "A slower pass, coasting, with marks that were looked at again."));
        }

        if (other is not null)
        {
            all.Add(new CarRefusal(
                RefusalKind.TwoAnswers,
                $"Two cars explain {Films} equally well: {Pair(fit)} and {Pair(other)}.",
                "Another pass at another speed."));
        }

        foreach (var e in estimates.Where(e => e.Reason == "no road car has it"))
        {
            all.Add(new CarRefusal(
                RefusalKind.Edge,
                $"The {Name(e.Number)} comes out as {Numeral.Of(e.Value, 2)}{Unit(e.Number)}, which no road car has: is the film played slower "
                    + "than it was taken, or the wheelbase another?",
                "The speed of the pass, or how many times slower it is played."));
        }

        var ratio = estimates.First(e => e.Number == CarNumber.FrequencyRatio);
        var half = 0.5 * Math.Log(ratio.High / ratio.Low);
        if (half > Apart)
        {
            var cycles = passes.Sum(p => p.Reach) * 0.5 * (estimates[0].Value + estimates[1].Value);
            all.Add(new CarRefusal(
                RefusalKind.NotLearned,
                $"{Films[..1].ToUpperInvariant()}{Films[1..]}, {Numeral.Of(cycles, 1)} cycles after the bump: the two ends cannot be told apart, "
                    + $"their ratio is open by ± {Numeral.Of(In.Percent.Of(half), 0)} %.",
                "Two more passes at other speeds, seen for longer after the bump."));
        }

        return all;
    }

    /// <summary>A number in words.</summary>
    public static string Name(CarNumber number) => number switch
    {
        CarNumber.FrontFrequency => "front frequency",
        CarNumber.RearFrequency => "rear frequency",
        CarNumber.FrequencyRatio => "ratio of rear to front frequency",
        CarNumber.FrontDamping => "front damping",
        CarNumber.RearDamping => "rear damping",
        _ => "dynamic index",
    };

    private static string Unit(CarNumber number) => number is CarNumber.FrontFrequency or CarNumber.RearFrequency ? $" {In.Hertz.Symbol}" : "";

    private static string Left(double misfit, double alike) => misfit > FilmIdentification.MostMisfit
        ? $"{Millimetres(misfit)} are left over"
        : $"the {Millimetres(misfit)} that are left over swing slowly, {Numeral.Of(alike, 0)} samples in a row alike";

    private string Films => passes.Length == 1 ? "one film" : $"{passes.Length} films";

    private static string Pair(FilmFit f) => $"front {Hertz(f.Mean[0])} with rear {Hertz(f.Mean[1])}";

    private static string Hertz(double log) => $"{Numeral.Of(Math.Exp(log), 2)} Hz";

    private static string Millimetres(double m) => $"{Numeral.Of(In.Millimetres.Of(m), 1)} mm";
}
