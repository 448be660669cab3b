namespace Heaveline.Studies;

/// <summary>What must be said beside what a comfort standard makes of a ride.</summary>
public static class RideWords
{
    /// <summary>That standard and trade see pitch differently.</summary>
    public const string Both = "The standard turns pitch down (We times 0.4 m/rad, 8.2.2 of ISO 2631-1); "
        + "the trade holds that people mind it most. Judge both rows, and the head's motion.";
}
