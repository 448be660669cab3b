using Heaveline.Drives;
using Heaveline.Drives.Events;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What is said of instants that a user named and that no bump answers to.</summary>
internal static class InstantWords
{
    /// <summary>Objects to instants outside the log, by its ends.</summary>
    /// <param name="reader">What was given.</param>
    /// <param name="choice">The choice.</param>
    /// <param name="log">The log.</param>
    /// <param name="name">Which log, as " before"; blank where there is one.</param>
    /// <param name="instants">The instants, s since the log's start.</param>
    public static void Refuse(AskedReader reader, Choice choice, Log log, string name, IEnumerable<double> instants)
    {
        var times = (log.Of(SensorKind.Acceleration) ?? log.Of(SensorKind.AccelerationWithoutGravity))!.Times;
        var (first, last) = times.IsEmpty ? (0.0, 0.0) : (times.Min(), times.Max());
        foreach (var at in instants.Where(at => !(at >= first && at <= last)).Distinct())
        {
            reader.Object(
                choice.Name, $"{choice.Name} {Instant(at)}: outside the log{name}, which lasts from {Instant(first)} to {Instant(last)}.",
                isUsage: false);
        }
    }

    /// <summary>A sentence each of what was named and is not heeded.</summary>
    /// <param name="events">The bumps.</param>
    public static IEnumerable<string> Cautions(DriveEvents events)
    {
        var (unmet, written) = (events.Unmet, events.Settings.Written);
        var outside = $"outside what is read of the log, {Instant(unmet.Read.From)} to {Instant(unmet.Read.To)}";
        bool IsRead(double at) => at >= unmet.Read.From && at <= unmet.Read.To;
        string Stands(double at) => written.TryGetValue(at, out var place) ? $" ({place})" : "";
        foreach (var at in unmet.Added)
        {
            yield return $"A bump was added at {Instant(at)}{Stands(at)}, {outside}: it does not count.";
        }

        foreach (var at in unmet.Rejected)
        {
            yield return $"A bump was rejected at {Instant(at)}{Stands(at)}, {(IsRead(at) ? "where none is" : outside)}: nothing is left out for it.";
        }

        foreach (var (site, at) in unmet.Sites)
        {
            yield return $"No bump lies at {Instant(at)}{Stands(at)}{(IsRead(at) ? "" : ", " + outside)}: the name {site} is given to none there.";
        }

        foreach (var (site, by, at) in unmet.Renamed)
        {
            yield return $"The bump at {Instant(at)}{Stands(at)} is named {site} and {by}: {by} counts.";
        }
    }

    /// <summary>What is said where a wheelbase is given beside a car that has another; null where none is.</summary>
    /// <param name="settings">What is known of the drive.</param>
    /// <param name="car">The car file; null: none.</param>
    public static string? Wheelbase(EventSettings settings, LoadedCar? car) =>
        settings.Wheelbase is { } given && car?.Car.Wheelbase.Si is { } own && Math.Abs(given - own) > 0.0005
            ? Text($"The wheelbase that is given counts, {given:F3} m, not that of the car file, {own:F3} m.")
            : null;

    private static string Instant(double at) => Text($"{at:0.0#} s");
}
