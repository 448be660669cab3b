using System.Collections.Immutable;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What is asked of a change's price: the car before it, and the cars after it.</summary>
public sealed record CostAsked
{
    /// <summary>The car before, then each car that it may become; one car alone shows where it stands.</summary>
    public required ImmutableArray<LoadedCar> Cars { get; init => field = Drawable.Some(value, "Give at least one car."); }

    /// <summary>How many cars are drawn where any of them states doubts, 10 to 1 000 000.</summary>
    public int Draws { get; init => field = (int)Checked.Within(value, 10.0, 1e6, "1000 tell a band to a few hundredths of itself."); } = 1000;

    /// <summary>Seed of the draws.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>That the cars were named the other way round, a sentence, see <see cref="BaseFirst"/>; blank where they were not.</summary>
    public string Turned { get; init => field = value ?? ""; } = "";
}
