using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What gave out in a crossing that does not run to its end.</summary>
internal static class GaveOut
{
    /// <summary>In words, a clause: what to do about a single pass is no advice where it is one of many.</summary>
    /// <param name="pass">The crossing.</param>
    public static string In(Pass pass)
    {
        var end = pass.OutcomeSentence.IndexOf(". ", StringComparison.Ordinal);
        return end > 0 ? $"{char.ToLowerInvariant(pass.OutcomeSentence[0])}{pass.OutcomeSentence[1..end]}" : BrokenOff.Of(pass.Outcome);
    }

    /// <summary>The same of a crossing that is driven for it; where a pass of its own is refused, that.</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="cancellation">Stops it.</param>
    public static string In(RideModel model, Road road, double speed, CancellationToken cancellation = default)
    {
        try
        {
            return In(Pass.Of(model, road, speed, cancellation: cancellation));
        }
        catch (NoAnswerException why)
        {
            return why.Reason.TrimEnd('.');
        }
    }
}
