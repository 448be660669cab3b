using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What may be spent, as people write it: "600 EUR", or "600" where the lists say in what.</summary>
public static class ChooseBudget
{
    /// <summary>Reads an amount; its currency is blank where none is written.</summary>
    public static (Money Value, QuantityRefusal? Refusal) Read(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        string[] parts = [.. words.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
        return parts.Length is 1 or 2 && QuantityText.Number(parts[0]) is { } value and >= 0.0 and <= (double)decimal.MaxValue / 2.0
            ? (new Money((decimal)value, parts.Length == 2 ? parts[1] : ""), null)
            : (default, new QuantityRefusal(0, Math.Max(1, words.Length), $"budget '{words}' is no amount of money.", "Write it as 600 EUR."));
    }
}
