using MathNet.Numerics.LinearAlgebra;
using Heaveline.Models;

namespace Heaveline.Rides;

/// <summary>
/// Equivalent linearisation [Roberts and Spanos, Random Vibration and Statistical Linearization; E[F′] derived]: the linear car whose
/// every bending element misses the real one least under the motion that this linear car itself makes on the road, and the mean
/// position at which all mean forces balance.
/// </summary>
internal sealed class EquivalentRide
{
    private const int MostPasses = 200;
    private const double Tolerance = 1e-7;
    private const double MeanTolerance = 1e-12;

    private readonly LinearRide tangent;
    private readonly Matrix<double> perForce;
    private readonly List<RandomElement> elements;
    private readonly bool rolls;

    private EquivalentRide(RideModel model)
    {
        tangent = LinearRide.Of(model);
        perForce = PerForce(model.Numbers);
        elements = RandomElement.Of(model.Numbers);
        rolls = model.Rolls;
        Ride = tangent;
        Mean = new double[tangent.Count];
    }

    /// <summary>The linear car.</summary>
    public LinearRide Ride { get; private set; }

    /// <summary>Mean positions from trim.</summary>
    public double[] Mean { get; private set; }

    /// <summary>Number of passes.</summary>
    public int Passes { get; private set; }

    /// <summary>Whether it settled.</summary>
    public bool Converged { get; private set; }

    /// <summary>Whether anything bends at all.</summary>
    public bool Bends => elements.Count > 0;

    /// <summary>Largest relative change of a deviation in the last pass.</summary>
    public double LastChange { get; private set; }

    public static EquivalentRide Of(RideModel model, RandomLines road, CancellationToken cancellation)
    {
        var ride = new EquivalentRide(model);
        ride.Solve(road, cancellation);
        return ride;
    }

    /// <summary>The car as its tangent has it.</summary>
    public static EquivalentRide AtTrim(RideModel model) => new(model) { Converged = true };

    /// <summary>Goes on from here with other frequencies.</summary>
    public EquivalentRide Refined(RandomLines road, CancellationToken cancellation)
    {
        Solve(road, cancellation);
        return this;
    }

    private void Solve(RandomLines road, CancellationToken cancellation)
    {
        Converged = !Bends;
        var share = 1.0;
        var last = double.PositiveInfinity;
        var end = Passes + MostPasses;
        while (!Converged && Passes < end)
        {
            cancellation.ThrowIfCancellationRequested();
            var change = TakeDeviations(road.Under(Ride), share);
            if (!double.IsFinite(change) || !Balance())
            {
                LastChange = double.NaN;
                return;
            }

            // A step that grows is one that overshoots: friction stiffens as it moves less.
            share = change > 0.9 * last ? Math.Max(0.2, 0.7 * share) : share;
            last = change;
            LastChange = change;
            Passes++;
            Ride = tangent.With(
                tangent.ByPlace - (perForce * Sum(e => e.Now.Rate - e.AtTrim.Rate)),
                tangent.BySpeed - (perForce * Sum(e => e.Now.Damping - e.AtTrim.Damping)));
            Converged = change < Tolerance;
        }
    }

    // Moves every deviation a share of the way to what the linear car does now; returns the largest relative distance.
    private double TakeDeviations(RandomLines lines, double share)
    {
        var change = 0.0;
        foreach (var element in elements)
        {
            var (place, speed) = (Math.Sqrt(lines.MeanSquare(element.Place)), Math.Sqrt(lines.MeanSquare(element.Speed)));
            change = Math.Max(change, Math.Max(Relative(element.PlaceDeviation, place), Relative(element.SpeedDeviation, speed)));
            element.PlaceDeviation += share * (place - element.PlaceDeviation);
            element.SpeedDeviation += share * (speed - element.SpeedDeviation);
        }

        return change;
    }

    private static double Relative(double before, double now) => now > 0.0 ? Math.Abs(now - before) / now : double.IsFinite(now) ? 0.0 : double.NaN;

    // Newton's method on the mean accelerations: A_p·m − M⁻¹·Σ row·(E[F] − F_trim − k_trim·row·m) = 0.
    private bool Balance()
    {
        var mean = Vector<double>.Build.DenseOfArray(Mean);
        for (var turn = 0; turn < 50; turn++)
        {
            foreach (var element in elements)
            {
                element.Update(mean.ToArray());
            }

            var excess = Vector<double>.Build.Dense(tangent.Count);
            foreach (var element in elements)
            {
                var force = element.Now.Force - element.AtTrim.Force - (element.AtTrim.Rate * element.Shift(mean.ToArray()));
                excess += force * Vector<double>.Build.Dense(tangent.Count, i => element.Row[i]);
            }

            var miss = (tangent.ByPlace * mean) - (perForce * excess);
            var slope = tangent.ByPlace - (perForce * Sum(e => e.Now.Rate - e.AtTrim.Rate));
            if (!rolls)
            {
                // A two-wheeler has no roll equation.
                slope[2, 2] = -1.0;
            }

            var step = slope.Solve(-miss);
            if (!step.All(double.IsFinite))
            {
                return false;
            }

            mean += step;
            if (step.AbsoluteMaximum() < MeanTolerance)
            {
                Mean = mean.ToArray();
                foreach (var element in elements)
                {
                    element.Update(Mean);
                }

                return true;
            }
        }

        return false;
    }

    private Matrix<double> Sum(Func<RandomElement, double> weight)
    {
        var sum = Matrix<double>.Build.Dense(tangent.Count, tangent.Count);
        foreach (var element in elements)
        {
            var w = weight(element);
            for (var i = 0; i < tangent.Count; i++)
            {
                for (var j = 0; j < tangent.Count; j++)
                {
                    sum[i, j] += w * element.Row[i] * element.Row[j];
                }
            }
        }

        return sum;
    }

    // Accelerations per generalised force; of a flow without inertance its rate, which the resistance sets.
    private static Matrix<double> PerForce(RideNumbers n)
    {
        var per = n.PerForce();
        for (var i = 7; i < n.Positions; i++)
        {
            per[i, i] = 1.0 / n.Elements.Line!.Scale;
        }

        return per;
    }
}
