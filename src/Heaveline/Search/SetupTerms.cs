using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Search;

/// <summary>
/// The terms of the polynomial by which a setup is guessed: the numbers of its parts, never their places in a list, with their products up to three
/// together.
/// </summary>
internal sealed class SetupTerms
{
    // Products of three are many: with more numbers than this only those of two stand beside the powers of one.
    private const int MostForTriples = 8;

    // A direction in which the options of a place differ by less than this part of the farthest says nothing of its own.
    private const double Least = 1e-3;

    private readonly SetupSpace space;
    private readonly (int Place, double[][] ByOption)[] axes;

    /// <param name="space">The setups.</param>
    public SetupTerms(SetupSpace space)
    {
        this.space = space;
        axes = [.. space.Places.Select((place, k) => (k, Directions(place))).Where(axis => axis.Item2[0].Length > 0)];
        var n = axes.Sum(axis => axis.ByOption[0].Length);
        Variables = n;
        Count = 1 + n + (n * (n + 1) / 2) + (n <= MostForTriples ? n * (n + 1) * (n + 2) / 6 : n);
    }

    /// <summary>How many numbers of parts a setup has.</summary>
    public int Variables { get; }

    /// <summary>How many terms there are.</summary>
    public int Count { get; }

    /// <summary>Writes the terms of a setup.</summary>
    /// <param name="setup">The setup.</param>
    /// <param name="row">Takes the terms.</param>
    public void Write(long setup, Span<double> row)
    {
        Span<double> x = stackalloc double[Variables];
        var n = 0;
        foreach (var (place, options) in axes)
        {
            foreach (var value in options[space.OptionAt(setup, place)])
            {
                x[n++] = value;
            }
        }

        var at = 0;
        row[at++] = 1.0;
        for (var a = 0; a < n; a++)
        {
            row[at++] = x[a];
            for (var b = a; b < n; b++)
            {
                row[at++] = x[a] * x[b];
                for (var c = b; c < n && n <= MostForTriples; c++)
                {
                    row[at++] = x[a] * x[b] * x[c];
                }
            }

            if (n > MostForTriples)
            {
                row[at++] = x[a] * x[a] * x[a];
            }
        }
    }

    // The numbers of a place's options in as many directions as they really differ in, each between about −1 and 1: dampers that differ by a factor
    // alone have one.
    private static double[][] Directions(OpenPlace place)
    {
        var (options, numbers) = (place.Options.Length, place.Options[0].Numbers.Length);
        if (place.IsSilent || options < 2 || numbers == 0)
        {
            return [.. Enumerable.Repeat(Array.Empty<double>(), options)];
        }

        var centred = Matrix<double>.Build.Dense(options, numbers, (i, j) => place.Options[i].Numbers[j]);
        var means = centred.ColumnSums() / options;
        for (var i = 0; i < options; i++)
        {
            centred.SetRow(i, centred.Row(i) - means);
        }

        var found = centred.Svd();
        var kept = found.S.Count(s => s > Least * Math.Max(found.S[0], 1e-12) && s > 1e-9);
        if (kept == 0)
        {
            return [.. Enumerable.Repeat(Array.Empty<double>(), options)];
        }

        var along = centred * found.VT.SubMatrix(0, kept, 0, numbers).Transpose();
        var scale = Enumerable.Range(0, kept).Select(j => along.Column(j).AbsoluteMaximum()).ToArray();
        return [.. Enumerable.Range(0, options).Select(i => Enumerable.Range(0, kept).Select(j => along[i, j] / scale[j]).ToArray())];
    }
}
