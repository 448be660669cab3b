using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>Where the dipped beam's cut-off points: drop per distance (–), downwards positive. A nose-down body adds to it.</summary>
public sealed record HeadlampMeasures
{
    /// <summary>Drop at trim under the load (–).</summary>
    public required double AtTrim { get; init; }

    /// <summary>Least drop during the pass: the beam at its highest (–). Negative points above the horizon.</summary>
    public required double Highest { get; init; }

    /// <summary>Greatest drop during the pass (–).</summary>
    public required double Lowest { get; init; }

    /// <summary>Drop at trim, or null without a lamp.</summary>
    public static double? DropAtTrim(RideModel model) => model.Car.Headlamp is { } lamp ? lamp.Drop.Si + model.Trim.Pitch : null;

    /// <summary>The numbers of a pass, or null without a lamp.</summary>
    public static HeadlampMeasures? Of(Pass pass)
    {
        if (DropAtTrim(pass.Model) is not { } still)
        {
            return null;
        }

        var curves = new TracedCurves(pass);
        return new HeadlampMeasures { AtTrim = still, Highest = HighestOf(curves, still), Lowest = LowestOf(curves, still) };
    }

    /// <summary>Least drop; not a number without a lamp.</summary>
    internal static NotedNumber HighestOf(MeasuredCurves pass) =>
        pass.Model.Car.Headlamp is { } lamp ? HighestOf(pass, lamp.Drop.Si + pass.StandingPitch) : double.NaN;

    /// <summary>Greatest drop; not a number without a lamp.</summary>
    internal static NotedNumber LowestOf(MeasuredCurves pass) =>
        pass.Model.Car.Headlamp is { } lamp ? LowestOf(pass, lamp.Drop.Si + pass.StandingPitch) : double.NaN;

    private static NotedNumber HighestOf(MeasuredCurves pass, NotedNumber still) => still + pass.Range(PassSignal.Pitch, MeasuredCurves.Record).Least;

    private static NotedNumber LowestOf(MeasuredCurves pass, NotedNumber still) => still + pass.Range(PassSignal.Pitch, MeasuredCurves.Record).Most;
}
