using System.Text.Json;
using Heaveline.Passes.Exact;
using Heaveline.Roads;

namespace Heaveline.References.Peers;

/// <summary>
/// The closed-form roads of the cases as cubic pieces a tenth as long as our own roads use: those stay within 1e-9 m, which shows in a damped
/// tyre's force at the 1e-7 asked for here.
/// </summary>
internal static class PeerRoad
{
    // Pieces are as long as the fourth root of the error allows.
    private const double Finer = 1e4;

    internal static ExactRoad From(JsonElement road)
    {
        var profile = Draw(road);
        var tracks = road.GetProperty("tracks").GetString();
        var left = tracks == "right" ? Profile.Flat : profile;
        var right = tracks == "left" ? Profile.Flat : profile;
        return new ExactRoad(left, right, left, right);
    }

    private static Profile Draw(JsonElement road)
    {
        var h = road.GetProperty("height").GetDouble();
        var w = road.GetProperty("length").GetDouble();
        var outline = new Outline(0.0, 0.0);
        switch (road.GetProperty("shape").GetString())
        {
            case "round-top":
                var radius = ((w * w / 4.0) + (h * h)) / (2.0 * h);
                var below = radius - h;
                double Up(double x) => Math.Sqrt((radius * radius) - ((x - (w / 2.0)) * (x - (w / 2.0))));
                // Greatest at the feet: 3R²(R² + 4u²)/(R² − u²)^(7/2) with u = w/2.
                var fourth = 3.0 * radius * radius * ((radius * radius) + (w * w)) / Math.Pow(below, 7.0);
                outline.CurveTo(w, 0.0, x => Up(x) - below, x => ((w / 2.0) - x) / Up(x), Finer * fourth);
                break;
            case "versine":
                var k = 2.0 * Math.PI / w;
                outline.CurveTo(
                    w, 0.0, x => h / 2.0 * (1.0 - Math.Cos(k * x)), x => h / 2.0 * k * Math.Sin(k * x), Finer * h / 2.0 * Math.Pow(k, 4.0));
                break;
            case "half-sine":
                var q = Math.PI / w;
                outline.CurveTo(w, 0.0, x => h * Math.Sin(q * x), x => h * q * Math.Cos(q * x), Finer * h * Math.Pow(q, 4.0));
                break;
            case "plank":
                var edge = road.GetProperty("edge").GetDouble();
                outline.LineTo(edge, h).LineTo(w - edge, h).LineTo(w, 0.0);
                break;
            default:
                throw new InvalidDataException($"Unknown road shape in {road}.");
        }

        return outline.Close();
    }
}
