using System.Text.Json.Nodes;
using Heaveline.Files.Forms;
using Heaveline.Quantities;

namespace Heaveline.Files.Yaml;

/// <summary>An amount as <see cref="QuantityText"/> reads it.</summary>
/// <param name="likelyUnit">The likely unit, in which a number without unit is refused by example.</param>
internal sealed class AmountKind<TDimension>(string likelyUnit) : Kind<Amount<TDimension>>
    where TDimension : struct, IDimension
{
    // A comma before three digits may mark thousands, unless nothing but a zero stands before it.
    private const string Number = @"[-+−]?(0,[0-9]+|[0-9]+(\.[0-9]+|,([0-9]{1,2}|[0-9]{4,}))?|\.[0-9]+)([eE][-+]?[0-9]+)?";
    private static readonly bool IsPlain = TDimension.Exponents == default;

    /// <inheritdoc/>
    public override string Words =>
        IsPlain ? TDimension.Name : (TDimension.Name[0] is 'a' or 'e' or 'i' or 'o' or 'u' ? "an " : "a ") + TDimension.Name + " with its unit";

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, out Amount<TDimension> value)
    {
        value = default;
        if (!reader.Is(node, NodeKind.Scalar, Words))
        {
            return false;
        }

        var parsed = QuantityText.Parse<TDimension>(node.Text, likelyUnit);
        value = parsed.Amount;
        return parsed.Refusal is not { } refusal
            || reader.Fail(node.PlaceOf(refusal.Start, refusal.Length), $"{node.Subject}: {refusal.Message}", refusal.Advice, out value);
    }

    /// <inheritdoc/>
    internal override ValueLimit Restate(RefusedValueException refused, string typed)
    {
        var limit = ValueLimit.Of(refused);
        return QuantityText.Parse<TDimension>(typed).Unit is { } unit && (refused is { Least: 0.0, Most: null } || !IsDecimal(unit))
            ? limit with { Words = refused.LimitIn(unit) }
            : limit;
    }

    // Millimetres and metres are one range to a reader; per cent, degrees and inches are not those of a plain number, radians and metres.
    private static bool IsDecimal(Unit unit) => unit.Symbol != "%" && Math.Log10(unit.Factor) % 1.0 == 0.0;

    /// <inheritdoc/>
    internal override IReadOnlyList<string> Probes => [$"-1e9 {TDimension.Usual}".TrimEnd(), $"1e9 {TDimension.Usual}".TrimEnd()];

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) =>
        field with { Kind = IsPlain ? FieldKind.Number : FieldKind.Quantity, Quantity = QuantityForm<TDimension>.Only };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions)
    {
        // Loose where the reader is strict: an editor should mark a missing unit, the reader says the rest.
        var text = new JsonObject
        {
            ["type"] = "string",
            ["pattern"] = IsPlain
                ? $@"^{Number}\s*%?(\s*(±|\+/-|\+-|\+/−)\s*{Number}\s*%?)?$"
                : $@"^{Number}\s*(1\s*/|[^0-9\s,._/]|/\s*[^0-9\s]).*$",
            ["description"] = $"{FirstLetter.Raised(Words)}; units that fit: {string.Join(", ", Units.Fitting<TDimension>())}. "
                + "A doubt may follow: ± 5 %.",
        };
        return IsPlain ? new JsonObject { ["anyOf"] = new JsonArray(new JsonObject { ["type"] = "number" }, text) } : text;
    }
}
