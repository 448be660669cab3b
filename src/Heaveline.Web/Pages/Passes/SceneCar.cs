using System.Text.Json.Nodes;
using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Figures.Silhouettes;
using Heaveline.Models;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// A vehicle for the page's moving picture: its silhouette in the state described and whoever is aboard, as data. Places in m, x forward from the
/// rear axle, z up from the road; lines as path text in cm.
/// </summary>
internal static class SceneCar
{
    /// <summary>Outline, glass, wheels, towers, people, luggage, lamp, travel until the stops.</summary>
    public static JsonObject Of(RideModel model)
    {
        var car = model.Car;
        var drawn = Silhouette.Of(car);
        var (m, aboard) = (drawn.Measures, Aboard.Of(car, model.Load));
        var isOpen = drawn.IsOpen;
        return new JsonObject
        {
            ["wheelbase"] = Short(m.Wheelbase),
            ["radius"] = Short(m.WheelRadius),
            ["sill"] = Short(m.Sill),
            ["arch"] = Short(drawn.ArchRadius),
            ["front"] = Short(Math.Max(m.Nose, m.Wheelbase + m.WheelRadius)),
            ["rear"] = Short(Math.Min(m.Rump, -m.WheelRadius)),
            ["top"] = Short(Math.Max(m.Height, m.Heads.Select(head => head.Z + SeatedPerson.HelmetRadius).DefaultIfEmpty(0.0).Max())),
            ["two"] = car.Kind == VehicleKind.TwoWheeler,
            ["open"] = isOpen,
            ["outline"] = PathText.Of(drawn.Outline),
            ["glass"] = Paths(drawn.Glass),
            ["creases"] = Paths(drawn.Creases),
            ["panels"] = Paths(drawn.Panels),
            ["tail"] = Point(drawn.Tail),
            ["nose"] = Point(drawn.Nose),
            ["rump"] = Point(drawn.Rump),
            ["head"] = Point(HeadOf(car, drawn)),
            ["towers"] = new JsonArray(Point(drawn.FrontTower), Point(drawn.RearTower)),
            ["pivot"] = drawn.Pivot is { } pivot ? Point(pivot) : null,
            ["solid"] = new JsonArray([.. car.Axles.Select(axle => (JsonNode)(axle.Suspension == SuspensionKind.SolidAxle))]),
            ["people"] = new JsonArray([.. aboard.People.Select(person => (JsonNode)new JsonObject
            {
                ["head"] = Point(person.Head),
                ["radius"] = drawn.Kind == SilhouetteKind.Motorcycle ? SeatedPerson.HelmetRadius : SeatedPerson.HeadRadius,
                ["body"] = PathText.Of(person.Body),
                ["far"] = person.IsFar,
            })]),
            ["luggage"] = new JsonArray([.. aboard.Luggage.Select(piece => (JsonNode)new JsonArray(
                Short(piece.Middle.X), Short(piece.Middle.Z), Short(piece.Long), Short(piece.High)))]),
            ["lamp"] = Point(drawn.Lamp),
            ["drop"] = car.Headlamp?.Drop.Si,
            ["bump"] = Stops(model.BumpTouch),
            ["rebound"] = Stops(model.ReboundTouch),
        };
    }

    // The foremost ear on the left, or where one would be.
    private static ScenePoint HeadOf(Car car, Silhouette drawn) =>
        drawn.Measures.Heads.IsEmpty
            ? new(0.5 * car.Wheelbase.Si, 0.85 * drawn.Measures.Height)
            : drawn.Measures.Heads.MaxBy(head => head.X);

    private static JsonArray Paths(IEnumerable<SilhouettePath> paths) => new([.. paths.Select(path => (JsonNode)PathText.Of(path))]);

    private static JsonArray Point(ScenePoint place) => new(Short(place.X), Short(place.Z));

    private static JsonArray Stops(IReadOnlyList<double> touch) =>
        new([.. new[] { touch[0], touch[2] }.Select(at => double.IsFinite(at) ? (JsonNode)Short(at) : null)]);

    private static double Short(double value) => Math.Round(value, 4);
}
