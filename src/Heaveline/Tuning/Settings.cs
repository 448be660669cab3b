using Heaveline.Cars;

namespace Heaveline.Tuning;

/// <summary>All settings of a car, in the order in which they are put on it.</summary>
internal static class Settings
{
    /// <summary>The settings.</summary>
    /// <param name="inertiaGrows">Whether the pitch inertia grows with the wheelbase.</param>
    public static IReadOnlyList<Setting> All(bool inertiaGrows) =>
    [
        new SpringSetting(AxleEnd.Front), new SpringSetting(AxleEnd.Rear),
        new DampingSetting(AxleEnd.Front), new DampingSetting(AxleEnd.Rear),
        new StopSetting(AxleEnd.Front), new StopSetting(AxleEnd.Rear),
        new LinkSetting(IsDamper: false), new LinkSetting(IsDamper: true),
        new WheelbaseSetting(inertiaGrows),
    ];

    /// <summary>A car with some of them set. What the car has nothing of is passed over.</summary>
    public static Car Apply(Car described, IReadOnlyDictionary<string, double> values, bool inertiaGrows)
    {
        var car = All(inertiaGrows).Where(setting => values.ContainsKey(setting.Key) && setting.ScaleOf(described) is not null)
            .Aggregate(described, (car, setting) => setting.Apply(car, values[setting.Key]));
        return LinkSetting.WithoutIdle(car);
    }
}
