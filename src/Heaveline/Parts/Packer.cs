using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Parts;

/// <summary>What bought springs of an axle ask of their seats for the car to stand as it was weighed.</summary>
/// <param name="Place">The springs' place.</param>
/// <param name="Part">The springs.</param>
/// <param name="Height">
/// Packing under each spring beyond what there is, m; below 0 the seat would have to be that much lower, which only an adjustable one can be. Null
/// where a length is not known.
/// </param>
/// <param name="KeepsHeight">Whether the car is taken to keep its height, because a length is not known.</param>
/// <param name="Longer">
/// Where the height is kept: how much longer without load than the spring weighed the new one must be, m; below 0 shorter. Of one that is as long the
/// difference must be packed. Null where a table does not begin where its spring is free.
/// </param>
public sealed record Packer(PartPlace Place, string Part, double? Height, bool KeepsHeight, double? Longer)
{
    // What a tape and a seat can tell.
    private const double Told = 0.5e-3;

    /// <summary>A sentence.</summary>
    public string Words => (KeepsHeight, Height, Longer) switch
    {
        (true, _, > Told and var longer) => $"{Kept} {Mm(longer)} mm longer without load than the spring weighed; of equal length it needs "
            + $"{Mm(longer)} mm of packing.",
        (true, _, < -Told and var shorter) => $"{Kept} {Mm(-shorter)} mm shorter without load than the spring weighed; of equal length it needs its "
            + $"seat {Mm(-shorter)} mm lower: only with adjustable seats.",
        (true, _, not null) => $"{Kept} as long without load as the spring weighed.",
        (true, _, null) => $"{Part}: a length is not known, and a table does not begin where its spring is free, so the height is kept and nobody "
            + "can say what that takes.",
        (_, > Told and var more, _) =>
            $"{Part} needs {Mm(more)} mm of packing under each for the {End} to stand as high as when the car was weighed.",
        (_, < -Told and var less, _) =>
            $"{Part} needs its seats {Mm(-less)} mm lower for the {End} to stand as high as when the car was weighed: only with adjustable seats.",
        (_, null, _) => $"{Part} is given by a table that does not begin at 0 N: what packing it needs cannot be said.",
        _ => $"{Part} stands as high as the spring that was weighed, within half a millimetre.",
    };

    private string Kept => $"{Part}: a length is not known, so the height is kept. That is right where it is";

    private string End => Place == PartPlace.FrontSpring ? "front" : "rear";

    private static string Mm(double length) => Text($"{In.Millimetres.Of(length):F0}");
}
