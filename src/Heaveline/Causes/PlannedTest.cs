using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Causes;

/// <summary>
/// A road test that would show a cause: one speed, two loadings that change the cause by a computed amount, the change of the measure that they
/// predict with the part that the cause makes of it, and how many passes would show that part.
/// </summary>
public sealed record PlannedTest
{
    /// <summary>
    /// Along a road without an obstacle one pass scatters by so much of its value (–, standard deviation). Common practice, no source.
    /// </summary>
    public const double RelativeScatter = 0.10;

    /// <summary>And there by so much besides, rad: what is read off a level road. Common practice, no source.</summary>
    public static double LeastScatter { get; } = 0.01 / In.Degrees.Factor;

    /// <summary>Fewest passes each way: of fewer no change is judged when two drives are compared. Common practice, no source.</summary>
    public const int FewestPasses = 4;

    /// <summary>Where more passes each way would be needed, the test is not worth driving. Common practice, no source.</summary>
    public const int MostPasses = 30;

    // Standard normal: 97.5 % (one false alarm in twenty, both sides) and 80 % (one miss in five).
    private const double FalseAlarm = 1.95996;
    private const double Miss = 0.84162;

    /// <summary>The cause.</summary>
    public required PitchCauseKind Kind { get; init; }

    /// <summary>Speed, m/s: never above the one asked about.</summary>
    public required double Speed { get; init; }

    /// <summary>The first loading.</summary>
    public required LoadState First { get; init; }

    /// <summary>The second loading.</summary>
    public required LoadState Second { get; init; }

    /// <summary>The causes that are one number, each with its values under both loadings and its own part of the change.</summary>
    public required IReadOnlyList<MovedCause> Moved { get; init; }

    /// <summary>What is measured.</summary>
    public required Measure Measure { get; init; }

    /// <summary>The measure of the car as stated, first loading.</summary>
    public required double Before { get; init; }

    /// <summary>The measure of the car as stated, second loading.</summary>
    public required double After { get; init; }

    /// <summary>The change within the car's doubts: the middle 95 % of cars drawn, each under both loadings.</summary>
    public required DoubtInterval Doubts { get; init; }

    /// <summary>
    /// One pass over the obstacle scatters by so much of its value (–, standard deviation), as a test day on a road of class B reckons; null along a
    /// road without one.
    /// </summary>
    public double? OwnScatter { get; init; }

    /// <summary>The predicted change.</summary>
    public double Change => After - Before;

    /// <summary>
    /// The part of the change that the cause itself makes: the second loading less the same with the cause set back to its value under the first;
    /// all of it for the load.
    /// </summary>
    public double Part => Kind == PitchCauseKind.Load ? Change : Moved.Single(m => m.Kind == Kind).Part;

    /// <summary>Whether the cause makes at least half of the change: more than all else that the loads move.</summary>
    public bool IsTheCausesOwn => Change != 0.0 && Part / Change >= 0.5;

    /// <summary>Standard deviation of one pass about its mean.</summary>
    public double Scatter
    {
        get
        {
            var value = 0.5 * (Math.Abs(Before) + Math.Abs(After));
            return OwnScatter is { } own ? own * value : Math.Sqrt(Math.Pow(RelativeScatter * value, 2) + (LeastScatter * LeastScatter));
        }
    }

    /// <summary>Passes with each loading that would show a change as large as the cause's part, or as the whole where that is smaller.</summary>
    public int Passes => PassesFor(Math.Min(Math.Abs(Part), Math.Abs(Change)), Scatter);

    /// <summary>Whether so many passes are worth driving.</summary>
    public bool IsWorthDriving => Passes <= MostPasses;

    /// <summary>
    /// Where the difference of the two means will lie in 95 of 100 such tests: the doubts and the scatter of the means put together by squares.
    /// </summary>
    public DoubtInterval Expected
    {
        get
        {
            var means = FalseAlarm * Scatter * Math.Sqrt(2.0 / Passes);
            double Reach(double end) => Math.Sqrt(((Change - end) * (Change - end)) + (means * means));
            return new(Change - Reach(Math.Min(Doubts.Low, Change)), Change + Reach(Math.Max(Doubts.High, Change)));
        }
    }

    /// <summary>
    /// Passes each way that show a difference of means: 2·(z₀.₉₇₅ + z₀.₈₀)²·s²/Δ², the textbook number for two means of equal scatter.
    /// </summary>
    /// <param name="change">Δ, either sign.</param>
    /// <param name="scatter">s, standard deviation of one pass.</param>
    public static int PassesFor(double change, double scatter)
    {
        var wanted = Math.Ceiling(2.0 * Math.Pow((FalseAlarm + Miss) * scatter / change, 2));
        return wanted < 1e6 ? Math.Max(FewestPasses, (int)wanted) : 1_000_000;
    }
}
