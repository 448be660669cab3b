using System.Globalization;
using Heaveline.Measures.Comfort;
using Heaveline.Models;
using Heaveline.Rides;
using Heaveline.Roads;

namespace Heaveline.Bench;

/// <summary>
/// How many frequencies a design evaluation needs: worst error of the weighted root mean square over many
/// designs and speeds, against 512 frequencies.
/// </summary>
internal static class SpectrumAccuracy
{
    public static int Run()
    {
        var model = RideModel.Of(Saloon.Of());
        var road = RoadSpectrum.Of(RoadClass.C);
        SymmetricRide[] designs = [.. Enumerable.Range(0, 200).Select(k => Varied(SymmetricRide.From(model)!.Value, k))];
        double[] speeds = [30.0, 45.0, 60.0, 75.0, 90.0, 120.0];
        Console.WriteLine("| frequencies | worst error, seat, Wk | worst error, pitch, unweighted |");
        Console.WriteLine("|--:|--:|--:|");
        foreach (var points in new[] { 48, 64, 80, 96, 104, 112, 128 })
        {
            var (seat, pitch) = (0.0, 0.0);
            foreach (var speed in speeds.Select(v => v / 3.6))
            {
                RideSpectrum Seat(int n) =>
                    RideSpectrum.Vertical(model, road, speed, 1.3, 0.35, Weightings.Wk.Factor, SpectrumOptions.Default with { Points = n });
                RideSpectrum Pitch(int n) => RideSpectrum.Pitch(model, road, speed, null, SpectrumOptions.Default with { Points = n });
                seat = Math.Max(seat, Worst(Seat(points), Seat(512), designs));
                pitch = Math.Max(pitch, Worst(Pitch(points), Pitch(512), designs));
            }

            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {points} | {seat:E1} | {pitch:E1} |"));
        }

        return 0;
    }

    private static double Worst(RideSpectrum few, RideSpectrum many, SymmetricRide[] designs) =>
        designs.Max(d => Math.Abs((few.Rms(d) / many.Rms(d)) - 1.0));

    // Springs, dampers and bars between half and twice the saloon's, by numbers that fill the range evenly.
    private static SymmetricRide Varied(SymmetricRide ride, int k)
    {
        double Factor(double root) => Math.Pow(2.0, (2.0 * ((k * root) % 1.0)) - 1.0);
        return ride with
        {
            Front = ride.Front with
            {
                Rate = ride.Front.Rate * Factor(0.618),
                Damping = ride.Front.Damping * Factor(0.414),
                RollDamping = ride.Front.RollDamping * Factor(0.414),
                RollRate = ride.Front.RollRate * Factor(0.236),
            },
            Rear = ride.Rear with
            {
                Rate = ride.Rear.Rate * Factor(0.732),
                Damping = ride.Rear.Damping * Factor(0.303),
                RollDamping = ride.Rear.RollDamping * Factor(0.303),
                RollRate = ride.Rear.RollRate * Factor(0.162),
            },
        };
    }
}
