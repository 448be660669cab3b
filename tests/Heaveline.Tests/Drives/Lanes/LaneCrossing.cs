namespace Heaveline.Tests.Drives.Lanes;

/// <summary>One crossing of a site as it was planted: the truth beside the log.</summary>
/// <param name="Lap">1 to 6.</param>
/// <param name="Site">Its name.</param>
/// <param name="Distance">Where the obstacle begins, m from the start.</param>
/// <param name="Time">When the front wheel centres stand there, s.</param>
/// <param name="Speed">Speed there, m/s.</param>
/// <param name="Spoilt">What is wrong with it; blank: nothing.</param>
internal sealed record LaneCrossing(int Lap, string Site, double Distance, double Time, double Speed, string Spoilt);
