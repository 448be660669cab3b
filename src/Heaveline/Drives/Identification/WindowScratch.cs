using System.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>Room in which the term of a window is worked out; one for each core.</summary>
/// <param name="lines">Most frequencies of a window.</param>
/// <param name="fine">Most fine frequencies.</param>
/// <param name="splines">Most splines of a hump.</param>
internal sealed class WindowScratch(int lines, int fine, int splines)
{
    private const int Width = HalfCarResponse.Width;

    /// <summary>Products before they are smeared, shape (fine, 4, stride).</summary>
    public double[] Fine { get; } = new double[fine * 4 * Width];

    /// <summary>Products after, shape (lines, 4, stride).</summary>
    public double[] Smeared { get; } = new double[lines * 4 * Width];

    /// <summary>The car's answers at the frequencies of the data, shape (lines, 4, width).</summary>
    public double[] Answers { get; } = new double[lines * 4 * Width];

    /// <summary>Whitened derivatives, for each parameter those of the mean (4, lines), then those of the covariance (4, lines).</summary>
    public double[] Rows { get; } = new double[(CarParameter.Shared + CarParameter.Own + splines) * 8 * lines];

    /// <summary>Whitened r·rᴴ − 1 in the order of the covariance's rows.</summary>
    public double[] Likeness { get; } = new double[4 * lines];

    /// <summary>Transforms of the splines, shape (lines, splines).</summary>
    public Complex[] Splines { get; } = new Complex[lines * splines];

    /// <summary>Their derivatives by ln of the speed.</summary>
    public Complex[] BySpeed { get; } = new Complex[lines * splines];

    /// <summary>The hump over time.</summary>
    public Complex[] Road { get; } = new Complex[lines];

    /// <summary>Its derivative by ln of the speed.</summary>
    public Complex[] RoadBySpeed { get; } = new Complex[lines];
}
