using Heaveline.Figures;

namespace Heaveline.Answers;

/// <summary>A figure with its caption.</summary>
public sealed record Illustration : Block
{
    /// <summary>The figure.</summary>
    public required Figure Figure { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>An illustration by this figure.</summary>
    public static Illustration Of(Figure figure) => new() { Figure = figure };
}
