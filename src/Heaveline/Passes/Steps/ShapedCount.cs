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
        Springs = Math.Max(Springs, car.Springs[i].OnTravel.Opens.Length),
        Dampers = Math.Max(Dampers, car.Dampers[i].OnRate.Opens.Length),
        StopsAbove = Math.Max(StopsAbove, car.BumpStops[i].OnTravel.Opens.Length + car.ReboundStops[i].OnTravel.Opens.Length),
        StopsBelow = Math.Max(StopsBelow, car.BumpStops[i].OnTravel.Closes.Length + car.ReboundStops[i].OnTravel.Closes.Length),
    };
}
