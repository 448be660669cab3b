namespace Heaveline.Web.Pages.Rides;

/// <summary>What a reader has chosen on the page of the road, as it stands in the address.</summary>
/// <param name="Car">Name of the car.</param>
/// <param name="Beside">Name of the car beside it; null for none.</param>
/// <param name="Load">Name of the load state; null: the car's first.</param>
/// <param name="Seat">Name of the seat; null: the car's first.</param>
/// <param name="Road">A class ("class-C"), "density" for one of the reader's own, or a road's name.</param>
/// <param name="Density">Density at 0.1 cycles/m of the reader's own road, 1e-6 m³, as typed.</param>
/// <param name="Waviness">Waviness of the random road (–), as typed.</param>
/// <param name="From">Slowest speed, km/h, as typed.</param>
/// <param name="To">Fastest speed, km/h, as typed.</param>
/// <param name="At">Speed of the spectra, km/h, as typed.</param>
public sealed record RideChoices(string? Car, string? Beside, string? Load, string? Seat, string? Road, string? Density, string? Waviness, string? From, string? To, string? At)
{
    public const string UsualRoad = "class-C";
    public const string OwnDensity = "density";
    public const string UsualDensity = "256";
    public const string UsualWaviness = "2";
    public const string UsualFrom = "20";
    public const string UsualTo = "120";
    public const string UsualAt = "80";

    /// <summary>The query of what is taken away, with its question mark.</summary>
    public string Query
    {
        get
        {
            (string Name, string? Value)[] parts =
            [
                ("car", Car), ("beside", Beside), ("load", Load), ("seat", Seat), ("road", Road), ("density", Density), ("waviness", Waviness), ("from", From), ("to", To), ("at", At),
            ];
            var said = parts.Where(p => !string.IsNullOrEmpty(p.Value)).Select(p => $"{p.Name}={Uri.EscapeDataString(p.Value!)}").ToList();
            return said.Count == 0 ? "" : "?" + string.Join('&', said);
        }
    }
}
