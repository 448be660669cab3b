using Heaveline.Quantities;

namespace Heaveline.Measures.Comfort;

/// <summary>What a motion sickness dose (vertical, weighted with Wf) means, ISO 2631-1 clause 9 and annex D.</summary>
public static class MotionSickness
{
    /// <summary>K_m of a mixed population of unadapted adults, 1/3 (% per m/s^1.5); read in a public script, not in the standard.</summary>
    public const double PerCentPerDose = 1.0 / 3.0;

    /// <summary>Shortest exposure the relation is given for, s: 20 min (recalled).</summary>
    public const double ShortestExposure = 1200.0;

    /// <summary>Longest exposure the relation is given for, s: 6 h (recalled).</summary>
    public const double LongestExposure = 21600.0;

    /// <summary>MSDV of a steady motion, a_w√T, m/s^1.5.</summary>
    /// <param name="rms">a_w with Wf, m/s².</param>
    /// <param name="duration">T, s.</param>
    public static double Dose(double rms, double duration) =>
        Checked.Within(rms, 0.0, double.MaxValue, "Give the r.m.s. weighted with Wf.", "WeightedRms")
        * Math.Sqrt(Checked.Within(duration, 0.0, double.MaxValue, "Give the exposure in seconds.", "Exposure"));

    /// <summary>Share of people who may vomit, %, at most 100.</summary>
    /// <param name="dose">MSDV, m/s^1.5.</param>
    /// <param name="exposure">Time exposed, s, 20 min to 6 h.</param>
    public static double ShareWhoMayVomit(double dose, double exposure)
    {
        _ = Checked.Within(exposure, ShortestExposure, LongestExposure, "The relation is given for 20 minutes to 6 hours only.", "Exposure");
        return Math.Min(100.0, PerCentPerDose * Checked.Within(dose, 0.0, double.MaxValue, "Give the motion sickness dose.", "MotionSicknessDose"));
    }
}
