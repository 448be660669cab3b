using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>A spring table that ends before what the spring carries: past its last row the last slope is taken on, which nobody measured.</summary>
public sealed record SpringTableEnd
{
    /// <summary>What to do about it.</summary>
    public const string Advice =
        "Press the spring further and add the rows, or check the table, the weighing and the motion ratio: what is computed there is a guess.";

    private const double Nothing = 1e-6;

    /// <summary>Which axle.</summary>
    public required AxleEnd End { get; init; }

    /// <summary>Under which load.</summary>
    public required string Load { get; init; }

    /// <summary>Force in the table's last row, N.</summary>
    public required double Last { get; init; }

    /// <summary>Force of the spring, N: standing, or at most in a pass.</summary>
    public required double Force { get; init; }

    /// <summary>How far the spring is pressed past the last row, m.</summary>
    public required double Past { get; init; }

    /// <summary>What is wrong while the car stands, without its subject and its full stop.</summary>
    public string WordsStanding => FormattableString.Invariant(
        $"ends at {Last:F0} N; standing under '{Load}' the spring carries {Force:F0} N, ")
        + FormattableString.Invariant($"{Quantities.In.Millimetres.Of(Past):F0} mm past the end: its last slope is taken on");

    /// <summary>What is wrong in a pass, a sentence.</summary>
    public string WordsInPass => FormattableString.Invariant(
        $"The {CornerNames.Of(End)} spring is pressed {Quantities.In.Millimetres.Of(Past):F0} mm past the end of its table ")
        + FormattableString.Invariant($"at {Last:F0} N, to {Force:F0} N: ")
        + "its last slope is taken on, which nobody measured.";

    /// <summary>Tables that end before the standing load, each axle once, under the load that goes farthest past.</summary>
    /// <param name="models">The car under its loads.</param>
    public static IReadOnlyList<SpringTableEnd> Standing(IEnumerable<RideModel> models)
    {
        ArgumentNullException.ThrowIfNull(models);
        return Farthest(models.SelectMany(model => Enumerable.Range(0, 4).Select(
            i => Of(model, i, model.Trim.Travel[i], model.Trim.Travel[i ^ 1]))));
    }

    /// <summary>Tables that end before the greatest compression of a pass, each axle once.</summary>
    /// <param name="pass">The pass.</param>
    public static IReadOnlyList<SpringTableEnd> In(Pass pass)
    {
        ArgumentNullException.ThrowIfNull(pass);
        return Farthest(
            from i in Enumerable.Range(0, 4)
            where pass.Model.Car.Axles[i / 2].Spring.Law is TableSpring
            let travels = pass.Travel(i).Zip(pass.Travel(i ^ 1))
            from end in travels.Select(t => Of(pass.Model, i, t.First, t.Second))
            select end);
    }

    private static IReadOnlyList<SpringTableEnd> Farthest(IEnumerable<SpringTableEnd?> all) =>
        [.. all.OfType<SpringTableEnd>().GroupBy(end => end.End).Select(ends => ends.MaxBy(end => end.Past)!).OrderBy(end => end.End)];

    private static SpringTableEnd? Of(RideModel model, int i, double own, double other)
    {
        var axle = model.Car.Axles[i / 2];
        if (axle.Spring.Law is not TableSpring { Table: var table })
        {
            return null;
        }

        var spring = model.Numbers.Elements.Springs[i];
        // What it carries in the reference state; a two-wheeler's corners are halves of one spring.
        var carried = model.Numbers.Elements.Stances[i]?.Carried ?? (spring.OwnForceAt(0.0) * (model.Rolls ? 1.0 : 2.0));
        var share = spring.Sight.Wheels[i];
        var at = table.AtForce(carried) + axle.Spring.MotionRatio.Travel((share * own) + ((1.0 - share) * other));
        var past = at - table.At[^1];
        return past > Nothing
            ? new SpringTableEnd
            {
                End = i < 2 ? AxleEnd.Front : AxleEnd.Rear,
                Load = model.Load.Name,
                Last = table.Force[^1],
                Force = table.ForceAt(at),
                Past = past,
            }
            : null;
    }
}
