using System.Globalization;
using System.Text;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Drives.Recovery;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>The twin of a car file in words, and as a variant of the file.</summary>
internal static class DriveTwinWords
{
    // Within this of the file a factor confirms it. Common practice, no source.
    private const double Confirmed = 0.10;

    /// <summary>What is said of it.</summary>
    /// <param name="twin">The twin; null: none was asked for.</param>
    /// <param name="beside">The car file.</param>
    public static IEnumerable<Sentence> Of(Twin? twin, CarBeside? beside)
    {
        if (twin is null || beside is null)
        {
            yield break;
        }

        if (!twin.IsBelieved)
        {
            yield return new Sentence("twin", twin.Refusal);
            yield break;
        }

        yield return new Sentence(
            "twin", Text($"If this file is of the car that was driven, '{beside.Car.Name}' under '{beside.Car.Load.Name}' moves as the drive did ")
                + $"with these factors (90 %): {string.Join("; ", twin.Factors.Where(f => f.IsSaid).Select(Said))}.");
        foreach (var factor in twin.Factors.Where(f => !f.IsSaid))
        {
            yield return new Sentence("twin-untold", $"{FirstLetter.Raised(Thing(factor.Scale))}: {factor.Reason}; nothing is said of it"
                + (factor.Scale == TwinScale.Friction && !factor.Reason.Contains("no friction", StringComparison.Ordinal)
                    ? ", and its doubt is in those of the dampers." : "."));
        }

        yield return new Sentence(
            "twin-proof",
            "No real drive of a car with known springs and dampers has tested the twin; on planted drives springs came out within 3 to 4 % and "
            + "dampers within 8 % where wheels stay on the road and friction is as the file says.");
    }

    /// <summary>The key of a thing, for machines.</summary>
    public static string Key(TwinScale scale) => scale switch
    {
        TwinScale.FrontSpring => "front-spring",
        TwinScale.RearSpring => "rear-spring",
        TwinScale.FrontDamper => "front-damper",
        TwinScale.RearDamper => "rear-damper",
        TwinScale.Friction => "friction",
        _ => "pitch-inertia",
    };

    /// <summary>The twin as a variant of the car file, to lie beside it: what is said of it, with its doubts.</summary>
    /// <param name="twin">The twin.</param>
    /// <param name="file">The car as it was read.</param>
    /// <param name="carFile">The file's name, without its folder.</param>
    public static byte[] Variant(Twin twin, LoadedCar file, string carFile)
    {
        var left = new List<string>();
        var text = new StringBuilder();
        var front = Axle(file.Car.Front, twin.Car.Front, twin, TwinScale.FrontSpring, TwinScale.FrontDamper, left, "front");
        var rear = Axle(file.Car.Rear, twin.Car.Rear, twin, TwinScale.RearSpring, TwinScale.RearDamper, left, "rear");
        var body = Body(file.Car, twin);
        text.Append("variant: as driven\n")
            .Append(CultureInfo.InvariantCulture, $"of: {carFile}\n")
            .Append("note: |\n  Scaled until its own passes gave what a drive gave.\n");
        foreach (var line in left)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {line}\n");
        }

