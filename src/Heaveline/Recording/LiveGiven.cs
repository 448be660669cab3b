namespace Heaveline.Recording;

/// <summary>Where each number that is given to a record from outside stands among them.</summary>
internal static class LiveGiven
{
    /// <summary>The step, s.</summary>
    public const int Step = 0;

    /// <summary>Travel of the four wheels at trim, forces, loads, two flows.</summary>
    public const int Trim = 1;

    /// <summary>Numbers of a trim.</summary>
    public const int TrimCount = 14;

    /// <summary>A position in search of the trim: nine numbers.</summary>
    public const int Position = Trim + TrimCount;

    /// <summary>The first of the car's own numbers.</summary>
    public const int Car = Position + Models.TrimBalance.Unknowns;
}
