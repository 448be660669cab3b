using System.Text.Json.Nodes;
using Heaveline.Figures;
using Heaveline.Models;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// A vehicle's side view for the page's moving picture: the outline of the printed figures, in the state described, as data. x forward from the front
/// axle, z up from the road, m.
/// </summary>
internal static class SceneCar
{
    /// <summary>Outline, wheels, arms, heads, lamp, travel until the stops.</summary>
    public static JsonObject Of(RideModel model)
    {
        var car = model.Car;
        var view = SideView.Of(car);
        return new JsonObject
        {
            ["wheelbase"] = Short(car.Wheelbase.Si),
            ["radius"] = Short(view.WheelRadius),
            ["front"] = Short(view.Front),
            ["rear"] = Short(view.Rear),
            ["top"] = Short(view.Top),
            ["outline"] = Points(view.Outline),
            ["arms"] = new JsonArray([.. view.Arms.Select(arm => (JsonNode)Points([arm.Body, arm.Hub]))]),
            ["heads"] = new JsonArray([.. car.Seats.Select(seat => (JsonNode)Points(
                [new(-seat.BehindFrontAxle.Si, seat.Height.Si), new(-seat.BehindFrontAxle.Si, seat.Height.Si + seat.HeadAboveSeat.Si)]))]),
            ["head"] = SideView.HeadRadius,
            ["lamp"] = car.Headlamp is { } lamp ? new JsonArray(Short(lamp.AheadOfFrontAxle.Si), Short(lamp.Height.Si), lamp.Drop.Si) : null,
            ["trimPitch"] = model.Trim.Pitch,
            ["bump"] = Stops(model.BumpTouch),
            ["rebound"] = Stops(model.ReboundTouch),
        };
    }

    private static JsonArray Points(IEnumerable<ScenePoint> points) => new([.. points.SelectMany(p => new JsonNode[] { Short(p.X), Short(p.Z) })]);

    private static JsonArray Stops(IReadOnlyList<double> touch) =>
        new([.. new[] { touch[0], touch[2] }.Select(at => double.IsFinite(at) ? (JsonNode)Short(at) : null)]);

    private static double Short(double value) => Math.Round(value, 4);
}
