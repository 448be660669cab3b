using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Heaveline.Models;
using Heaveline.Passes;

namespace Heaveline.Rides;

/// <summary>
/// Linear equations of motion p̈ = A_p·p + A_v·ṗ + B_p·r + B_v·ṙ: the positions' answer to a wave of the road under each wheel by a full complex
/// solution, (−ω²·1 − iω·A_v − A_p)·p = (B_p + iω·B_v)·r. Every linear element is in it, whatever the car is made of.
/// A flow without inertance has no −ω².
/// </summary>
internal sealed class LinearRide
{
    private readonly double[] road;
    private readonly double[] roadRate;

    private LinearRide(double[] byPlace, double[] bySpeed, double[] road, double[] roadRate, int rates)
    {
        (ByPlace, BySpeed, this.road, this.roadRate, Rates) = (byPlace, bySpeed, road, roadRate, rates);
        Count = road.Length / 4;
    }

    /// <summary>A_p, accelerations per place, 1/s², row by row.</summary>
    public double[] ByPlace { get; }

    /// <summary>A_v, accelerations per speed, 1/s, row by row.</summary>
    public double[] BySpeed { get; }

    /// <summary>B_p, accelerations per road height, 1/s², row by row of four.</summary>
    public ReadOnlySpan<double> Road => road;

    /// <summary>B_v, accelerations per rate of the road, 1/s, row by row of four.</summary>
    public ReadOnlySpan<double> RoadRate => roadRate;

    /// <summary>Number of positions, 7 or 9.</summary>
    public int Count { get; }

    /// <summary>Number of positions that have a rate of their own, the first ones.</summary>
    public int Rates { get; }

    public static LinearRide Of(RideModel model)
    {
        var (tangent, road) = (model.Tangent, model.Tangent.ByRoad);
        var count = tangent.Positions;
        return new LinearRide(
            tangent.ByPlace.ToRowMajorArray(),
            tangent.BySpeed.ToRowMajorArray(),
            road.SubMatrix(0, count, 0, 4).ToRowMajorArray(),
            road.SubMatrix(0, count, 4, 4).ToRowMajorArray(),
            tangent.Rates);
    }

    /// <summary>The same car with other suspension terms.</summary>
    public LinearRide With(double[] places, double[] speeds) => new(places, speeds, road, roadRate, Rates);

    /// <summary>Positions per metre of road under each wheel, shape (7 or 9, 4), at ω in rad/s, above 0.</summary>
    public Matrix<Complex> Answer(double omega)
    {
        var matrix = Matrix<Complex>.Build.Dense(Count, Count, (i, j) => new Complex(
            -ByPlace[(i * Count) + j] - (i == j && i < Rates ? omega * omega : 0.0), -omega * BySpeed[(i * Count) + j]));
        var drive = Matrix<Complex>.Build.Dense(Count, 4, (i, j) => new Complex(road[(4 * i) + j], omega * roadRate[(4 * i) + j]));
        return matrix.LU().Solve(drive);
    }

    /// <summary>A signal in one column of positions and road heights under the wheels.</summary>
    public static Complex Read(RideSignal signal, double omega, ReadOnlySpan<Complex> positions, ReadOnlySpan<Complex> heights)
    {
        var sum = Complex.Zero;
        for (var i = 0; i < positions.Length; i++)
        {
            sum += new Complex(signal.Place[i] - (omega * omega * signal.Acceleration[i]), omega * signal.Speed[i]) * positions[i];
        }

        for (var i = 0; i < 4; i++)
        {
            sum += new Complex(signal.RoadPlace[i], omega * signal.RoadSpeed[i]) * heights[i];
        }

        return sum;
    }
}
