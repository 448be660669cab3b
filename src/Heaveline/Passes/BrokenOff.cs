using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Passes;

/// <summary>That a crossing broke off, in words: over what, how fast, under which load, where, what gave out, and what to do.</summary>
public static class BrokenOff
{
    /// <summary>What gave out and where, without a full stop ("with the front wheels 1.8 m past where the obstacle begins, the body turned past
    /// 20°").</summary>
    /// <param name="pass">A pass that did not run to its end.</param>
    public static string Where(Pass pass)
    {
        ArgumentNullException.ThrowIfNull(pass);
        var wheels = pass.Model.Rolls ? "wheels" : "wheel";
        // From the sample that is out of range: the ones before it are good.
        var along = pass.Speed * (pass.Start + (pass.Count * pass.SampleStep)) - (pass.Road.EventStart ?? 0.0);
        var from = pass.Road.Event is null ? "the road" : "the obstacle";
        return Text($"with the front {wheels} {Math.Abs(along):F2} m {(along < 0.0 ? "before" : "past")} where {from} begins, ")
            + Of(pass.Outcome);
    }

    /// <summary>All of it, as sentences, the finding first and what to do last.</summary>
    /// <param name="pass">A pass that did not run to its end.</param>
    public static string Words(Pass pass)
    {
        ArgumentNullException.ThrowIfNull(pass);
        return $"{Finding(pass)} {pass.OutcomeSentence}";
    }

    /// <summary>The finding alone: what does not get across what, and where it ends.</summary>
    /// <param name="pass">A pass that did not run to its end.</param>
    internal static string Finding(Pass pass) =>
        Text($"{pass.Model.Car.Name}, {pass.Model.Load.Name}, does not get across {pass.RoadCaption}, at ")
            + Text($"{In.KilometresPerHour.Of(pass.Speed):0.#} km/h: {Where(pass)}.");

    /// <summary>What gave out, a clause without its full stop ("the body turned past 20°").</summary>
    /// <param name="outcome">How the pass ended; null where there was none.</param>
    internal static string Of(PassOutcome? outcome) => outcome switch
    {
        PassOutcome.AngleOutOfRange => "the body turned past 20°",
        PassOutcome.LineEmptied => "the pressure in the line fell to zero",
        PassOutcome.Diverged => "the numbers grew without bound",
        PassOutcome.TravelOutOfRange => "a wheel ran past the end of its travel",
        _ => "the measure has no value there",
    };
}
