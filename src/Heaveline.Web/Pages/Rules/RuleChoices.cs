namespace Heaveline.Web.Pages.Rules;

/// <summary>What a reader has chosen on the page of the rule, as it stands in the address.</summary>
/// <param name="Car">Name of the car.</param>
/// <param name="Load">Name of the load state; null: the car's first.</param>
/// <param name="Road">Name of the road.</param>
/// <param name="Rule">Word of the rule.</param>
/// <param name="Measure">Word of the measure.</param>
/// <param name="From">Slowest speed, km/h, as typed.</param>
/// <param name="To">Fastest speed, km/h, as typed.</param>
internal sealed record RuleChoices(string? Car, string? Load, string? Road, string? Rule, string? Measure, string? From, string? To)
{
    public const string UsualRoad = "village-hump";
    public const string UsualRule = "ratio";
    public const string UsualMeasure = "settling";
    public const string UsualFrom = "20";
    public const string UsualTo = "120";

    /// <summary>The query of the page's address and of what is taken away from it, with its question mark; what is as usual is left out.</summary>
    public string Query
    {
        get
        {
            (string Name, string? Value)[] parts = [("car", Car), ("load", Load), ("road", Road), ("rule", Rule), ("measure", Measure), ("from", From), ("to", To)];
            var said = parts.Where(p => !string.IsNullOrEmpty(p.Value)).Select(p => $"{p.Name}={Uri.EscapeDataString(p.Value!)}").ToList();
            return said.Count == 0 ? "" : "?" + string.Join('&', said);
        }
    }
}
