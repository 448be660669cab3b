using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>Readings of a weighing that are of no usual car: likely slips of the pen, not refused.</summary>
internal static class WeighingSlips
{
    // Common practice, no source.
    private const double Unlike = 2.0;
    private static readonly string[] Wheels = ["front left", "front right", "rear left", "rear right"];

    /// <summary>What looks like a slip, one sentence each.</summary>
    /// <param name="readings">The rounds.</param>
    /// <param name="wheelbase">Wheelbase.</param>
    /// <param name="tracks">The tracks with their ends.</param>
    public static IEnumerable<SheetNote> Of(
        IReadOnlyList<WheelReadings> readings, Amount<Length> wheelbase, IReadOnlyList<(string End, Amount<Length> Track)> tracks)
    {
        for (var left = 0; left < Wheels.Length; left += 2)
        {
            var odd = readings.Select(r => (Left: r.Values[left], Right: r.Values[left + 1]))
                .Where(r => Math.Max(r.Left, r.Right) > Unlike * Math.Min(r.Left, r.Right)).ToList();
            if (odd.Count > 0)
            {
                yield return new("unlike-neighbours", FormattableString.Invariant(
                    $"{FirstLetter.Raised(Wheels[left])} reads {odd[0].Left:0.#} kg and {Wheels[left + 1]} {odd[0].Right:0.#} kg: ")
                    + "the wheels of one axle seldom differ by more than two to one; likely a digit too many or readings out of order.");
            }
        }

        if (wheelbase.Si is < 1.0 or > 6.0)
        {
            yield return new("odd-wheelbase", FormattableString.Invariant(
                $"A wheelbase of {wheelbase.Si:G4} m is of no usual car (1 m to 6 m): check its unit; the centre of gravity goes with it."));
        }

        foreach (var (end, track) in tracks.Where(t => t.Track.Si is < 0.8 or > 3.0))
        {
            yield return new($"odd-{end}-track", FormattableString.Invariant(
                $"A {end} track of {track.Si:G4} m is of no usual car (0.8 m to 3 m): check its unit; the centre of gravity goes with it."));
        }
    }
}
