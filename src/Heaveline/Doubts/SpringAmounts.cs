using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Doubts;

/// <summary>
/// Walks through the amounts of one spring: its rate, its table's factor, its gas, or the dimensions that its rate was worked out from.
/// </summary>
internal sealed class SpringAmounts(string end, IAmountVisitor visitor)
{
    public SpringLaw Through(SpringLaw law) => law switch
    {
        LinearSpring { Dimensions: { } dimensions } spring when Stated(dimensions) => Through(spring, dimensions),
        LinearSpring spring => spring with { Rate = visitor.Visit($"{end} spring rate", spring.Rate) },
        GasSpring gas => gas with
        {
            Area = visitor.Visit($"{end} gas spring area", gas.Area),
            Volume = visitor.Visit($"{end} gas spring volume", gas.Volume),
            Exponent = visitor.Visit($"{end} gas spring exponent", gas.Exponent),
        },
        TableSpring table => new TableSpring(visitor.Visit($"{end} spring table", table.Table)),
        _ => law,
    };

    /// <summary>A law beside one that was drawn: the drawn one itself, or one tuned away from it, which keeps its distance.</summary>
    /// <param name="law">The law.</param>
    /// <param name="from">The law that it was tuned away from.</param>
    /// <param name="drawn">That law as drawn.</param>
    public static SpringLaw Beside(SpringLaw law, SpringLaw from, SpringLaw drawn) => (law, from, drawn) switch
    {
        _ when law == from => drawn,
        (LinearSpring spring, LinearSpring before, LinearSpring after) =>
            spring with { Rate = spring.Rate with { Si = spring.Rate.Si * after.Rate.Si / before.Rate.Si } },
        (TableSpring spring, TableSpring before, TableSpring after) => new TableSpring(spring.Table.Under(
            spring.Table.Factor with { Si = spring.Table.Factor.Si * after.Table.Factor.Si / before.Table.Factor.Si })),
        _ => law,
    };

    // The rate's doubt is that of its dimensions, from which the stress follows too: both must move together. A rate that was tuned away from its
    // dimensions keeps its distance.
    private LinearSpring Through(LinearSpring spring, SpringDimensions dimensions)
    {
        var drawn = Through(dimensions);
        return drawn == dimensions
            ? spring
            : spring with { Dimensions = drawn, Rate = spring.Rate with { Si = spring.Rate.Si * drawn.Rate / dimensions.Rate } };
    }

    private SpringDimensions Through(SpringDimensions dimensions) => dimensions switch
    {
        CoilDimensions coil => coil with
        {
            Wire = visitor.Visit($"{end} coil's wire", coil.Wire),
            MeanDiameter = visitor.Visit($"{end} coil's mean diameter", coil.MeanDiameter),
            ActiveCoils = visitor.Visit($"{end} coil's active coils", coil.ActiveCoils),
            ShearModulus = visitor.Visit($"{end} coil's shear modulus", coil.ShearModulus),
        },
        LeafDimensions leaf => leaf with
        {
            Span = visitor.Visit($"{end} leaf's span", leaf.Span),
            Width = visitor.Visit($"{end} leaf's width", leaf.Width),
            Thickness = visitor.Visit($"{end} leaf's thickness", leaf.Thickness),
            Modulus = visitor.Visit($"{end} leaf's modulus", leaf.Modulus),
        },
        TorsionBarDimensions bar => bar with
        {
            Diameter = visitor.Visit($"{end} torsion bar's diameter", bar.Diameter),
            Length = visitor.Visit($"{end} torsion bar's length", bar.Length),
            Arm = visitor.Visit($"{end} torsion bar's arm", bar.Arm),
            ShearModulus = visitor.Visit($"{end} torsion bar's shear modulus", bar.ShearModulus),
        },
        _ => dimensions,
    };

    /// <summary>Whether any doubt is stated of a spring's law: of a bought one of that which it was bought by.</summary>
    public static bool IsStated(Spring spring)
    {
        var any = new AnyStated();
        new SpringAmounts("", any).Through(spring.Swap?.StandsBy ?? spring.Law);
        return any.Found;
    }

    private static bool Stated(SpringDimensions dimensions)
    {
        var any = new AnyStated();
        new SpringAmounts("", any).Through(dimensions);
        return any.Found;
    }

    private sealed class AnyStated : IAmountVisitor
    {
        public bool Found { get; private set; }

        public Amount<TDimension> Visit<TDimension>(string path, Amount<TDimension> amount)
            where TDimension : struct, IDimension
        {
            Found |= amount.Doubt.IsStated;
            return amount;
        }
    }
}
