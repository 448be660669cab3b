using Heaveline.Measures;
using Heaveline.Modes;

namespace Heaveline.Web.Pages.Passes;

/// <summary>Some wheels of a car in words, each counted: "the front wheels and the rear right wheel".</summary>
internal static class SaidWheels
{
    /// <summary>Their names behind one another; blank for none.</summary>
    /// <param name="corners">The wheels, 0 to 3; of a two-wheeler 0 and 2.</param>
    /// <param name="hasSides">Whether the car has left and right wheels.</param>
    public static string Of(IReadOnlyCollection<int> corners, bool hasSides)
    {
        var axles = WheelPlace.Axles(hasSides);
        if (axles.All(axle => axle.Corners.All(corners.Contains)))
        {
            return hasSides ? "all four wheels" : "both wheels";
        }

        string Name(int corner) => CornerNames.Of(corner, hasSides);
        if (axles.SelectMany(axle => axle.Corners).Where(corners.Contains).ToArray() is [var one, var other] && one / 2 != other / 2)
        {
            return $"the {Name(one)} and {Name(other)} wheels";
        }

        return string.Join(" and ", axles.SelectMany(axle => Whole(axle, corners, hasSides)));
    }

    /// <summary>Of one axle: its name where both of its wheels are meant, else the wheel's.</summary>
    private static IEnumerable<string> Whole(WheelPlace axle, IReadOnlyCollection<int> corners, bool hasSides) =>
        axle.Corners.All(corners.Contains)
            ? [hasSides ? $"the {axle.Name}" : $"the {CornerNames.Of(axle.Corners[0], false)} wheel"]
            : axle.Corners.Where(corners.Contains).Select(corner => $"the {CornerNames.Of(corner, hasSides)} wheel");
}
