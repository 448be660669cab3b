using Heaveline.Answers;
using Heaveline.Drives.Recovery;
using Heaveline.Measures;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>Speeds over the sites of a drive: where its car pitches most and least after the bump, and which its ratio suits.</summary>
public static class SiteSpeedTable
{
    // More sites do not stand side by side.
    private const int Most = 6;

    private static readonly Measure<SiteSpeed>[] All =
    [
        Of("from", "speeds looked at, from", s => s.Range.Slowest, "The slowest pass over the site less a fifth."),
        Of("to", "speeds looked at, to", s => s.Range.Fastest, "The fastest pass over the site and a quarter more."),
        Of("most", "pitches most afterwards at", s => s.IsMostWithin ? s.Most.Speed : double.NaN,
            "Speed at which pitch in the first second after the rear wheels have left the bump (RMS) is greatest, by the linear car of the drive "
            + "over the bump as the drive tells it; blank where it grows to an end of the speeds looked at."),
        Of("least", "pitches least afterwards at", s => s.IsLeastWithin ? s.Least.Speed : double.NaN,
            "The same where it is least; blank where it falls to an end."),
        Of("suited", "its ratio suits", s => s.Suited.Length > 0 ? s.Suited[0].Speed : double.NaN,
            "Speed at which no other frequency ratio about the same mean, damping ratios kept, gives less of that pitch."),
        Of("suited-low", "its ratio suits, from", s => s.Suited.Length > 0 ? s.Suited[0].Low : double.NaN,
            "Lower end of what holds that speed in nine cases of ten; blank where it may lie below the speeds looked at."),
        Of("suited-high", "its ratio suits, to", s => s.Suited.Length > 0 ? s.Suited[0].High : double.NaN,
            "Upper end of what holds that speed in nine cases of ten; blank where it may lie above the speeds looked at."),
    ];

    /// <summary>All that the table holds, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. All];

    /// <summary>The table; no rows without a site.</summary>
    /// <param name="speeds">The speeds.</param>
    public static FactTable Of(DriveSpeeds speeds)
    {
        ArgumentNullException.ThrowIfNull(speeds);
        SiteSpeed[] sites = [.. speeds.Sites.Take(Most)];
        var table = new FactTable("Speeds over the sites, of the linear car of this drive", [.. sites.Select(s => s.Site)]);
        return sites.Length == 0 ? table : table.Add(All, sites);
    }

    /// <summary>What is said of them.</summary>
    /// <param name="speeds">The speeds.</param>
    internal static IEnumerable<Sentence> Said(DriveSpeeds speeds)
    {
        foreach (var site in speeds.Sites)
        {
            yield return new Sentence($"speeds-{site.Site.Replace(' ', '-')}", Text($"Over {site.Site}, from {Speed(site.Range.Slowest)} km/h to ")
                + Text($"{Speed(site.Range.Fastest)} km/h, pitch in the first second after the rear wheels have left it (RMS, the linear car ")
                + Text($"of this drive) is most at {End(site.Most, site.IsMostWithin, site)}: {In.Degrees.Of(site.Pitch.Max()):F2}°, ")
                + Text($"and least at {End(site.Least, site.IsLeastWithin, site)}: {In.Degrees.Of(site.Pitch.Min()):F2}°. ")
                + Suits(site, speeds.Ratio));
        }

        yield return new Sentence("speeds-in-step", speeds.InStep is { } step
            ? Text($"The ends of this linear car fall into step after 0.7 cycles at {Speed(step.Speed)} km/h {Held(step)}, ")
                + "whatever the bump."
            : IsUnsure(speeds) ? Text($"Neither end of this linear car is surely the faster (frequency ratio {speeds.RatioRange.Low:F3} to ")
                + Text($"{speeds.RatioRange.High:F3}, 90 %): whether they fall into step, and at which speed, this drive does not tell.")
            : $"{speeds.Ends.WhyNot} That is of the linear car of this drive, whatever the bump.");
    }

    // Which end is the slower one decides whether they ever fall into step.
    private static bool IsUnsure(DriveSpeeds speeds) => speeds.Ends is { FrontPeriod: not null, RearPeriod: not null }
        && speeds.RatioRange.Low < 1.0 && speeds.RatioRange.High > 1.0;

    private static string Suits(SiteSpeed site, double ratio) => (site.Suited.Length, site.WantsLarger) switch
    {
        ( > 0, _) => Text($"Its frequency ratio of {ratio:F2} suits ")
            + string.Join(" and ", site.Suited.Select(s => Text($"{Speed(s.Speed)} km/h {Held(s)}")))
            + " there: no other about the same mean pitches less.",
        (_, true) => Text($"At all of these speeds a larger frequency ratio than its {ratio:F2} about the same mean would pitch less."),
        (_, false) => Text($"At all of these speeds a smaller frequency ratio than its {ratio:F2} about the same mean would pitch less."),
        _ => Text($"Its frequency ratio of {ratio:F2} suits none of these speeds: at some a larger, at the others a smaller would pitch less."),
    };

    private static string End(FoundSpeed found, bool isWithin, SiteSpeed site) => isWithin
        ? Text($"{Speed(found.Speed)} km/h {Held(found)}")
        : Text($"{Speed(found.Speed)} km/h, the {(found.Speed < 1.01 * site.Range.Slowest ? "slow" : "fast")} end");

    private static string Held(FoundSpeed found) => (double.IsFinite(found.Low), double.IsFinite(found.High)) switch
    {
        (true, true) => Text($"(90 %: {Speed(found.Low)} to {Speed(found.High)} km/h)"),
        (true, false) => Text($"(90 %: {Speed(found.Low)} km/h or more)"),
        (false, true) => Text($"(90 %: {Speed(found.High)} km/h or less)"),
        _ => "(no bounds are told)",
    };

    private static string Speed(double speed) => Text($"{In.KilometresPerHour.Of(speed):F0}");

    private static Measure<SiteSpeed> Of(string key, string label, Func<SiteSpeed, double> of, string says) =>
        new($"site-speed-{key}", label, In.KilometresPerHour, 0, of, says) { Page = "guide/which-car-moves-like-this.md" };
}
