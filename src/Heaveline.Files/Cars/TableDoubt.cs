using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>
/// One doubt for a whole table of forces: "± 5 %". A rig's calibration puts all its forces off together, so that a table has one common factor
/// instead of a doubt for each row.
/// </summary>
internal static class TableDoubt
{
    private const string Words = "a per cent, such as ± 5 %";
    private const string Pattern = @"^\s*(±|\+/-|\+-|\+/−)?\s*([0-9]+(\.[0-9]+)?|\.[0-9]+)\s*%\s*$";

    /// <summary>The key for a group with one table or with the two of a damper.</summary>
    /// <param name="tables">What it covers, for the documentation.</param>
    public static Key<Amount<Plain>> KeyFor(string tables) => Key.Optional(
        "table-doubt",
        $"How far the forces of {tables} may be off, all together: the tolerance of the rig that measured them.",
        Kind.Phrase(Words, Pattern, Parse),
        "± 5 %");

    /// <summary>The factor 1 of a table with the doubt of its rig.</summary>
    /// <param name="f">The group that holds table and doubt.</param>
    /// <param name="key">The doubt's key.</param>
    /// <param name="rig">Name of the rig, whose other tables are off together with this one; null for none.</param>
    public static Amount<Plain> Factor(Fields f, Key<Amount<Plain>> key, string? rig) =>
        ProductDoubt.Under(f.Optional(key, new Amount<Plain>(1.0)), rig);

    /// <summary>Refuses the doubt of a table that is not given.</summary>
    /// <returns>Whether it was refused.</returns>
    public static bool RefuseWithout(Fields f, Key<Amount<Plain>> key, string instead)
    {
        if (f.Has(key))
        {
            f.Refuse(key, "is given without a table.", $"Write the doubt behind the value instead: {instead}.");
            return true;
        }

        return false;
    }

    private static (Amount<Plain> Value, QuantityRefusal? Refusal) Parse(string text)
    {
        var body = text.TrimStart();
        var mark = QuantityForm.DoubtMarks.FirstOrDefault(m => body.StartsWith(m, StringComparison.Ordinal)) ?? "";
        var from = text.Length - body.Length + mark.Length;
        var parsed = QuantityText.Parse<Plain>(text[from..]);
        if (parsed.Refusal is { } refusal)
        {
            return (default, refusal with { Start = from + refusal.Start });
        }

        var (part, unit) = (parsed.Amount.Si, parsed.Unit);
        return unit is null || parsed.Amount.Doubt.IsStated
            ? (default, Refuse($"\"{text}\" is not one per cent.", "Give the part by which all forces may be off together, with its sign: ± 5 %."))
            : part is >= 0.0 and < 1.0
                ? (new Amount<Plain>(1.0, new Doubt(part)), null)
                : (default, Refuse($"the doubt is {text[from..].Trim()}; it must be 0 % or above and below 100 %.", "A rig reads to 1 to 10 %."));

        QuantityRefusal Refuse(string message, string advice) => new(0, Math.Max(1, text.Length), message, advice);
    }
}
