using Heaveline.Measures;
using Heaveline.Models;

namespace Heaveline.Tests.Doubts;

/// <summary>Measures of a car at rest by their keys.</summary>
internal static class AtRest
{
    /// <summary>One of them, side effects of every wheel among them.</summary>
    public static Measure<CarAtRest> Of(string key) =>
        RestCatalogue.All.Concat(SideEffectCatalogue.Of(WheelPlace.Each(hasSides: true))).First(m => m.Key == key);

    /// <summary>The side effects that a car has.</summary>
    public static IEnumerable<Measure<CarAtRest>> SideEffects(RideModel model)
    {
        var rest = new CarAtRest(model);
        return SideEffectCatalogue.Of(WheelPlace.Each(model.Rolls)).Where(m => double.IsFinite(m.Of(rest)));
    }
}
