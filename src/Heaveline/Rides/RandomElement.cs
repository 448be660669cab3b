using Heaveline.Passes;

namespace Heaveline.Rides;

/// <summary>An element whose force bends, seen by a Gaussian motion: its mean force and the straight line that misses it least.</summary>
internal sealed class RandomElement
{
    private readonly Func<double, double, double, ElementMean> law;

    /// <param name="row">What its travel is made of, per position from trim.</param>
    /// <param name="trim">Its travel at trim.</param>
    /// <param name="law">Means from mean travel, deviation of travel and deviation of its rate.</param>
    /// <param name="atTrim">What the tangent at trim counts for it; null: the law at rest.</param>
    public RandomElement(double[] row, double trim, Func<double, double, double, ElementMean> law, ElementMean? atTrim = null)
    {
        this.law = law;
        (Row, Trim) = (row, trim);
        (Place, Speed) = (RideSignal.Along(row), RideSignal.Along(row, 1));
        AtTrim = atTrim ?? law(trim, 0.0, 0.0);
        Now = AtTrim;
    }

    public double[] Row { get; }

    public double Trim { get; }

    public RideSignal Place { get; }

    public RideSignal Speed { get; }

    public ElementMean AtTrim { get; }

    /// <summary>Deviation of travel, m (of volume, m³).</summary>
    public double PlaceDeviation { get; set; }

    /// <summary>Deviation of its rate.</summary>
    public double SpeedDeviation { get; set; }

    public ElementMean Now { get; private set; }

    /// <summary>Takes the means at a mean position of the car.</summary>
    public void Update(ReadOnlySpan<double> mean) => Now = law(Trim + Shift(mean), PlaceDeviation, SpeedDeviation);

    /// <summary>Mean travel from trim.</summary>
    public double Shift(ReadOnlySpan<double> mean)
    {
        var sum = 0.0;
        for (var i = 0; i < mean.Length; i++)
        {
            sum += Row[i] * mean[i];
        }

        return sum;
    }
}
