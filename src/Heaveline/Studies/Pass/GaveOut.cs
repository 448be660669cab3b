using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What gave out in a crossing that does not run to its end.</summary>
internal static class GaveOut
{
    /// <summary>In words, a clause: what to do about a single pass is no advice where it is one of many.</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">Speed, m/s.</param>
    public static string In(RideModel model, Road road, double speed)
    {
        var pass = Pass.Of(model, road, speed);
        var end = pass.OutcomeSentence.IndexOf(". ", StringComparison.Ordinal);
        return end > 0 ? $"{char.ToLowerInvariant(pass.OutcomeSentence[0])}{pass.OutcomeSentence[1..end]}" : BrokenOff.Of(pass.Outcome);
    }
}
