using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>Warns of coil springs that bind, fall loose, contradict their own lengths, or whose height is only kept.</summary>
internal static class CoilSlips
{
    private static readonly string[] Ends = ["front", "rear"];

    /// <summary>Where the spring that acts on an axle is written; null when nowhere.</summary>
    /// <param name="root">The file.</param>
    /// <param name="axle">0 front, 1 rear.</param>
    public static Node? Spring(Node root, int axle) => root.At(Ends[axle], "bought-spring") ?? root.At(Ends[axle], "spring");

    /// <summary>Adds the warnings.</summary>
    /// <param name="model">The car empty.</param>
    /// <param name="root">The file.</param>
    /// <param name="reader">Receives them.</param>
    public static void Check(RideModel model, Node root, Reader reader)
    {
        for (var axle = 0; axle < 2; axle++)
        {
            if (CoilStanding.Of(model, (AxleEnd)axle) is not { } coil || Spring(root, axle) is not { } at)
            {
                continue;
            }

            if (CoilTrouble.Block(coil) is { } block)
            {
                var reached = at.At("block-length") is null ? "reaches its block length" : "is reached";
                var travel = FormattableString.Invariant($"{reached} at {In.Millimetres.Of(coil.Block!.Value):F0} mm of bump travel");
                Warn(reader, at.At("block-length") ?? at, $"{travel}{block.Where}.", block.Advice);
            }

            if (CoilTrouble.Loose(coil) is { } loose)
            {
                Warn(reader, at, $"{loose.Where}.", loose.Advice);
            }

            CheckLengths(model, axle, root, reader);
        }

        foreach (var effect in SwapEffect.Of(model).Where(effect => effect.KeepsHeight))
        {
            var bought = root.At(Ends[(int)effect.End], "bought-spring") ?? root;
            reader.WarnUnknown(
                bought.Place,
                $"{bought.Subject} does not say where it stands between its seats: the height is kept, as if the seats were moved for it.",
                "Give its free-length here, and under spring the free-length or the installed-length of the one that was weighed.");
        }
    }

    /// <summary>Refuses a free length that the weighing would press to nothing.</summary>
    /// <param name="model">The car empty.</param>
    /// <param name="root">The file.</param>
    /// <param name="reader">Receives the refusals.</param>
    public static void RefuseTooShort(RideModel model, Node root, Reader reader)
    {
        foreach (var end in new[] { AxleEnd.Front, AxleEnd.Rear })
        {
            var spring = model.Car.Axles[(int)end].Spring;
            var weighed = spring.Swap?.Before ?? spring;
            if (LengthsAgainstLoad.StandingByFree(model, end) is { } length && length <= 0.0)
            {
                var free = weighed.FreeLength!.Value.Si;
                var at = root.At(Ends[(int)end], "spring", "free-length") ?? root.At(Ends[(int)end], "spring") ?? root;
                reader.Refuse(
                    at.Place,
                    FormattableString.Invariant($"{at.Subject} is {In.Millimetres.Of(free):F0} mm; the weighing presses the spring together by ")
                    + FormattableString.Invariant($"{In.Millimetres.Of(free - length):F0} mm, so it must be longer than ")
                    + FormattableString.Invariant($"{In.Millimetres.Of(free - length):F0} mm."),
                    "Measure the spring out of the car, and check its rate, the motion ratio and the weighing.");
            }
        }
    }

    /// <summary>Warns of a variant that gives the spring that was weighed another law where one that was bought stands in its place.</summary>
    /// <param name="whole">The document with the variant's changes in it.</param>
    /// <param name="change">The changes.</param>
    /// <param name="reader">Receives the warnings.</param>
    public static void CheckChange(Node whole, Node change, Reader reader)
    {
        Key[] laws = [SpringWords.Rate, SpringWords.Table, SpringWords.Coil];
        foreach (var end in Ends.Where(end => whole.At(end, "bought-spring") is not null))
        {
            foreach (var law in laws.Select(key => change.At(end, "spring", key.Name)).OfType<Node>().Where(node => !node.IsEmpty))
            {
                Warn(
                    reader,
                    law,
                    "changes the spring that was weighed, not the bought one that stands in its place, whose height is reckoned from it.",
                    "To try another spring change it under bought-spring; right only where the spring that was weighed has been measured anew.");
            }
        }
    }

    // Free and installed length of the spring that was weighed say its force too.
    private static void CheckLengths(RideModel model, int axle, Node root, Reader reader)
    {
        if (LengthsAgainstLoad.Of(model, (AxleEnd)axle) is not { } said)
        {
            return;
        }

        if (Math.Abs(said.Installed - said.ByRate) > said.Doubt)
        {
            Warn(
                reader,
                root.At(Ends[axle], "spring", "installed-length") ?? root,
                FormattableString.Invariant($"is {In.Millimetres.Of(said.Installed):F0} mm, but {In.Millimetres.Of(said.ByRate):F0} mm by ")
                + FormattableString.Invariant($"free-length, rate and the weighing, where their doubts allow {In.Millimetres.Of(said.Doubt):F0} mm ")
                + "between them. The installed length is taken.",
                "Measure both lengths again, and check the rate, the motion ratio and the gas force of the damper.");
        }
    }

    private static void Warn(Reader reader, Node node, string message, string advice) =>
        reader.Warn(node.Place, $"{node.Subject} {message}", advice);
}
