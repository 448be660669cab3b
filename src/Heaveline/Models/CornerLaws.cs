namespace Heaveline.Models;

/// <summary>
/// The elements of the four corners as numbers for the kernel, in wheel travel S from the reference state. Every array holds front left, front right,
/// rear left, rear right. Straight pieces are hinge sums: f(x) = c₀ + c₁·x + Σ dⱼ·max(x, xⱼ).
/// </summary>
internal sealed partial class CornerLaws
{
    /// <summary>Spring: constant c₀, N, and slope c₁, N/m, in spring travel x.</summary>
    public double[] SpringConstant { get; } = new double[4];

    public double[] SpringSlope { get; } = new double[4];

    public Hinges SpringHinges { get; } = new();

    /// <summary>Gas spring A·p·(V/(V − A·x))ⁿ: force A·p in the reference state (0 without gas), A/V, n.</summary>
    public double[] GasForce { get; } = new double[4];

    public double[] GasAreaPerVolume { get; } = new double[4];

    public double[] GasExponent { get; } = [1.0, 1.0, 1.0, 1.0];

    /// <summary>Spring motion ratio r₀ + r₁·S + r₂·S².</summary>
    public double[][] SpringRatio { get; } = [new double[4], new double[4], new double[4]];

    /// <summary>Damper in damper velocity.</summary>
    public double[] DamperConstant { get; } = new double[4];

    public double[] DamperSlope { get; } = new double[4];

    public Hinges DamperHinges { get; } = new();

    public double[][] DamperRatio { get; } = [new double[4], new double[4], new double[4]];

    /// <summary>Static force of the dampers' gas charge, N at the damper.</summary>
    public double[] DamperGas { get; } = new double[4];

    /// <summary>Bump stops: Σ bⱼ·(max(S, cⱼ) − cⱼ).</summary>
    public Hinges BumpHinges { get; } = new();

    /// <summary>Rebound stops: Σ bⱼ·(min(S, cⱼ) − cⱼ).</summary>
    public Hinges ReboundHinges { get; } = new();

    /// <summary>Constant −Σ b·c of both stops, N.</summary>
    public double[] StopConstant { get; } = new double[4];

    /// <summary>
    /// Curved stops F = C·pᵉ past a clearance: clearance, C in N/mᵉ (0 when straight) and e, for bump and for rebound (clearance positive there).
    /// </summary>
    public double[][] CurvedBump { get; } = [new double[4], new double[4], [1.0, 1.0, 1.0, 1.0]];

    public double[][] CurvedRebound { get; } = [new double[4], new double[4], [1.0, 1.0, 1.0, 1.0]];

    /// <summary>Anti-roll bar rate k of F = k·(S − S of the other side), N/m.</summary>
    public double[] Bar { get; } = new double[4];

    public double[] Friction { get; } = new double[4];

    /// <summary>Travel over which friction rises to its full force, m.</summary>
    public double[] PreSliding { get; } = [1.0, 1.0, 1.0, 1.0];

    /// <summary>Square of the friction's speed scale in a random ride made straight, m²/s².</summary>
    public double[] FrictionSpeedSquared { get; } = [1.0, 1.0, 1.0, 1.0];

    /// <summary>
    /// Share (1 + base/track)/2 of a wheel's own travel in the travel at the element's place along a solid axle; 1 for independent wheels.
    /// </summary>
    public double[] SpringShare { get; } = [1.0, 1.0, 1.0, 1.0];

    public double[] DamperShare { get; } = [1.0, 1.0, 1.0, 1.0];

    public double[] StopShare { get; } = [1.0, 1.0, 1.0, 1.0];

    /// <summary>Elastic link: ρ, common rate, common damping and carried force.</summary>
    public double[] LinkRatio { get; } = new double[4];

    public double LinkRate { get; set; }

    /// <summary>Common damper of the elastic link, N s/m.</summary>
    public double LinkDamping { get; set; }

    public double LinkCarried { get; set; }

    /// <summary>Fluid link: displaced area per wheel travel, sign of the flow q (+ out of the front), base pressure (gauge).</summary>
    public double[] FluidArea { get; } = new double[4];

    public double[] FluidSign { get; } = [1.0, 1.0, -1.0, -1.0];

    public double FluidPressure { get; set; }

    /// <summary>1/C of a constant compliance (0 when gas), Pa/m³.</summary>
    public double[] FluidStiffness { get; } = new double[4];

    /// <summary>Gas of an accumulator: absolute base pressure (0 when constant), 1/V, n.</summary>
    public double[] FluidGasPressure { get; } = new double[4];

    public double[] FluidPerVolume { get; } = new double[4];

    public double[] FluidExponent { get; } = [1.0, 1.0, 1.0, 1.0];

    /// <summary>Gas of an open line: absolute base pressure (0 when constant), 1/V, n.</summary>
    public double LinkGasPressure { get; set; }

    public double LinkPerVolume { get; set; }

    public double LinkExponent { get; set; } = 1.0;

    /// <summary>Whether the line lets fluid through at all: then the trim has one pressure in it.</summary>
    public bool FluidFlows { get; set; }

    /// <summary>Whether the common spring of each side is a fluid line wide open: it can only push.</summary>
    public bool FluidOpen { get; set; }

    /// <summary>Inertance I of I·q̈ + R·q̇ = p_f − p_r, kg/m⁴; 0 for a line that only resists.</summary>
    public double FluidInertance { get; set; } = 1.0;

    /// <summary>Resistance R, Pa s/m³; above 0 without inertance.</summary>
    public double FluidResistance { get; set; }

    /// <summary>Whether the line's flow follows the pressures at once: R·q̇ = p_f − p_r, one state less on each side.</summary>
    public bool FluidResists => (Needs & Needs.ResistiveLine) != 0;

    /// <summary>What the pressures are divided by in the flow's own equation: I, or R without inertance.</summary>
    public double FluidScale => FluidResists ? FluidResistance : FluidInertance;

    /// <summary>Whether there is fluid between the axles at all.</summary>
    public bool HasFluid => FluidOpen || (Needs & Needs.FluidLink) != 0;

    /// <summary>Which parts of the kernel this car needs.</summary>
    public Needs Needs { get; set; }

    /// <summary>Travel past which the model does not reach, m: bump (positive) and rebound (negative).</summary>
    public double[] BumpLimit { get; } = Filled(double.PositiveInfinity);

    public double[] ReboundLimit { get; } = Filled(double.NegativeInfinity);

    /// <summary>Travel at which the stops touch, m: infinite without a stop.</summary>
    public double[] BumpTouch { get; } = Filled(double.PositiveInfinity);

    public double[] ReboundTouch { get; } = Filled(double.NegativeInfinity);

    /// <summary>Gauge pressure at corner i with a displaced volume in its accumulator, Pa.</summary>
    public double FluidPressureAt(int i, double volume) => FluidPressure + (FluidStiffness[i] * volume)
        + (FluidGasPressure[i] * (Math.Pow(1.0 / (1.0 - (FluidPerVolume[i] * volume)), FluidExponent[i]) - 1.0));

    /// <summary>1, or 0.5 for each half of a two-wheeler.</summary>
    private double PerHalf { get; init; } = 1.0;

    private static double[] Filled(double value) => [value, value, value, value];
}
