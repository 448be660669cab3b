using Heaveline.Elements;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Modes;

/// <summary>
/// What tuning needs to know of one axle at trim: its rate and a fluid line's damping while the body swings on it, its sprung mass and its tyres'
/// rate.
/// </summary>
internal readonly record struct AxleState(double Rate, double LineDamping, double Mass, double TyreRate)
{
    public static AxleState Of(RideModel model, AxleEnd end)
    {
        var at = (int)end;
        var mass = model.Trim.AxleSprungLoad[at] / Gravity.Standard;
        var (rate, line) = SuspensionRates.AtRide(model, end, mass);
        return new AxleState(rate, line, mass, SuspensionRates.TyresOf(model, end));
    }

    public double Frequency(bool onRigidTyres) => Math.Sqrt((onRigidTyres ? Rate : Rate * TyreRate / (Rate + TyreRate)) / Mass) / (2.0 * Math.PI);

    /// <summary>Axle rate that makes a frequency.</summary>
    public double RateFor(double frequency, bool onRigidTyres, string end)
    {
        var ride = Mass * Math.Pow(2.0 * Math.PI * frequency, 2);
        return onRigidTyres
            ? ride
            : ride < TyreRate
                ? ride * TyreRate / (TyreRate - ride)
                : throw new RefusedValueException(
                    $"{end} frequency",
                    FormattableString.Invariant($"{frequency:0.###} Hz"),
                    "below that of the car on its tyres alone",
                    "Only a stiffer tyre can make it.");
    }

    /// <summary>The part of <see cref="DampingOf"/> that the interconnection makes, the other axle held.</summary>
    public double LinkDampingOf(RideModel model, int firstWheel)
    {
        var shared = model.Numbers.Elements.CommonDampers.Count == 0
            ? 0.0
            : SuspensionRates.ByAxle(
                model.Tangent.SuspensionDamping - Tangent.WithoutInterconnection(model.Numbers).Damping)[firstWheel / 2, firstWheel / 2];
        return (shared + LineDamping) / (2.0 * Math.Sqrt(Rate * Mass));
    }

    public double DampingOf(RideModel model, int firstWheel) => AxleDamping.Of(model, firstWheel, Rate, Mass, LineDamping).Ratio;
}
