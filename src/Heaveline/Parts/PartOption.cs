using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>A part as it is set: what one can choose at a place. Made by the part, which works out once what the car gets.</summary>
public sealed record PartOption
{
    internal PartOption(Part part) => Part = part;

    /// <summary>The part.</summary>
    public Part Part { get; }

    /// <summary>The damper's click; null where nothing clicks.</summary>
    public int? Click { get; internal init; }

    /// <summary>The bar's hole; null where there is one.</summary>
    public string? Hole { get; internal init; }

    /// <summary>What is cut off the stop, m; null where nothing is.</summary>
    public Amount<Length>? Cut { get; internal init; }

    /// <summary>The part and how it is set ("Wren W3 at click 6").</summary>
    public string Name => (Click, Hole, Cut) switch
    {
        ({ } click, _, _) => InvariantText.Text($"{Part.Name} at click {click}"),
        (_, { } hole, _) => $"{Part.Name} at the {hole} hole",
        (_, _, { } cut) => InvariantText.Text($"{Part.Name} cut by {In.Millimetres.Of(cut.Si):0.#} mm"),
        _ => Part.Name,
    };

    /// <summary>Price of one; null when nobody said.</summary>
    public Money? Price => Part.Price;

    internal Spring? Spring { get; init; }

    internal TableDamper? Damping { get; init; }

    internal Amount<Force>? GasForce { get; init; }

    internal Amount<Stiffness>? BarRate { get; init; }

    internal Tyre? Tyre { get; init; }

    internal Interconnection? Link { get; init; }
}
