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
    private readonly Matrix<double> byPlace;
    private readonly Matrix<double> bySpeed;
    private readonly Matrix<double> road;
    private readonly Matrix<double> roadRate;

    private readonly int rates;

    private LinearRide(Matrix<double> byPlace, Matrix<double> bySpeed, Matrix<double> road, Matrix<double> roadRate, int rates) =>
        (this.byPlace, this.bySpeed, this.road, this.roadRate, this.rates) = (byPlace, bySpeed, road, roadRate, rates);

    /// <summary>Accelerations per place, 1/s².</summary>
    public Matrix<double> ByPlace => byPlace;

    /// <summary>Accelerations per speed, 1/s.</summary>
    public Matrix<double> BySpeed => bySpeed;

    /// <summary>Number of positions, 7 or 9.</summary>
    public int Count => byPlace.RowCount;

    public static LinearRide Of(RideModel model)
    {
        var (tangent, road) = (model.Tangent, model.Tangent.ByRoad);
        return new LinearRide(
            tangent.ByPlace,
            tangent.BySpeed,
            road.SubMatrix(0, tangent.Positions, 0, 4),
            road.SubMatrix(0, tangent.Positions, 4, 4),
            tangent.Rates);
    }

    /// <summary>The same car with other suspension terms.</summary>
    public LinearRide With(Matrix<double> places, Matrix<double> speeds) => new(places, speeds, road, roadRate, rates);

    /// <summary>Positions per metre of road under each wheel, shape (7 or 9, 4), at ω in rad/s, above 0.</summary>
    public Matrix<Complex> Answer(double omega)
    {
        var matrix = Matrix<Complex>.Build.Dense(
            Count, Count, (i, j) => new Complex(-byPlace[i, j] - (i == j && i < rates ? omega * omega : 0.0), -omega * bySpeed[i, j]));
        var drive = Matrix<Complex>.Build.Dense(Count, 4, (i, j) => new Complex(road[i, j], omega * roadRate[i, j]));
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
