using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Rides;

/// <summary>
/// Answers of a car, made linear about its trim, to waves of the road at a constant speed: transfer functions from the height of either wheel track
/// to any signal, with the delay between the axles e^{−iωL/V} and the average over each tyre's contact length, sin(πnc)/(πnc). Dampers count with the
/// mean of both slopes at rest, friction is left out, wheels stay on the road (<see cref="Tangent"/>).
/// </summary>
public sealed class FrequencyResponse
{
    private readonly Matrix<Complex>[] answers;
    private readonly Complex[][] waves;

    private FrequencyResponse(RideModel model, double speed, double[] frequencies)
    {
        Model = model;
        Speed = speed;
        Frequencies = frequencies;
        var ride = LinearRide.Of(model);
        answers = [.. frequencies.Select(f => ride.Answer(2.0 * Math.PI * f))];
        waves = [.. frequencies.Select(f => WheelWaves.Of(model, f / speed))];
    }

    /// <summary>The car and its load.</summary>
    public RideModel Model { get; }

    /// <summary>Speed, m/s.</summary>
    public double Speed { get; }

    /// <summary>Frequencies, Hz.</summary>
    public IReadOnlyList<double> Frequencies { get; }

    /// <summary>The answers of a car at a speed.</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="speed">Speed, m/s. 0.5 to 120.</param>
    /// <param name="frequencies">Frequencies, Hz, each above 0, at most 1000.</param>
    /// <exception cref="RefusedValueException">Speed or a frequency out of range.</exception>
    public static FrequencyResponse Of(RideModel model, double speed, IReadOnlyList<double> frequencies)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(frequencies);
        _ = DrivingSpeed.Checked(speed);
        foreach (var f in frequencies)
        {
            if (!(f is > 0.0 and <= 1000.0))
            {
                throw new RefusedValueException(
                    "frequency", $"{f:G4} Hz", "above 0 and at most 1000 Hz", "Road vehicles are moved by their roads between about 0.2 and 40 Hz.");
            }
        }

        return new FrequencyResponse(model, speed, [.. frequencies]);
    }

    /// <summary>The answers of one signal.</summary>
    /// <param name="signal">The signal, of this car.</param>
    public RoadTransfer Of(RideSignal signal)
    {
        ArgumentNullException.ThrowIfNull(signal);
        return new RoadTransfer(signal, Frequencies, Side(signal, 0), Side(signal, 1));
    }

    // Waves under the front and the rear wheel of one side.
    private Complex[] Side(RideSignal signal, int side)
    {
        var values = new Complex[Frequencies.Count];
        var positions = new Complex[answers.Length > 0 ? answers[0].RowCount : 0];
        var heights = new Complex[4];
        for (var k = 0; k < values.Length; k++)
        {
            heights[side] = waves[k][side];
            heights[2 + side] = waves[k][2 + side];
            for (var i = 0; i < positions.Length; i++)
            {
                positions[i] = (answers[k][i, side] * heights[side]) + (answers[k][i, 2 + side] * heights[2 + side]);
            }

            values[k] = LinearRide.Read(signal, 2.0 * Math.PI * Frequencies[k], positions, heights);
        }

        return values;
    }
}
