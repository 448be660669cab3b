using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>A spring measured as pairs of travel and force. The reference state stands where the table gives the force it carries.</summary>
/// <param name="Table">Force (N) against compression (m), any zero.</param>
public sealed record TableSpring(ForceTable Table) : SpringLaw
{
    /// <inheritdoc/>
    public override double RateAtReference(double carried)
    {
        var at = Start(carried);
        var i = 0;
        while (i < Table.At.Count - 2 && at > Table.At[i + 1])
        {
            i++;
        }

        return Table.Slope(i);
    }

    /// <inheritdoc/>
    public override double ForceAt(double travel, double carried) => Table.ForceAt(Start(carried) + travel);

    /// <inheritdoc/>
    public override IReadOnlyList<double> KinksAt(double carried)
    {
        var start = Start(carried);
        return [.. Table.At.Skip(1).Take(Table.At.Count - 2).Select(x => x - start)];
    }

    internal override double? MeanRate => (Table.Force[^1] - Table.Force[0]) / (Table.At[^1] - Table.At[0]);

    // A table that is flat at its end may never reach the load: the spring cannot carry the car.
    private double Start(double carried)
    {
        var at = Table.AtForce(carried);
        return double.IsFinite(at)
            ? at
            : throw new RefusedValueException(
                "spring table",
                $"at most {Table.Force[^1]:G4} N",
                $"able to carry {carried:G4} N",
                "Measure the spring further, or check the weighing and the motion ratio.");
    }
}
