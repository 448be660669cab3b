using Heaveline.Quantities;

namespace Heaveline.Files.Ties;

/// <summary>A tie's travel as it is written: "52 mm", or "at least 62 mm".</summary>
/// <param name="Travel">The travel, m.</param>
/// <param name="IsAtLeast">Whether it is the least.</param>
internal sealed record TieTravel(Amount<Length> Travel, bool IsAtLeast);