        text.Append("change:\n");
        foreach (var (name, lines) in new[] { ("body", body), ("front", front), ("rear", rear) }.Where(group => group.Item2.Count > 0))
        {
            text.Append(CultureInfo.InvariantCulture, $"  {name}:\n");
            lines.ForEach(line => text.Append(CultureInfo.InvariantCulture, $"    {line}\n"));
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static List<string> Body(Car car, Twin twin)
    {
        var factor = twin.Of(TwinScale.PitchInertia)!;
        return !factor.IsSaid ? []
            : car.Body.PitchInertia is not null
                ? [Text($"pitch-inertia: {twin.Car.Body.PitchInertia!.Value.Si:F0} kg m2 ± {Doubt(factor)}")]
                : [Text($"pitch-index: {twin.Car.Body.DynamicIndex.Si:F3} ± {Doubt(factor)}")];
    }

    private static List<string> Axle(Axle was, Axle now, Twin twin, TwinScale spring, TwinScale damper, List<string> left, string name)
    {
        var lines = new List<string>();
        var (k, c) = (twin.Of(spring)!, twin.Of(damper)!);
        if (k.IsSaid)
        {
            lines.Add(now.Spring.Swap is null ? "spring:" : "bought-spring:");
            lines.AddRange(TwinSpringLines.Of(now.Spring, Doubt(k)).Select(line => $"  {line}"));
            if (was.Spring.Law is LinearSpring { Dimensions: not null })
            {
                left.Add($"The {name} springs are stated by their rate, in place of their sizes.");
            }
        }

        if (c.IsSaid && now.Damper.Law is TableDamper table)
        {
            lines.Add("damper:");
            lines.Add($"  bump: {Rows(table.Bump)}");
            lines.Add($"  rebound: {Rows(table.Rebound)}");
            lines.Add(Text($"  table-doubt: ± {Doubt(c)}"));
        }
        else if (c.IsSaid && now.Damper.Law is RatioDamper ratio)
        {
            // It is one of the spring's rate, which stays where its factor is not said.
            var said = ratio.Ratio.Si * (k.IsSaid ? 1.0 : Math.Sqrt(k.Factor.Value));
            lines.Add("damper:");
            lines.Add(Text($"  damping-ratio: {said:F3} ± {Doubt(c)}"));
        }

        return lines;
    }

    private static string Rows(ForceTable table) => "["
        + string.Join(
            ", ", table.At.Zip(table.Force, (v, f) => (v, f)).Where(row => row.v > 0.0).Select(row => Text($"[{row.v:G4} m/s, {row.f:F1} N]"))) + "]";

    private static string Doubt(TwinFactor factor) => Text($"{In.Percent.Of(factor.Factor.HalfWidth / factor.Factor.Value):F1} %");

    /// <summary>What is said of one factor: that the file holds, that it may, or by how much it does not.</summary>
    /// <param name="factor">The factor.</param>
    internal static string Said(TwinFactor factor)
    {
        var (low, value, high) = (factor.Factor.Low, factor.Factor.Value, factor.Factor.High);
        var (what, act, may) = factor.Scale is TwinScale.PitchInertia or TwinScale.Friction
            ? (Thing(factor.Scale), "is", "be") : (Thing(factor.Scale), "act", "act");
        var span = Text($"{Off(low)} to {Off(high)} %");
        if (factor.Factor.Holds(1.0))
        {
            // Only an interval that nobody would mind affirms anything.
            return low >= 1.0 - Confirmed && high <= 1.0 + Confirmed
                ? $"{what} {act} as the file says ({span})"
                : $"{what} may {may} as the file says: {span}";
        }

        var word = factor.Scale switch
        {
            TwinScale.FrontSpring or TwinScale.RearSpring => value > 1.0 ? "stiffer" : "softer",
            TwinScale.PitchInertia => value > 1.0 ? "larger" : "smaller",
            _ => value > 1.0 ? "stronger" : "weaker",
        };
        return Text($"{what} {act} {Off(1.0 + Math.Abs(value - 1.0))[1..]} % {word} than the file says ({span})");
    }

    // What is not nothing is not printed as nothing.
    private static string Off(double factor) => Math.Abs(factor - 1.0) is >= 0.005 or 0.0
        ? Text($"{In.Percent.Of(factor - 1.0):+0;−0;0}")
        : Text($"{In.Percent.Of(factor - 1.0):+0.0;−0.0;0}");

    private static string Thing(TwinScale scale) => scale switch
    {
        TwinScale.FrontSpring => "your front springs",
        TwinScale.RearSpring => "your rear springs",
        TwinScale.FrontDamper => "your front dampers",
        TwinScale.RearDamper => "your rear dampers",
        TwinScale.Friction => "friction",
        _ => "pitch inertia",
    };
}
