using Heaveline.Drives.Identification;

namespace Heaveline.Films;

/// <summary>What would tell more of a car than its films do.</summary>
/// <param name="Number">The number that is left open most.</param>
/// <param name="Passes">How many films more; 0: the same pass seen for longer.</param>
/// <param name="Speed">At which speed, m/s.</param>
/// <param name="Longer">Seen for so much longer, s.</param>
/// <param name="Now">Half-width of the number's 90 % interval now: of its logarithm, of the index as it is.</param>
/// <param name="Then">The same then.</param>
public sealed record FilmMore(CarNumber Number, int Passes, double Speed, double Longer, double Now, double Then);
