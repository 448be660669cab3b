using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>The sprung body: where its centre of gravity is in height and how it resists turning.</summary>
public sealed record Body
{
    /// <summary>Height of the sprung body's centre of gravity above the ground in the reference state, m. 0.1 to 3 m.</summary>
    public required Amount<Length> CentreHeight
    {
        get;
        init => field = Checked.Within(value, 0.1, 3.0, "Use a tilt test, or a similar car's value with a wide doubt.");
    }

    /// <summary>
    /// Height above the ground of the axis about which the body pitches, m. Gravity acts on the arm from it to the centre of gravity; null leaves
    /// that term out, and the results say so.
    /// </summary>
    public Amount<Length>? PitchAxisHeight
    {
        get;
        init => field = value is { } v ? Checked.Within(v, -2.0, 3.0, "Give a height above the ground.") : null;
    }

    /// <summary>Height above the ground of the axis about which the body rolls, m; null leaves gravity's tilting moment in roll out.</summary>
    public Amount<Length>? RollAxisHeight
    {
        get;
        init => field = value is { } v ? Checked.Within(v, -2.0, 3.0, "Give a height above the ground.") : null;
    }

    /// <summary>Pitch inertia of the sprung body about its centre of gravity, or null to estimate it by <see cref="DynamicIndex"/>.</summary>
    public Amount<Inertia>? PitchInertia { get; init => field = value is { } v ? Checked.Positive(v, "Leave it out to have it estimated.") : null; }

    /// <summary>Roll inertia of the sprung body about its centre of gravity, or null to estimate it by <see cref="InertiaEstimate"/>.</summary>
    public Amount<Inertia>? RollInertia { get; init => field = value is { } v ? Checked.Positive(v, "Leave it out to have it estimated.") : null; }

    /// <summary>
    /// Pitch dynamic index k²/(b·c) used when no pitch inertia is given (–). 0.2 to 3. Default: the median over 204 road vehicles in a public
    /// inertial-parameter database (quartiles 0.927, 0.998, 1.078, range 0.816–1.298); the default doubt spans that range.
    /// </summary>
    public Amount<Plain> DynamicIndex
    {
        get;
        init => field = Checked.Within(value, 0.2, 3.0, "Most road cars lie between 0.8 and 1.3.");
    } = InertiaEstimate.DynamicIndex;
}
