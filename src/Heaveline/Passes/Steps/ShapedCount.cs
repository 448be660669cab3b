using Heaveline.Models;

namespace Heaveline.Passes.Steps;

/// <summary>What follows a block of further elements: kinks of each kind on each side; and which curved laws there are.</summary>
internal readonly record struct ShapedCount(int Springs, int Dampers, int StopsAbove, int StopsBelow, bool Gas, bool CurvedStops)
{
    /// <summary>Kinks of one side.</summary>
    public int Side => Springs + Dampers + StopsAbove + StopsBelow;

    /// <summary>Room for those of one more corner too.</summary>
    public ShapedCount And(KernelSlots car, int i) => this with
    {
        Springs = Math.Max(Springs, car.Springs[i].OnTravel.Opening.Count),
        Dampers = Math.Max(Dampers, car.Dampers[i].OnRate.Opening.Count),
        StopsAbove = Math.Max(StopsAbove, car.BumpStops[i].OnTravel.Opening.Count + car.ReboundStops[i].OnTravel.Opening.Count),
        StopsBelow = Math.Max(StopsBelow, car.BumpStops[i].OnTravel.Closing.Count + car.ReboundStops[i].OnTravel.Closing.Count),
    };
}
