namespace Heaveline.Elements;

/// <summary>A corner of a piecewise straight law.</summary>
/// <param name="At">Where the slope changes, m or m/s.</param>
/// <param name="Bend">By how much.</param>
internal readonly record struct Hinge(double At, double Bend)
{
    /// <summary>Whether two laws have the same corners.</summary>
    public static bool Alike(ReadOnlySpan<Hinge> left, ReadOnlySpan<Hinge> right)
    {
        if (left == right)
        {
            // One and the same.
            return true;
        }

        if (left.Length != right.Length)
        {
            return false;
        }

        for (var j = 0; j < left.Length; j++)
        {
            if (left[j] != right[j])
            {
                return false;
            }
        }

        return true;
    }
}
