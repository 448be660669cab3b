using Heaveline.Modes;
using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>The wheel, or the two wheels of an axle, that a measure is of; of two the worse counts.</summary>
/// <param name="Key">Name for machines.</param>
/// <param name="Name">Name for people.</param>
/// <param name="HasSides">Whether it is of a car with left and right wheels.</param>
/// <param name="Corners">0 to 3: front left, front right, rear left, rear right; 0 and 2 of a two-wheeler.</param>
public sealed record WheelPlace(string Key, string Name, bool HasSides, IReadOnlyList<int> Corners)
{
    /// <summary>Both axles, front first: two wheels each, or a two-wheeler's one.</summary>
    public static IReadOnlyList<WheelPlace> Axles(bool hasSides) =>
        hasSides ? [new("front", "front wheels", true, [0, 1]), new("rear", "rear wheels", true, [2, 3])] : Each(false);

    /// <summary>Every wheel: four, or front and rear of a two-wheeler.</summary>
    public static IReadOnlyList<WheelPlace> Each(bool hasSides) => [.. (hasSides ? new[] { 0, 1, 2, 3 } : [0, 2]).Select(i => Of(i, hasSides))];

    /// <summary>One wheel.</summary>
    /// <param name="corner">0 to 3.</param>
    /// <param name="hasSides">Whether the car has left and right wheels.</param>
    public static WheelPlace Of(int corner, bool hasSides) =>
        new(CornerNames.Of(corner, hasSides).Replace(' ', '-'), CornerNames.Of(corner, hasSides), hasSides, [corner]);

    /// <summary>The worst of its wheels; not finite where one has no number.</summary>
    /// <param name="better">Which way is better.</param>
    /// <param name="of">The number of a corner.</param>
    internal NotedNumber Worst(Better better, Func<int, NotedNumber> of) =>
        better == Better.More ? NotedNumber.Least(Corners.Select(of)) : NotedNumber.Greatest(Corners.Select(of));
}
