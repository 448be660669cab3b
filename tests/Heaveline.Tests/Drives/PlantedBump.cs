namespace Heaveline.Tests.Drives;

/// <summary>A bump by its outline: round (an arc), versine, table (ramps of a metre) or plank (ramps of 5 cm).</summary>
internal sealed record PlantedBump(string Outline, double Height, double Length)
{
    public static PlantedBump Round { get; } = new("round", 0.075, 3.7);

    public static PlantedBump Versine { get; } = new("versine", 0.03, 0.8);

    public static PlantedBump Table { get; } = new("table", 0.075, 4.5);

    public static PlantedBump Plank { get; } = new("plank", 0.02, 0.3);

    public double At(double x)
    {
        var u = x / Length;
        var ramp = Outline == "table" ? 1.0 : 0.05;
        return Height * (Outline switch
        {
            "round" => 4.0 * u * (1.0 - u),
            "versine" => 0.5 - (0.5 * Math.Cos(2.0 * Math.PI * u)),
            _ => Math.Min(1.0, Math.Min(x, Length - x) / ramp),
        });
    }
}
