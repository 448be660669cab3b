using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for one damper.</summary>
internal static class DamperWords
{
    private static readonly (string From, string To) Velocities = ("0 m/s", "6 m/s");
    private static readonly (string From, string To) Forces = ("0 N", "20000 N");

    /// <summary>The ratio to the wheel.</summary>
    public static readonly MotionWords Motion = new("damper");

    /// <summary>Bump table.</summary>
    public static readonly Key<ForceTable> Bump = Key.Optional(
        "bump",
        "Rows [velocity, force] of one damper while it closes, measured at the damper; zero need not be written.",
        new ForceTableKind<Velocity>(throughZero: true, Velocities, Forces),
        "[[0.1 m/s, 180 N], [0.3 m/s, 380 N]]");

    /// <summary>Rebound table.</summary>
    public static readonly Key<ForceTable> Rebound = Key.Optional(
        "rebound",
        "Rows [velocity, force] while it opens, as positive numbers.",
        new ForceTableKind<Velocity>(throughZero: true, Velocities, Forces),
        "[[0.1 m/s, 420 N], [0.3 m/s, 900 N]]");

    /// <summary>Doubt of both tables.</summary>
    public static readonly Key<Amount<Plain>> Doubt = TableDoubt.KeyFor("both tables");

    /// <summary>Name of the damper rig.</summary>
    public static readonly Key<string> Rig = Key.Optional(
        "rig", "Name of the rig that measured the tables: dampers from one rig are off together.", Kind.Text(), "club damper rig");

    /// <summary>Damping ratio.</summary>
    public static readonly Key<Amount<Plain>> DampingRatio = Key.Optional(
        "damping-ratio",
        "Share of critical damping at the wheel, instead of tables: of the spring's wheel rate and the sprung mass on the wheel of the empty car, "
        + "mean of bump and rebound. Takes no motion ratio.",
        Kind.Amount<Plain>(),
        "0.28 ± 15 %")
        .Usually("0.05", "1");

    /// <summary>Rebound over bump.</summary>
    public static readonly Key<Amount<Plain>> ReboundPerBump = Key.Optional(
        "rebound-per-bump", "With damping-ratio: rebound rate divided by bump rate; 1 when left out.", Kind.Amount<Plain>(), "2.5")
        .Usually("0.3", "8");

    /// <summary>Gas force.</summary>
    public static readonly Key<Amount<Force>> GasForce = Key.Optional(
        "gas-force", "Force of the gas charge on the rod in the state described; none when left out.", Kind.Amount<Force>(), "120 N")
        .Usually("0 N", "2000 N");

    /// <summary>Gas force on the scales.</summary>
    public static readonly Key<Amount<Force>> WeighedGasForce = Key.Optional(
        "weighed-gas-force",
        "Gas force of the dampers that stood there when the car was weighed, where these are others: more gas lifts the car. That of these when left "
        + "out.",
        Kind.Amount<Force>(),
        "120 N")
        .Usually("0 N", "2000 N");

    /// <summary>The group.</summary>
    public static readonly Shape<Damper> Shape = new Shape(
        "damper",
        "One damper of the axle, by tables or by a damping ratio, and how far it moves with the wheel.",
        [Bump, Rebound, Doubt, Rig, DampingRatio, ReboundPerBump, .. Motion.Keys, GasForce, WeighedGasForce])
        .WithOneOf(Bump, DampingRatio)
        .As(Make);

    private static Damper? Make(Fields f)
    {
        var gas = f.Optional(GasForce, default);
        if (f.OptionalValue(DampingRatio) is { } ratio)
        {
            Checked.Within(ratio, 0.0, 3.0, "Road cars lie near 0.2 to 0.4; a per cent needs its sign.", nameof(DampingRatio));
            if (f.Has(Rebound))
            {
                f.Refuse(Rebound, "is given beside damping-ratio.", "Give bump and rebound tables, or the damping ratio with rebound-per-bump.");
                return null;
            }

            if (TableDoubt.RefuseWithout(f, Doubt, $"{DampingRatio.Name}: {DampingRatio.Example}"))
            {
                return null;
            }

            if (f.Has(Rig))
            {
                f.Refuse(Rig, "is given beside damping-ratio, which no rig measured.", "Leave it out.");
                return null;
            }

            var law = new RatioDamper { Ratio = ratio, ReboundPerBump = f.Optional(ReboundPerBump, new Amount<Plain>(1.0)) };
            const string Bought = "; another damper, from a list of parts, needs bump and rebound in its place";
            return Motion.RefuseBeside(f, DampingRatio.Name, Bought) ? null : new Damper
            {
                Law = law, GasForce = gas, WeighedGasForce = f.OptionalValue(WeighedGasForce),
            };
        }

        if (!f.Has(Rebound))
        {
            f.Refuse("has bump but no rebound.", $"Add rebound: {Rebound.Example}.");
        }

        if (f.Has(ReboundPerBump))
        {
            f.Refuse(ReboundPerBump, "is given beside tables, which hold both sides.", "Leave it out.");
        }

        var motion = Motion.Read(f);
        var factor = TableDoubt.Factor(f, Doubt, f.Optional(Rig));
        return motion is null || !f.Has(Rebound) || f.Has(ReboundPerBump)
            ? null
            : new Damper
            {
                Law = new TableDamper(f.Required(Bump).Under(factor), f.Required(Rebound).Under(factor)),
                MotionRatio = motion,
                GasForce = gas,
                WeighedGasForce = f.OptionalValue(WeighedGasForce),
            };
    }
}
