using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>Heights of a profile at equal distances.</summary>
internal static class EqualSamples
{
    // Ends meet when the length is a whole number of spacings but for rounding.
    private const double Whole = 1e-6;

    /// <summary>Heights at the profile's start and every spacing after it, up to its end.</summary>
    internal static double[] Of(Profile profile, Amount<Length> spacing, CancellationToken stop = default)
    {
        var dx = Checked.Within(spacing, 1e-3, 10.0, "Give the distance between the heights to read.", "Spacing").Si;
        var heights = new double[(int)Math.Floor(((profile.End - profile.Start) / dx) + Whole) + 1];
        var reader = profile.Reader();
        for (var i = 0; i < heights.Length; i++)
        {
            Pause.At(i, stop);
            reader.At(Math.Min(profile.Start + (i * dx), profile.End), out heights[i], out _);
        }

        return heights;
    }
}
