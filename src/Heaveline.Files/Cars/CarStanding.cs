using Heaveline.Elements;
using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>
/// Whether a car that is sound in each of its values can stand, empty and under each of its loads. Each
/// refusal goes to the key that it is about.
/// </summary>
internal static class CarStanding
{
    /// <summary>
    /// The model in the state described and under every load state, or null with the refusals at the reader. A slip of the pen that explains why the
    /// car cannot stand is told instead of what the model stumbles over.
    /// </summary>
    public static IReadOnlyList<RideModel>? Check(Car car, Node root, Reader reader)
    {
        var standing = new List<RideModel>();
        try
        {
            standing.Add(RideModel.Of(car));
        }
        catch (RefusedValueException refused)
        {
            if (!SizeSlips.RefuseUnsprung(car, root, reader) && !FrequencySlips.RefuseLikely(car, root, reader))
            {
                Tell(refused, Blamed(car, root, refused), reader);
            }

            return null;
        }

        var before = reader.Count;
        CoilSlips.RefuseTooShort(standing[0], root, reader);
        foreach (var load in car.LoadStates)
        {
            try
            {
                standing.Add(RideModel.Of(car, load));
            }
            catch (RefusedValueException refused)
            {
                Tell(refused, Turned(root, refused.Value, reader) ?? root.At("loads", load.Name) ?? root, reader);
            }
        }

        return reader.Count == before ? standing : null;
    }

    private static void Tell(RefusedValueException refused, Node at, Reader reader) =>
        reader.Refuse(at.Place, $"{refused.What} is {refused.Value}; it must be {refused.Limit}.", refused.Advice);

    // The model names what it refuses in the words of the trade, an end of the car first.
    private static Node Blamed(Car car, Node root, RefusedValueException refused)
    {
        var what = refused.What;
        var end = what.Split(' ')[0];
        if (end is "front" or "rear")
        {
            var key = what[(end.Length + 1)..].Replace("axle roll inertia", "axle-inertia", StringComparison.Ordinal).Replace(' ', '-');
            return root.At(end, key) ?? root.At(end) ?? root;
        }

        return what switch
        {
            "spring table" => root.At(FrontBears(car) ? "rear" : "front", "spring", "table"),
            "line pressure" => root.At("interconnection", "fluid", "pressure"),
            "line inertance" or "line resistance" => root.At("interconnection", "fluid", "line"),
            "accumulators" or "accumulator" or "gas exponents" => root.At("interconnection", "fluid"),
            "suspension" => root.At("interconnection") ?? root.At("front", "spring"),
            "load state" => Bought(root, refused.Value) ?? root.At("weighing"),
            _ => root.At("weighing"),
        } ?? root;
    }

    // A car that stood on the scales falls over, or through its travel, by the springs that were bought for it.
    private static Node? Bought(Node root, string value)
    {
        string[] ends = value.Contains("rear", StringComparison.Ordinal) ? ["rear", "front"] : ["front", "rear"];
        return ends.Select(end => root.At(end, "bought-spring")).FirstOrDefault(node => node is not null);
    }

    // A load that a base bears runs out of travel by the springs of the variant over it, or of those that were bought.
    private static Node? Turned(Node root, string value, Reader reader)
    {
        if (!value.Contains(" mm of ", StringComparison.Ordinal))
        {
            return null;
        }

        var end = value.Contains("at the rear", StringComparison.Ordinal) ? "rear" : "front";
        var bought = root.At(end, "bought-spring");
        return OfVariant(bought, reader) ?? bought ?? OfVariant(root.At(end, "spring"), reader);
    }

    // The first value of a group that the file being read gives itself, over those of its bases.
    private static Node? OfVariant(Node? node, Reader reader) =>
        node is null ? null
        : node.Place.File == reader.Source.File ? node
        : node.Entries.Select(entry => OfVariant(entry.Value, reader)).FirstOrDefault(own => own is not null);

    // Which of two tables is too weak: the front one, unless it carries its wheel's sprung load.
    private static bool FrontBears(Car car)
    {
        var heaviest = Math.Max(car.Weighing.FrontLeft.Si, car.Weighing.FrontRight.Si) - (0.5 * car.Front.UnsprungMass.Si);
        return car.Front.Spring is not { Law: TableSpring { Table: var table }, MotionRatio: var ratio }
            || double.IsFinite(table.AtForce(heaviest * Gravity.Standard / ratio.AtReference.Si));
    }
}
