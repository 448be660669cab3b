using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>A car with one setting turned, or two.</summary>
/// <param name="Turns">What is turned.</param>
internal sealed record CureTrial(ImmutableArray<CureTurn> Turns)
{
    /// <summary>Why it is turned no farther; null where it may be, up to the end of its slider, and for pairs.</summary>
    public CureEnd? End { get; init; }

    /// <summary>How far it is from the car as described, in steps.</summary>
    public int Effort => Turns.Sum(turn => turn.Step);

    /// <summary>Values by the settings' keys.</summary>
    public ImmutableSortedDictionary<string, double> Values =>
        Turns.ToImmutableSortedDictionary(turn => turn.Setting.Key, turn => turn.Value, StringComparer.Ordinal);

    /// <summary>What is done and how far ("softer front spring, from 24 N/mm to 18.5 N/mm").</summary>
    public string Words => string.Join(", with ", Turns.Select(turn => $"{turn.Act}, {turn.Reach}"));

    /// <summary>The car as it then is.</summary>
    /// <param name="described">The car as described.</param>
    /// <exception cref="RefusedValueException">No such car.</exception>
    public Car Of(Car described) => Settings.Apply(described, Values, inertiaGrows: false);

    /// <summary>The car as it then is, standing; null where there is no such car, or it cannot stand.</summary>
    /// <param name="described">The car as described.</param>
    /// <param name="load">Its load.</param>
    public RideModel? ModelOf(Car described, LoadState load)
    {
        try
        {
            return RideModel.Of(Of(described), load);
        }
        catch (RefusedValueException)
        {
            return null;
        }
    }
}
