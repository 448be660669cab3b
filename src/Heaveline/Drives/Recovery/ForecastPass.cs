namespace Heaveline.Drives.Recovery;

/// <summary>What a change does at one event of a drive: the same road, the same speed.</summary>
/// <param name="Number">The event's number.</param>
/// <param name="Site">Its site.</param>
/// <param name="Speed">Its speed, m/s.</param>
/// <param name="Headline">RMS pitch of the first second of settling, rad.</param>
/// <param name="Hit">Greatest pitch acceleration of the hit, rad/s².</param>
public sealed record ForecastPass(int Number, string Site, double Speed, ForecastNumber Headline, ForecastNumber Hit)
{
    /// <summary>How far its change of the headline is unsure by its road alone, as a half-width (–).</summary>
    public required double OfRoad { get; init; }

    /// <summary>
    /// Half-width of a pass's change by its road from which on it does not count in that of all of them (–): its road is told too badly.
    /// </summary>
    public const double Widest = 0.15;

    /// <summary>Whether its change of the headline is known well enough to count.</summary>
    public bool IsCounted => OfRoad <= Widest;
}
