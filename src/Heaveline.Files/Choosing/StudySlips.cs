using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Choosing;

/// <summary>Warns of what is likely a slip in a study. Limits: common practice, no source.</summary>
internal static class StudySlips
{
    // Nobody drives over a bump faster than a motorway allows, 130 km/h, or slower than one walks.
    private static readonly double Fastest = In.KilometresPerHour.ToSi(130.0);
    private static readonly double Slowest = In.KilometresPerHour.ToSi(3.0);

    // With fewer draws a share is counted and told as not sure yet.
    private const int FewDraws = 60;

    /// <summary>Adds the warnings of a study.</summary>
    public static void Check(Node root, Reader reader)
    {
        var seen = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (var use in root.At(StudyWords.Use.Name)?.Items ?? [])
        {
            foreach (var speed in use.At(StudyUseWords.Speeds.Name)?.Items ?? [])
            {
                if (Kind.Amount<Velocity>("km/h").TryRead(speed, new Reader(reader.Source), out var read) && (read.Si > Fastest || read.Si < Slowest))
                {
                    reader.Warn(
                        speed.Place,
                        FormattableString.Invariant($"{speed.Subject} is {speed.Text}: {In.KilometresPerHour.Of(read.Si):0.#} km/h."),
                        "Likely slip: m/s for km/h, or a digit too many.");
                }
            }

            var line = StudyUseWords.LineOf(use);
            var (what, place) = ($"{line.Name}; {string.Join(", ", line.Loads.Order(StringComparer.Ordinal))}", use.Entries[0].Value.Place);
            if (!seen.TryAdd(what, place))
            {
                reader.Warn(
                    place,
                    FormattableString.Invariant($"{line.Name} stands in line {seen[what].Line} already, for the same loads."),
                    "Write its speeds in one line, and its weight behind them.");
            }
        }

        if (root.At(StudyWords.Draws.Name) is { } draws && Kind.Count(1, int.MaxValue).TryRead(draws, new Reader(reader.Source), out var count)
            && count < FewDraws)
        {
            reader.Warn(
                draws.Place,
                FormattableString.Invariant($"draws is {count}: of fewer than {FewDraws} a limit in 9 of 10 cars is not sure yet."),
                "Right for a first look; 200 tell.");
        }
    }
}
