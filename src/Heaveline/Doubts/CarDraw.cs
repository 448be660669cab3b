using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Doubts;

/// <summary>
/// One car that the measurements leave possible: every doubtful amount drawn from a normal distribution with half its half-width as standard
/// deviation. A draw that no car can have, or that cannot stand, is drawn again.
/// </summary>
public sealed record CarDraw
{
    /// <summary>The drawn car under the drawn load, at its trim.</summary>
    public required RideModel Model { get; init; }

    /// <summary>Error of each source in standard deviations.</summary>
    public required IReadOnlyList<double> Errors { get; init; }

    /// <summary>How many draws were refused before this one.</summary>
    public required int Refused { get; init; }

    /// <summary>Draw number <paramref name="index"/> of a seed: a function of both, whatever else is drawn.</summary>
    /// <exception cref="RefusedValueException">64 draws in a row were refused: the doubts are too wide for such a car.</exception>
    public static CarDraw Of(CarDoubts doubts, ulong seed, int index)
    {
        var draw = JointDraw.Of(JointDoubts.Of([doubts]), seed, index);
        return new CarDraw { Model = draw.Models[0], Errors = draw.Errors, Refused = draw.Refused };
    }

    /// <summary>Draw number <paramref name="index"/> of an empty car.</summary>
    public static CarDraw Of(Car car, ulong seed, int index) => Of(CarDoubts.Of(car), seed, index);
}
