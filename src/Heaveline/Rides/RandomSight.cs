using Heaveline.Elements;
using Heaveline.Models;

namespace Heaveline.Rides;

/// <summary>What several elements of a car see alike, and those of them whose forces bend.</summary>
internal sealed class RandomSight
{
    private readonly List<RandomElement> elements = [];

    private RandomSight(double[] row, double[] pull) => (Row, Pull) = (row, pull);

    /// <summary>What it is made of, per position from trim.</summary>
    public double[] Row { get; }

    /// <summary>Accelerations per force of an element that sees it.</summary>
    public double[] Pull { get; }

    /// <summary>Deviation of what is seen, m (of volume, m³).</summary>
    public double Deviation { get; set; }

    /// <summary>Deviation of its rate.</summary>
    public double Speed { get; set; }

    /// <summary>Mean force, rate and damping of its elements, less what the tangent at trim has of them at the same mean.</summary>
    public ElementMean Excess { get; private set; }

    /// <summary>The sights of a car's bending elements. Straight ones stay in the tangent.</summary>
    public static List<RandomSight> Of(RideNumbers numbers)
    {
        var (sights, count) = (new List<RandomSight>(), numbers.Positions);
        var perForce = numbers.PerForce();
        for (var i = 7; i < count; i++)
        {
            // Of a flow without inertance its rate, which the resistance sets.
            perForce[i, i] = 1.0 / numbers.Elements.Line!.Scale;
        }

        foreach (var element in numbers.Elements.All.Where(element => element.Bends))
        {
            var row = numbers.Row(element.Sight, count);
            var sight = sights.Find(known => known.Row.AsSpan().SequenceEqual(row));
            if (sight is null)
            {
                var pull = new double[count];
                for (var i = 0; i < count; i++)
                {
                    for (var j = 0; j < count; j++)
                    {
                        pull[i] += perForce[i, j] * row[j];
                    }
                }

                sights.Add(sight = new RandomSight(row, pull));
            }

            sight.elements.Add(new RandomElement(numbers, element));
        }

        return sights;
    }

    /// <summary>Takes the means at a mean position of the car; false where an element has none.</summary>
    /// <param name="mean">Mean positions from trim.</param>
    /// <param name="again">Whether only they have changed since the last time.</param>
    public bool Update(ReadOnlySpan<double> mean, bool again)
    {
        var shift = 0.0;
        for (var i = 0; i < Row.Length; i++)
        {
            shift += Row[i] * mean[i];
        }

        var (force, rate, damping) = (0.0, 0.0, 0.0);
        for (var k = 0; k < elements.Count; k++)
        {
            var element = elements[k];
            element.Update(shift, Deviation, Speed, again);
            if (!element.IsSound)
            {
                return false;
            }

            var (now, trim) = (element.Now, element.AtTrim);
            force += now.Force - trim.Force - (trim.Rate * shift);
            rate += now.Rate - trim.Rate;
            damping += now.Damping - trim.Damping;
        }

        Excess = new(force, rate, damping);
        return true;
    }
}
