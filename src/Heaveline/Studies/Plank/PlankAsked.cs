using System.Collections.Immutable;
using Heaveline.Drives.Planning;
using Heaveline.Figures;

namespace Heaveline.Studies;

/// <summary>What is asked of the plank maker: which car, and which boards there are.</summary>
public sealed record PlankAsked
{
    /// <summary>The car under its load.</summary>
    public required LoadedCar Car { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>The boards, at least one.</summary>
    public ImmutableArray<BoardSize> Boards { get; init => field = Drawable.Some(value, "Say which boards there are."); } = BoardSize.Usual;
}
