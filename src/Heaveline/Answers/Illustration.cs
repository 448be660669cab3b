using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>A figure with its caption.</summary>
public sealed record Illustration : Block
{
    /// <summary>The figure.</summary>
    public required Figure Figure { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>An illustration by this figure.</summary>
    public static Illustration Of(Figure figure) => new() { Figure = figure };

    /// <inheritdoc/>
    public override Block In(ReaderUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return this with { Figure = Figure.In(units) };
    }
}
