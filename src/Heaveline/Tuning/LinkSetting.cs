using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Tuning;

/// <summary>
/// The interconnection of front and rear on each side: the rate of its common spring, or the damping of the damper beside it. A car without one gets
/// one that follows both wheels one to one. A fluid line is not set here.
/// </summary>
internal sealed record LinkSetting(bool IsDamper)
    : Setting(IsDamper ? "link-damping" : "link", IsDamper ? "Interconnection, damper" : "Interconnection, spring")
{
    private const string Rate = "N/mm";
    private const string Damping = "N s/m";

    // As car files usually have them, in these units; a link that is there may be trebled, as its slider trebles it.
    private const double MostRate = 400.0;
    private const double MostDamping = 50_000.0;

    /// <inheritdoc/>
    public override SettingScale? ScaleOf(Car described)
    {
        if (described.Interconnection is FluidLink)
        {
            return null;
        }

        var link = described.Interconnection as ElasticLink;
        return IsDamper
            ? new SettingScale(Damping, link?.Damping.Si ?? 0.0, 0.0, Math.Max(2000.0, 3.0 * (link?.Damping.Si ?? 0.0)), 10.0)
            : new SettingScale(
                Rate,
                (link?.Rate.Si ?? 0.0) / 1000.0,
                0.0,
                Math.Max(20.0, Math.Ceiling(0.003 * (link?.Rate.Si ?? 0.0))),
                0.1,
                link is null ? "joins front and rear of each side, one to one, beside the springs" : "");
    }

    /// <inheritdoc/>
    public override Car Apply(Car car, double value)
    {
        var link = car.Interconnection as ElasticLink ?? new ElasticLink { Rate = new Amount<Stiffness>(0.0) };
        var (own, most, unit, none) = IsDamper
            ? (link.Damping.Si, MostDamping, Damping, "0 is no common damper.") : (link.Rate.Si / 1000.0, MostRate, Rate, "0 is no common spring.");
        var wanted = Rounded.Significant(Within(NotNegative(value, unit, none), 0.0, Math.Max(most, Math.Ceiling(3.0 * own)), unit, none), 5);
        return car with
        {
            Interconnection = IsDamper
                ? link with { Damping = AsDoubtful(link.Damping, wanted) }
                : link with { Rate = AsDoubtful(link.Rate, 1000.0 * wanted) },
        };
    }

    /// <summary>A car whose interconnection does nothing, without it: a file may not hold one.</summary>
    public static Car WithoutIdle(Car car) =>
        car.Interconnection is ElasticLink { Rate.Si: 0.0, Damping.Si: 0.0 } ? car with { Interconnection = null } : car;
}
