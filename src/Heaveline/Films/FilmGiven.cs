using Heaveline.Quantities;

namespace Heaveline.Films;

/// <summary>What is known of a pass besides its film.</summary>
public sealed record FilmGiven
{
    // More than what cars have is no knowledge of a share.
    private const double MostShareDoubt = 0.1;

    /// <summary>Distance between the axles, m, the film's ruler; without a doubt of its own it is taken to be good to a hundredth.</summary>
    public required Amount<Length> Wheelbase
    {
        get;
        init => field = Checked.Within(value, 0.5, 12.0, "The wheelbase is the film's ruler: take it from the maker's figures.");
    }

    /// <summary>Speed of the pass, m/s; null: the film's own.</summary>
    public Amount<Velocity>? Speed
    {
        get;
        init => field = value is { } v ? Checked.Within(v, 0.5, 120.0, "Cars pass bumps at 1.8 to 432 km/h at the very most.") : null;
    }

    /// <summary>How many times slower the film is played than it was taken: 8 for 240 frames a second shown at 30; null: see the speed.</summary>
    public double? Slowness
    {
        get;
        init => field = value is { } v ? Checked.Within(v, 1.0, 100.0, "A film of a passing car is played as it was taken (1) or slower.") : null;
    }

    /// <summary>Share of the sprung mass on the front axle; null: what cars have.</summary>
    public Amount<Plain>? FrontShare
    {
        get;
        init => field = value is not { } v ? null
            : v.Doubt.IsStated && v.Doubt.StandardDeviation > MostShareDoubt
                ? throw new RefusedValueException(
                    "the doubt of the share on the front axle", Numeral.Of(v.Doubt.StandardDeviation, 2),
                    $"{Numeral.Of(MostShareDoubt, 2)} at most, one standard deviation", "Leave the share out: what cars have is then taken.")
            : Checked.Within(v, 0.2, 0.8, "A front axle bears 0.2 to 0.8.");
    }

    /// <summary>How far a hub's mark may be off, px, nine times in ten.</summary>
    public double MarkDoubt { get; init => field = Checked.Within(value, 0.0, 100.0); } = 2.0;

    /// <summary>Half-width of the interval that holds the wheelbase nine times in ten, as a share of it.</summary>
    internal double WheelbaseDoubt =>
        Numerics.Gaussian.Ninety * (Wheelbase.Doubt.IsStated ? Wheelbase.Doubt.StandardDeviation / Wheelbase.Si : 0.005);
}
