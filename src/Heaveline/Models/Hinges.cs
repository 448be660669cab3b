namespace Heaveline.Models;

/// <summary>Corners of a piecewise straight law, the same number at each of the four wheels (filled up with corners of no weight).</summary>
internal sealed class Hinges
{
    /// <summary>Place of corner j at the four wheels.</summary>
    public List<double[]> At { get; } = [];

    /// <summary>Change of slope there.</summary>
    public List<double[]> Bend { get; } = [];

    public int Count => At.Count;

    /// <summary>Sets the corners of one wheel.</summary>
    public void Set(int corner, IReadOnlyList<double> at, IReadOnlyList<double> bend)
    {
        while (Count < at.Count)
        {
            At.Add(new double[4]);
            Bend.Add(new double[4]);
        }

        for (var j = 0; j < at.Count; j++)
        {
            At[j][corner] = at[j];
            Bend[j][corner] = bend[j];
        }
    }
}
