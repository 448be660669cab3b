using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>One tyre as a spring and damper that can only push.</summary>
public sealed record Tyre
{
    /// <summary>Vertical rate, N/m. Above zero.</summary>
    public required Amount<Stiffness> Rate { get; init => field = Checked.Positive(value, "A car tyre has about 150 to 300 N/mm."); }

    /// <summary>Vertical damping, N s/m. Zero or above.</summary>
    public Amount<DampingRate> Damping { get; init => field = Checked.NotNegative(value, "Give 0 N s/m when it is not known."); } = new(0.0);

    /// <summary>Length over which the road is averaged before it reaches the wheel, m. 0 to 0.5 m; typically 0.10–0.20 m.</summary>
    public Amount<Length> ContactLength
    {
        get;
        init => field = Checked.Within(value, 0.0, 0.5, "Print the tyre on paper and measure the length of the patch.");
    } = new(0.0);
}
