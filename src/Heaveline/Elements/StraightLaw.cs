using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Elements;

/// <summary>Straight pieces as a sum of hinges: f(x) = c₀ + c₁·x + Σ dⱼ·max(x, xⱼ) + Σ bⱼ·min(x, xⱼ).</summary>
internal sealed class StraightLaw : Law
{
    // Not a number until it is first asked for. One word: whoever reads while another writes finds the one or the other.
    private double steepest = double.NaN;

    // Arrays, whatever list they came in: a law is asked thousands of times.
    private readonly Hinge[] opening = [];
    private readonly Hinge[] closing = [];

    /// <summary>c₀.</summary>
    public double Constant { get; init; }

    /// <summary>c₁.</summary>
    public double Slope { get; init; }

    /// <summary>xⱼ and dⱼ of the hinges that count above their place.</summary>
    public IReadOnlyList<Hinge> Opening { get => opening; init => opening = value as Hinge[] ?? [.. value]; }

    /// <summary>xⱼ and bⱼ of the hinges that count below theirs.</summary>
    public IReadOnlyList<Hinge> Closing { get => closing; init => closing = value as Hinge[] ?? [.. value]; }

    /// <summary><see cref="Opening"/>.</summary>
    public ReadOnlySpan<Hinge> Opens => opening;

    /// <summary><see cref="Closing"/>.</summary>
    public ReadOnlySpan<Hinge> Closes => closing;

    /// <inheritdoc/>
    public override string? Curved => null;

    /// <inheritdoc/>
    public override bool Bends => HasBend(opening) || HasBend(closing);

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
    public static StraightLaw Through(double atZero, double factor, ReadOnlySpan<double> corners, ReadOnlySpan<double> slopes)
    {
        var hinges = new Hinge[corners.Length];
        var sum = 0.0;
        for (var j = 0; j < hinges.Length; j++)
        {
            hinges[j] = new(corners[j], factor * (slopes[j + 1] - slopes[j]));
            sum += hinges[j].Bend * Math.Max(0.0, hinges[j].At);
        }

        return new StraightLaw { Slope = factor * slopes[0], Opening = hinges, Constant = atZero - sum };
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
        foreach (var (at, bend) in opening)
        {
            var kink = new Kink<T> { At = T.Of(at), Bend = T.Of(bend) };
            force = Kink<T>.Above(&kink, 1, x, force);
        }

        foreach (var (at, bend) in closing)
        {
            var kink = new Kink<T> { At = T.Of(at), Bend = T.Of(bend) };
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
        foreach (var (at, bend) in opening)
        {
            var (above, share) = free ? Gaussian.Max(mean, deviation, at) : Gaussian.Max(mean, deviation, at, low, high);
            force += bend * above;
            slope += bend * share;
        }

        foreach (var (at, bend) in closing)
        {
            // min(x, a) = x + a − max(x, a).
            var (above, share) = free ? Gaussian.Max(mean, deviation, at) : Gaussian.Max(mean, deviation, at, low, high);
            force += bend * (middle + at - above);
            slope += bend * (1.0 - share);
        }

        return (force, slope);
    }

    /// <inheritdoc/>
    public override TResult ReadBy<TResult>(ILawReader<TResult> reader) => reader.Read(this);

    private bool IsNothing => Constant == 0.0 && Slope == 0.0 && opening.Length == 0 && closing.Length == 0;

    private static bool HasBend(Hinge[] hinges)
    {
        foreach (var hinge in hinges)
        {
            if (hinge.Bend != 0.0)
            {
                return true;
            }
        }

        return false;
    }

    private double Steep()
    {
        Span<Hinge> hinges = stackalloc Hinge[opening.Length + closing.Length];
        // Below every hinge those that close all count; passing one ends its share, passing one that opens begins it.
        var slope = Slope;
        for (var j = 0; j < hinges.Length; j++)
        {
            var opens = j < opening.Length;
            var (at, bend) = opens ? opening[j] : closing[j - opening.Length];
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
