using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Elements;

/// <summary>Straight pieces as a sum of hinges: f(x) = c₀ + c₁·x + Σ dⱼ·max(x, xⱼ) + Σ bⱼ·min(x, xⱼ).</summary>
internal sealed class StraightLaw : Law
{
    // Not a number until it is first asked for. One word: whoever reads while another writes finds the one or the other.
    private double steepest = double.NaN;

    /// <summary>c₀.</summary>
    public double Constant { get; init; }

    /// <summary>c₁.</summary>
    public double Slope { get; init; }

    /// <summary>xⱼ and dⱼ of the hinges that count above their place.</summary>
    public IReadOnlyList<Hinge> Opening { get; init; } = [];

    /// <summary>xⱼ and bⱼ of the hinges that count below theirs.</summary>
    public IReadOnlyList<Hinge> Closing { get; init; } = [];

    /// <inheritdoc/>
    public override string? Curved => null;

    /// <inheritdoc/>
    public override bool Bends => Opening.Any(hinge => hinge.Bend != 0.0) || Closing.Any(hinge => hinge.Bend != 0.0);

    /// <inheritdoc/>
    public override double Steepest => double.IsNaN(steepest) ? steepest = Steep() : steepest;

    /// <inheritdoc/>
    public override IEnumerable<double> Breaks => Opening.Concat(Closing).Select(hinge => hinge.At);

    /// <summary>
    /// A line through given points of a table, extended by its end slopes, all times a factor; the force at 0 is <paramref name="atZero"/>.
    /// </summary>
    /// <param name="atZero">Force at x = 0, the factor in it.</param>
    /// <param name="factor">Factor on every slope.</param>
    /// <param name="corners">Where the slope changes, rising.</param>
    /// <param name="slopes">Slope of each piece, one more than there are corners.</param>
    public static StraightLaw Through(double atZero, double factor, IReadOnlyList<double> corners, IReadOnlyList<double> slopes)
    {
        Hinge[] hinges = [.. corners.Select((x, j) => new Hinge(x, factor * (slopes[j + 1] - slopes[j])))];
        return new StraightLaw
        {
            Slope = factor * slopes[0],
            Opening = hinges,
            Constant = atZero - hinges.Sum(hinge => hinge.Bend * Math.Max(0.0, hinge.At)),
        };
    }

    /// <summary>Both laws in one.</summary>
    public StraightLaw And(StraightLaw other) => IsNothing ? other : other.IsNothing ? this : new StraightLaw
    {
        Constant = Constant + other.Constant,
        Slope = Slope + other.Slope,
        Opening = [.. Opening, .. other.Opening],
        Closing = [.. Closing, .. other.Closing],
    };

    /// <inheritdoc/>
    public override unsafe T Force<T>(T x)
    {
        var force = T.Fma(T.Of(Slope), x, T.Of(Constant));
        for (var j = 0; j < Opening.Count; j++)
        {
            var kink = new Kink<T> { At = T.Of(Opening[j].At), Bend = T.Of(Opening[j].Bend) };
            force = Kink<T>.Above(&kink, 1, x, force);
        }

        for (var j = 0; j < Closing.Count; j++)
        {
            var kink = new Kink<T> { At = T.Of(Closing[j].At), Bend = T.Of(Closing[j].Bend) };
            force = Kink<T>.Below(&kink, 1, x, force);
        }

        return force;
    }

    /// <summary>
    /// In closed form [Roberts and Spanos, Random Vibration and Statistical Linearization: E[F′] for Gaussian motion, after Kazakov; derived].
    /// </summary>
    public override (double Force, double Slope) Mean(double mean, double deviation, double low, double high)
    {
        var free = Gaussian.Within(mean, deviation, low, high);
        var middle = free ? mean : Gaussian.Middle(mean, deviation, low, high);
        var (force, slope) = (Constant + (Slope * middle), Slope);
        for (var j = 0; j < Opening.Count; j++)
        {
            var (at, bend) = Opening[j];
            var (above, share) = free ? Gaussian.Max(mean, deviation, at) : Gaussian.Max(mean, deviation, at, low, high);
            force += bend * above;
            slope += bend * share;
        }

        for (var j = 0; j < Closing.Count; j++)
        {
            // min(x, a) = x + a − max(x, a).
            var (at, bend) = Closing[j];
            var (above, share) = free ? Gaussian.Max(mean, deviation, at) : Gaussian.Max(mean, deviation, at, low, high);
            force += bend * (middle + at - above);
            slope += bend * (1.0 - share);
        }

        return (force, slope);
    }

    /// <inheritdoc/>
    public override TResult ReadBy<TResult>(ILawReader<TResult> reader) => reader.Read(this);

    private bool IsNothing => Constant == 0.0 && Slope == 0.0 && Opening.Count == 0 && Closing.Count == 0;

    private double Steep()
    {
        Span<Hinge> hinges = stackalloc Hinge[Opening.Count + Closing.Count];
        // Below every hinge those that close all count; passing one ends its share, passing one that opens begins it.
        var slope = Slope;
        for (var j = 0; j < hinges.Length; j++)
        {
            var opens = j < Opening.Count;
            var (at, bend) = opens ? Opening[j] : Closing[j - Opening.Count];
            hinges[j] = new(at, opens ? bend : -bend);
            slope += opens ? 0.0 : bend;
        }

        var most = slope;
        hinges.Sort(static (a, b) => a.At.CompareTo(b.At));
        for (var j = 0; j < hinges.Length; j++)
        {
            slope += hinges[j].Bend;
            // Hinges at one place are one.
            most = j + 1 < hinges.Length && hinges[j + 1].At == hinges[j].At ? most : Math.Max(most, slope);
        }

        return most;
    }
}
