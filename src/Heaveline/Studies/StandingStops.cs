using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Studies;

/// <summary>Ends of a car that stand on their bump stops: what is said of springs there is as much of stops.</summary>
internal static class StandingStops
{
    /// <summary>The ends of a standing car whose bump stops are pressed.</summary>
    public static IEnumerable<AxleEnd> Of(RideModel model) =>
        Enumerable.Range(0, 4).Where(i => model.Trim.BumpLeft[i] < 0.0).Select(i => (AxleEnd)(i / 2)).Distinct();

    /// <summary>The ends of a standing car whose rebound stops are stretched.</summary>
    public static IEnumerable<AxleEnd> Hanging(RideModel model) =>
        Enumerable.Range(0, 4).Where(i => model.Trim.ReboundLeft[i] < 0.0).Select(i => (AxleEnd)(i / 2)).Distinct();

    /// <summary>"the rear stands", "front and rear stand"; blank where none does.</summary>
    public static string Words(RideModel model) => Of(model).ToArray() switch
    {
        [var end] => $"the {CornerNames.Of(end)} stands",
        [_, _] => "front and rear stand",
        _ => "",
    };
}
