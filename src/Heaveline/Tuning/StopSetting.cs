using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Tuning;

/// <summary>How far one axle's wheels rise until their bump stops touch.</summary>
internal sealed record StopSetting(AxleEnd End) : Setting($"{End.Key()}-stop", $"{End.Name()} bump-stop clearance")
{
    /// <inheritdoc/>
    public override SettingScale? ScaleOf(Car described) => described.At(End).BumpStop is { } stop
        ? new SettingScale(
            "mm", Math.Round(In.Millimetres.Of(stop.Clearance.Si), 1), 0.0, Math.Ceiling(In.Millimetres.Of(stop.Clearance.Si) + 60.0), 1.0)
        : null;

    /// <inheritdoc/>
    public override Car Apply(Car car, double value)
    {
        var axle = car.At(End);
        var clearance = Rounded.In(
            In.Millimetres.ToSi(Within(value, 0.0, 1000.0, "mm", "Wheel travel from the state described until the stop touches.")), 1e-3, 1);
        // A tape reads a long gap as a short one.
        return axle.BumpStop is { } stop
            ? car.With(End, axle with { BumpStop = stop with { Clearance = stop.Clearance with { Si = clearance } } })
            : car;
    }
}
