using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>
/// Parts put into a car. The reference state stays the one that was weighed; how the car stands on its parts follows from the model, so nothing is
/// solved here: a search over many setups calls this often.
/// </summary>
public static class Fitting
{
    /// <summary>The car with parts in it, or the first reason why one does not fit.</summary>
    /// <param name="car">The car.</param>
    /// <param name="parts">The parts, one at most at a place.</param>
    /// <exception cref="RefusedValueException">Two parts at one place.</exception>
    public static FittingResult Of(Car car, IReadOnlyList<FittedPart> parts)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(parts);
        RefuseTwice(parts);
        var fitted = car;
        for (var i = 0; i < parts.Count; i++)
        {
            if (PartMount.Put(ref fitted, car, parts[i]) is { } misfit)
            {
                return misfit;
            }
        }

        for (var i = 0; i < parts.Count; i++)
        {
            if (FitChecks.First(fitted, car, parts, i) is { } misfit)
            {
                return misfit;
            }
        }

        return new Fitted(car, fitted, parts);
    }

    /// <summary>Every reason why parts do not fit: each part alone first, then those of the parts that can be put in together.</summary>
    /// <param name="car">The car.</param>
    /// <param name="parts">The parts, one at most at a place.</param>
    /// <exception cref="RefusedValueException">Two parts at one place.</exception>
    public static IReadOnlyList<Misfit> Misfits(Car car, IReadOnlyList<FittedPart> parts)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(parts);
        RefuseTwice(parts);
        var fitted = car;
        var (misfits, mounted) = (new List<Misfit>(), new List<FittedPart>());
        foreach (var part in parts)
        {
            if (PartMount.Put(ref fitted, car, part) is { } misfit)
            {
                misfits.Add(misfit);
            }
            else
            {
                mounted.Add(part);
            }
        }

        for (var i = 0; i < mounted.Count; i++)
        {
            misfits.AddRange(FitChecks.All(fitted, car, mounted, i));
        }

        return misfits;
    }

    private static void RefuseTwice(IReadOnlyList<FittedPart> parts)
    {
        var seen = 0;
        for (var i = 0; i < parts.Count; i++)
        {
            var bit = 1 << (int)parts[i].Place;
            if ((seen & bit) != 0)
            {
                throw new RefusedValueException(
                    "parts of one place", $"two at the {parts[i].Place.Name()}", "one at most", "Left and right get the same part.");
            }

            seen |= bit;
        }
    }
}
