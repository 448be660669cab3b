using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What is driven over, as a line says it: "village-hump at 25 km/h, 40 km/h; loads driver; weight 2".</summary>
/// <param name="Name">An obstacle, or the class of a random road.</param>
/// <param name="Speeds">Speeds, in words.</param>
public sealed record ChooseUseLine(string Name, ImmutableArray<string> Speeds)
{
    private const string At = " at ";
    private const string Class = "class ";
    private const string Load = "loads ";
    private const string Weigh = "weight ";

    /// <summary>The largest weight; the least is as much smaller than one.</summary>
    public const double Heaviest = 1000.0;

    /// <summary>The loads with which it counts; empty for all that count.</summary>
    public ImmutableArray<string> Loads { get; init; } = [];

    /// <summary>What it weighs beside the other obstacles, in words; null for as much as any.</summary>
    public string? Weight { get; init; }

    /// <summary>The letter of a random road's class; null for an obstacle.</summary>
    public string? Letter => Name.StartsWith(Class, StringComparison.Ordinal) ? Name[Class.Length..].Trim() : null;

    /// <summary>Reads a line; null where it has no speeds, or more than it may.</summary>
    public static ChooseUseLine? Read(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        string[] parts = [.. words.Split(';').Select(part => part.Trim())];
        var at = parts[0].LastIndexOf(At, StringComparison.Ordinal);
        if (at < 0)
        {
            return null;
        }

        var line = new ChooseUseLine(parts[0][..at].Trim(), [.. CommaList.Of(parts[0][(at + At.Length)..])]);
        foreach (var part in parts.Skip(1))
        {
            if (part.StartsWith(Load, StringComparison.Ordinal) && line.Loads.IsEmpty)
            {
                line = line with { Loads = [.. CommaList.Of(part[Load.Length..])] };
            }
            else if (part.StartsWith(Weigh, StringComparison.Ordinal) && line.Weight is null)
            {
                line = line with { Weight = part[Weigh.Length..].Trim() };
            }
            else
            {
                return null;
            }
        }

        return line;
    }

    /// <summary>A weight in words as a number; null for none.</summary>
    public static double? WeightOf(string words) =>
        QuantityText.Number(words) is { } weight && weight is >= 1.0 / Heaviest and <= Heaviest ? weight : null;

    /// <summary>The class of a random road as a line names it.</summary>
    public static string NameOf(string letter) => Class + letter;

    /// <summary>The line.</summary>
    public override string ToString() => $"{Name}{At}{string.Join(", ", Speeds)}"
        + (Loads.IsEmpty ? "" : $"; {Load}{string.Join(", ", Loads)}")
        + (Weight is null ? "" : $"; {Weigh}{Weight}");
}
