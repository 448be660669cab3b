using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Modes;

/// <summary>What tuning needs to know of one axle at trim: its tangent rate, its sprung mass and its tyres' rate.</summary>
internal readonly record struct AxleState(double Rate, double Mass, double TyreRate)
{
    public static AxleState Of(RideModel model, AxleEnd end)
    {
        var at = (int)end;
        return new AxleState(
            SuspensionRates.ByAxle(model.Tangent.SuspensionRate)[at, at],
            model.Trim.AxleSprungLoad[at] / Gravity.Standard,
            SuspensionRates.TyresOf(model, end));
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

    /// <summary>The part of <see cref="DampingOf"/> that a common damper of front and rear makes, the other axle held.</summary>
    public double LinkDampingOf(RideModel model, int firstWheel)
    {
        if (model.Numbers.Laws.LinkDamping == 0.0)
        {
            return 0.0;
        }

        var link = SuspensionRates.ByAxle(model.Tangent.SuspensionDamping - Tangent.WithoutInterconnection(model.Numbers).Damping);
        return link[firstWheel / 2, firstWheel / 2] / (2.0 * Math.Sqrt(Rate * Mass));
    }

    public double DampingOf(RideModel model, int firstWheel) => AxleDamping.Of(model, firstWheel, Rate, Mass).Ratio;
}
