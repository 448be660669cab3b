using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Passes;

namespace Heaveline.Rides;

/// <summary>An element whose force bends, seen by a Gaussian motion: its mean force and the straight line that misses it least.</summary>
internal sealed class RandomElement
{
    private readonly Element element;
    private readonly double[] breaks;

    private RandomElement(RideNumbers numbers, Element element)
    {
        (this.element, breaks) = (element, element.Breaks());
        (Row, Trim) = (numbers.Row(element.Sight, RideSignal.Positions), numbers.AtTrim(element.Sight));
        (Place, Speed) = (RideSignal.Along(Row), RideSignal.Along(Row, 1));
        // The tangent leaves friction out.
        AtTrim = element.AtRest(Trim);
        Now = AtTrim;
    }

    /// <summary>The elements of a car whose forces bend. Straight ones stay in the tangent.</summary>
    public static List<RandomElement> Of(RideNumbers numbers) =>
        [.. numbers.Elements.All.Where(element => element.Bends).Select(element => new RandomElement(numbers, element))];

    /// <summary>What its travel is made of, per position from trim.</summary>
    public double[] Row { get; }

    /// <summary>Its travel at trim.</summary>
    public double Trim { get; }

    public RideSignal Place { get; }

    public RideSignal Speed { get; }

    /// <summary>What the tangent at trim counts for it.</summary>
    public ElementMean AtTrim { get; }

    /// <summary>Deviation of travel, m (of volume, m³).</summary>
    public double PlaceDeviation { get; set; }

    /// <summary>Deviation of its rate.</summary>
    public double SpeedDeviation { get; set; }

    public ElementMean Now { get; private set; }

    /// <summary>Takes the means at a mean position of the car.</summary>
    public void Update(ReadOnlySpan<double> mean) => Now = element.Mean(Trim + Shift(mean), PlaceDeviation, SpeedDeviation, breaks);

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
