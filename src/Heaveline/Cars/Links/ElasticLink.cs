using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// A common spring and damper of one side: energy ½·k·(ρ_f·s_f + ρ_r·s_r)², heat c·(ρ_f·ṡ_f + ρ_r·ṡ_r)² a second. Equal signs: stiff and damped in
/// heave, soft and free in pitch; opposite signs: the other way round.
/// </summary>
public sealed record ElasticLink : Interconnection
{
    /// <summary>Rate k of the common spring, N/m. 0 when only the common damper joins front and rear.</summary>
    public required Amount<Stiffness> Rate { get; init => field = Checked.NotNegative(value, "Give the rate of the common spring of one side."); }

    /// <summary>
    /// Damping c of the common damper beside it, N s/m at the common spring: forces ρ·c·(ρ_f·ṡ_f + ρ_r·ṡ_r) at the wheels. 0 without one.
    /// </summary>
    public Amount<DampingRate> Damping { get; init => field = Checked.NotNegative(value, "Give 0 N s/m when the link has no damper."); } = new(0.0);

    /// <summary>ρ_f, common-spring travel per front wheel travel (–). Not zero, −2 to 2.</summary>
    public Amount<Plain> FrontRatio { get; init => field = NotZero(value); } = new(1.0);

    /// <summary>ρ_r, common-spring travel per rear wheel travel (–).</summary>
    public Amount<Plain> RearRatio { get; init => field = NotZero(value); } = new(1.0);

    /// <summary>Force in the common spring in the reference state, N, compression positive. The corner springs carry the rest.</summary>
    public Amount<Force> Carried { get; init => field = Checked.Finite(value, "Give 0 N when the link is free in the reference state."); } = new(0.0);

    private static Amount<Plain> NotZero(Amount<Plain> ratio) =>
        Math.Abs(ratio.Si) is > 0.0 and <= 2.0
            ? ratio
            : throw new RefusedValueException(
                "link ratio", ratio.ToString(), "between −2 and 2 and not 0", "Leave the interconnection out when one end is not joined.");
}
