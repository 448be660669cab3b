namespace Heaveline.Drives.Recovery;

/// <summary>A forecast beside what the drive after the change showed.</summary>
/// <param name="Said">The forecast change (–).</param>
/// <param name="Measured">The measured one (–).</param>
public sealed record ForecastScore(Bracket Said, Bracket Measured)
{
    /// <summary>Whether both agree: their difference is within both half-widths together, taken as those of independent errors.</summary>
    public bool IsKept => Math.Abs(Said.Value - Measured.Value)
        <= Math.Sqrt((Said.HalfWidth * Said.HalfWidth) + (Measured.HalfWidth * Measured.HalfWidth));
}
