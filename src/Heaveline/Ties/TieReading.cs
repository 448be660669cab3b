using Heaveline.Quantities;

namespace Heaveline.Ties;

/// <summary>How far a cable tie was pushed along the rod of its damper in one crossing.</summary>
public sealed record TieReading
{
    /// <summary>Doubt of a reading that states none, m, half-width: common practice, no source.</summary>
    public const double UsualDoubt = 2e-3;

    /// <summary>Where.</summary>
    public required TiePlace Place { get; init; }

    /// <summary>
    /// Travel of the damper from where the loaded car stood to its farthest in bump, measured at the rod, m. Without a doubt good to
    /// <see cref="UsualDoubt"/>. 0 to 0.4 m.
    /// </summary>
    public required Amount<Length> Travel
    {
        get;
        init
        {
            field = Checked.Within(
                value,
                0.0,
                Longest,
                "Measure from the damper's body to the tie with the car standing under the same load; a rod has some 200 mm.",
                "TieTravel");
            if (value.Doubt.IsStated && !(value.Doubt.HalfWidth <= Longest))
            {
                throw new RefusedValueException(
                    "tie travel",
                    FormattableString.Invariant($"{In.Millimetres.Of(value.Si):0.###} mm ± {In.Millimetres.Of(value.Doubt.HalfWidth):0.###} mm"),
                    FormattableString.Invariant($"known to {In.Millimetres.Of(Longest):G6} mm or better"),
                    "Write how far off the reading may be: 27 mm ± 2 mm.")
                { Property = "TieTravel" };
            }
        }
    }

    // No rod is longer, m.
    private const double Longest = 0.4;

    /// <summary>Whether the tie went as far as it could, against a stop, a rubber or the rod's end: the damper went at least so far.</summary>
    public bool IsAtLeast { get; init; }

    /// <summary>One standard deviation of the reading, m.</summary>
    internal double Spread => 0.5 * (Travel.Doubt.IsStated ? Travel.Doubt.HalfWidth : UsualDoubt);
}
