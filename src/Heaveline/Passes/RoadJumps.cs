using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>The sharp steps of one track as the steps of a run meet them.</summary>
internal static class RoadJumps
{
    /// <summary>
    /// Steps next to a jump, with the heights on the near and the far side, counted from the track's first, and the far side's share.
    /// </summary>
    /// <param name="profile">The track.</param>
    /// <param name="behind">How far behind the front wheels the wheel runs, m.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="start">Time of the first step, s.</param>
    /// <param name="step">Step, s.</param>
    public static IEnumerable<(int At, double Near, double Far, double Share)> Of(
        Profile profile, double behind, double speed, double start, double step)
    {
        if (!profile.HasJump)
        {
            yield break;
        }

        foreach (var x in profile.Knots.ToArray().Distinct())
        {
            var (before, after) = (profile.Height(Math.BitDecrement(x)) - profile.StartHeight, profile.Height(x) - profile.StartHeight);
            if (before != after)
            {
                var at = (int)Math.Round((((x + behind) / speed) - start) / step);
                // The same arithmetic as where the heights are read: on which side the step stands must be the same.
                var past = (speed * (start + (at * step))) - behind - x;
                var share = Math.Clamp(0.5 - (Math.Abs(past) / (speed * step)), 0.0, 0.5);
                yield return past >= 0.0 ? (at, after, before, share) : (at, before, after, share);
            }
        }
    }
}
