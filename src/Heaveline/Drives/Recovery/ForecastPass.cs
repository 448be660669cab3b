namespace Heaveline.Drives.Recovery;

/// <summary>What a change does at one event of a drive: the same road, the same speed.</summary>
/// <param name="Number">The event's number.</param>
/// <param name="Site">Its site.</param>
/// <param name="Speed">Its speed, m/s.</param>
/// <param name="Headline">RMS pitch of the first second of settling, rad.</param>
/// <param name="Hit">Greatest pitch acceleration of the hit, rad/s².</param>
public sealed record ForecastPass(int Number, string Site, double Speed, ForecastNumber Headline, ForecastNumber Hit);
