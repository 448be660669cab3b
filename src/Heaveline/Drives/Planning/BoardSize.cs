using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Heaveline.Quantities;

namespace Heaveline.Drives.Planning;

/// <summary>A board as the building trade sells it, planed.</summary>
public sealed record BoardSize
{
    /// <summary>Thickness, m. 0.01 to 0.1.</summary>
    public required double Thickness { get; init => field = Within(value, 0.01, 0.1); }

    /// <summary>Width, m. 0.05 to 0.5; a bevel of 45° must fit on either edge.</summary>
    public required double Width { get; init => field = Within(value, 0.05, 0.5); }

    /// <summary>Length that it is bought in, m. 0.6 to 12.</summary>
    public double Length { get; init => field = Within(value, 0.6, 12.0); } = 4.2;

    /// <summary>What most yards stock. Common practice, no source.</summary>
    public static ImmutableArray<BoardSize> Usual { get; } =
    [
        new() { Thickness = 0.022, Width = 0.095 },
        new() { Thickness = 0.022, Width = 0.145 },
        new() { Thickness = 0.022, Width = 0.195 },
        new() { Thickness = 0.045, Width = 0.095 },
        new() { Thickness = 0.045, Width = 0.145 },
        new() { Thickness = 0.045, Width = 0.195 },
    ];

    /// <summary>"45x195 mm", in the millimetres that it is sold in, whatever units a reader reads: no amount that is turned.</summary>
    public string Words => FormattableString.Invariant($"{In.Millimetres.Of(Thickness):0.#}x{In.Millimetres.Of(Width):0.#} mm");

    /// <summary>"45x195x4200 mm".</summary>
    public string SoldWords =>
        FormattableString.Invariant($"{In.Millimetres.Of(Thickness):0.#}x{In.Millimetres.Of(Width):0.#}x{In.Millimetres.Of(Length):0.#} mm");

    // Refused in the millimetres that boards are sold in.
    private static double Within(double value, double low, double high, [CallerMemberName] string what = "") => value >= low && value <= high
        ? value
        : throw new RefusedValueException(
            $"{what.ToLowerInvariant()} of a board",
            FormattableString.Invariant($"{In.Millimetres.Of(value):0.###} mm"),
            FormattableString.Invariant($"between {In.Millimetres.Of(low):0.###} and {In.Millimetres.Of(high):0.###} mm"),
            "Write its thickness, then its width, then the length that it is sold in: 22 x 195 mm, or 22 x 195 x 4200 mm.")
        {
            Property = what,
            Least = low,
            Most = high,
        };
}
